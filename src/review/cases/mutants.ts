import type { Span } from '../../diagnostics/index.ts';
import { parseFormula, type Syntax, syntaxParts } from '../../language/index.ts';

/** A formula with one thing changed, as a slip would change it. */
export interface Mutant {
  /** What was changed, in words. */
  readonly change: MutantKind;
  readonly formula: string;
}

export type MutantKind =
  | 'value'
  | 'operator'
  | 'sign'
  | 'constant'
  | 'branch'
  | 'comparison'
  | 'function'
  | 'factor dropped'
  | 'term dropped'
  | 'column';

/** The name of another column of the same table and dimension, for the name of a column. */
export type Fellow = (name: string) => string | undefined;

const operators: Readonly<Record<string, string>> = { '+': '-', '-': '+', '*': '/', '/': '*' };
const comparisons: Readonly<Record<string, string>> = {
  '<': '>',
  '<=': '>=',
  '>': '<',
  '>=': '<=',
  '=': '<>',
  '<>': '=',
};
/** Functions that are taken for one another. */
const functions: Readonly<Record<string, string>> = Object.fromEntries(
  [
    ['MIN', 'MAX'],
    ['MINIF', 'MAXIF'],
    ['LESSER', 'GREATER'],
    ['CEILING', 'FLOOR'],
    ['LARGE', 'SMALL'],
    ['AVERAGE', 'SUM'],
    ['ROUNDUP', 'ROUNDDOWN'],
    ['SIN', 'COS'],
    ['AND', 'OR'],
    ['RUNNINGMIN', 'RUNNINGMAX'],
  ].flatMap(([one = '', other = '']) => [
    [one, other],
    [other, one],
  ]),
);

/** Every mutant of a formula, each once; those that are no formula of its dimension are among them. */
export function mutantsOf(formula: string, fellow: Fellow): readonly Mutant[] {
  const { text, syntax } = parseFormula(formula);
  const mutants = new Map<string, MutantKind>();
  const put = (change: MutantKind, { from, to }: Span, instead: string): void => {
    const mutant = text.slice(0, from) + instead + text.slice(to);
    if (mutant !== text && !mutants.has(mutant)) mutants.set(mutant, change);
  };
  const written = ({ from, to }: Span): string => text.slice(from, to);
  const visit = (node: Syntax): void => {
    change(node, put, written, fellow);
    for (const part of syntaxParts(node)) visit(part);
  };
  visit(syntax);
  return [...mutants].map(([mutant, kind]) => ({ change: kind, formula: mutant }));
}

function change(
  node: Syntax,
  put: (change: MutantKind, span: Span, instead: string) => void,
  written: (span: Span) => string,
  fellow: Fellow,
): void {
  switch (node.kind) {
    case 'number': {
      const { value, unit, from, to } = node;
      const end = unit ? unit.from : to;
      if (value !== 0)
        put('constant', { from, to: end }, `${Number((value * 1.05).toPrecision(12))}${unit ? ' ' : ''}`);
      return;
    }
    case 'binary': {
      const { op, opSpan, left, right } = node;
      const other = operators[op];
      if (other !== undefined) put('operator', opSpan, other);
      const dropped = op === '*' || op === '/' ? 'factor dropped' : 'term dropped';
      put(dropped, node, written(left));
      if (op === '*' || op === '+') put(dropped, node, written(right));
      return;
    }
    case 'negate':
      put('sign', node, written(node.operand));
      return;
    case 'comparison': {
      const other = comparisons[node.op];
      if (other !== undefined)
        put('comparison', node, `${written(node.left)} ${other} ${written(node.right)}`);
      return;
    }
    case 'call': {
      const name = node.name.toUpperCase();
      const other = functions[name];
      if (other !== undefined) put('function', node.nameSpan, other);
      if (name === 'IF') for (const branch of node.args.slice(1)) put('branch', node, `(${written(branch)})`);
      return;
    }
    case 'name': {
      const other = fellow(node.name);
      if (other !== undefined) put('column', node, other);
      return;
    }
    default:
      return;
  }
}
