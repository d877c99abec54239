import { type CallSyntax, findFunction, type Syntax } from '../../language/index.ts';
import { formulaWidth, type TextOf, textWidth } from './formula-width.ts';

/** A piece of a line: part of the formula's tree, or what is written between parts. */
export type Piece =
  | { readonly kind: 'node'; readonly node: Syntax }
  | { readonly kind: 'sign' | 'words' | 'name'; readonly text: string };

/** One line of a formula set on several; `indent` and `width` in em of its type. */
export interface FormulaLine {
  readonly indent: number;
  readonly pieces: readonly Piece[];
  readonly width: number;
}

/**
 * A formula on as few lines as a width (in em) allows: broken in front of plus, minus, comparison and times signs,
 * between arguments, and a choice between formulas as one case after another. What cannot be broken stays whole.
 */
export function formulaLines(node: Syntax, most: number, textOf?: TextOf): readonly FormulaLine[] {
  const breaker = (part: Syntax, room: number, indent: number): readonly FormulaLine[] =>
    broken(part, room, indent, textOf, breaker);
  return breaker(node, most, 0);
}

type Breaker = (node: Syntax, room: number, indent: number) => readonly FormulaLine[];

function broken(
  node: Syntax,
  room: number,
  indent: number,
  textOf: TextOf | undefined,
  again: Breaker,
): readonly FormulaLine[] {
  const width = formulaWidth(node, textOf);
  const whole: FormulaLine = { indent, pieces: [{ kind: 'node', node }], width };
  if (width <= room) return [whole];
  switch (node.kind) {
    case 'comparison':
      return [
        ...operand(node.left, room, indent, again),
        ...led(
          operand(node.right, room - sign(comparisonSigns[node.op]).width, indent, again),
          sign(comparisonSigns[node.op]),
        ),
      ];
    case 'binary': {
      const { op } = node;
      if (op === '/') return [whole];
      return gathered(chain(node, op === '*' ? ['*'] : op === '&' ? ['&'] : ['+', '-']), room, indent, again);
    }
    case 'group':
      return fenced(again(node.inner, room - 1, indent + 0.5), sign('('), sign(')'), indent);
    case 'call':
      return callLines(node, room, indent, again);
    default:
      return [whole];
  }
}

interface Mark {
  readonly pieces: readonly Piece[];
  readonly width: number;
}

const signs = { '+': '+', '-': '−', '*': '·', '&': '&' } as const;
const comparisonSigns = { '<=': '≤', '<': '<', '>=': '≥', '>': '>', '=': '=', '<>': '≠' } as const;

const sign = (text: string): Mark => ({
  pieces: [{ kind: 'sign', text }],
  width: /[();]/.test(text) ? 0.4 : 1.3,
});
const words = (text: string): Mark => ({ pieces: [{ kind: 'words', text }], width: textWidth(text) });

interface Term {
  readonly lead: Mark | undefined;
  readonly node: Syntax;
}

/** The terms of a sum or the factors of a product, each with the sign in front of it. */
function chain(node: Syntax, ops: readonly (keyof typeof signs)[]): readonly Term[] {
  if (node.kind === 'binary' && node.op !== '/' && ops.includes(node.op))
    return [...chain(node.left, ops), { lead: sign(signs[node.op]), node: node.right }];
  return [{ lead: undefined, node }];
}

/** Terms on lines, as many on each as fit. */
function gathered(
  terms: readonly Term[],
  room: number,
  indent: number,
  again: Breaker,
): readonly FormulaLine[] {
  const lines: FormulaLine[] = [];
  for (const { lead, node } of terms) {
    const own = operand(node, room - (lead?.width ?? 0), indent, again);
    const marked = lead ? led(own, lead) : own;
    const [first, ...rest] = marked;
    const last = lines.at(-1);
    if (first && last && last.width + first.width <= room && rest.length === 0) {
      lines[lines.length - 1] = joined(last, first);
    } else lines.push(...marked);
  }
  return lines;
}

/** A term or a side on its lines; a choice between formulas stands in parentheses there, so that nothing else joins it. */
function operand(node: Syntax, room: number, indent: number, again: Breaker): readonly FormulaLine[] {
  const plain = again(node, room, indent);
  if (plain.length === 1 || node.kind !== 'call' || !casesOf(node, findFunction(node.name)?.typeset))
    return plain;
  return fenced(again(node, room - 1, indent + 0.5), sign('('), sign(')'), indent);
}

/** Lines with a mark in front of the first. */
function led(lines: readonly FormulaLine[], lead: Mark): readonly FormulaLine[] {
  const [first, ...rest] = lines;
  if (!first) return lines;
  return [{ ...first, pieces: [...lead.pieces, ...first.pieces], width: first.width + lead.width }, ...rest];
}

/** Two lines as one. */
function joined(a: FormulaLine, b: FormulaLine, between = 0): FormulaLine {
  return { indent: a.indent, pieces: [...a.pieces, ...b.pieces], width: a.width + b.width + between };
}

/** Lines with a mark behind the last. */
function ended(lines: readonly FormulaLine[], end: Mark): readonly FormulaLine[] {
  const last = lines.at(-1);
  if (!last) return lines;
  return [
    ...lines.slice(0, -1),
    { ...last, pieces: [...last.pieces, ...end.pieces], width: last.width + end.width },
  ];
}

function fenced(
  lines: readonly FormulaLine[],
  open: Mark,
  close: Mark,
  indent: number,
): readonly FormulaLine[] {
  const [first, ...rest] = ended(led(lines, open), close);
  return first ? [{ ...first, indent }, ...rest] : lines;
}

function callLines(call: CallSyntax, room: number, indent: number, again: Breaker): readonly FormulaLine[] {
  const fn = findFunction(call.name);
  const cases = casesOf(call, fn?.typeset);
  if (cases) return caseLines(cases, room, indent, again);
  if ((fn?.typeset !== undefined && fn.typeset !== 'sum') || call.args.length === 0)
    return [{ indent, pieces: [{ kind: 'node', node: call }], width: room }];
  const name = fn?.typeset === 'sum' ? '∑' : (fn?.typesetName ?? call.name);
  const called: Piece = { kind: name === '∑' ? 'sign' : 'name', text: name };
  const open: Mark = { pieces: [called, ...sign('(').pieces], width: textWidth(name) + 0.9 };
  const inner = call.args.map((arg, at) => {
    const lead = at === 0 ? open : undefined;
    const lines = again(arg, room - 2 - (lead?.width ?? 0), indent + 1.5);
    const closed = ended(lines, sign(at < call.args.length - 1 ? ';' : ')'));
    return lead ? led(closed, lead) : closed;
  });
  const lines: FormulaLine[] = [];
  for (const own of inner) {
    const [first, ...rest] = own;
    const last = lines.at(-1);
    if (first && last && rest.length === 0 && last.width + first.width + 0.3 <= room - 1.5)
      lines[lines.length - 1] = joined(last, first, 0.3);
    else lines.push(...own);
  }
  const [first, ...rest] = lines;
  return first ? [{ ...first, indent }, ...rest] : lines;
}

interface Case {
  readonly value: Syntax;
  /** What must hold; undefined for what is left over. */
  readonly when: readonly Syntax[] | undefined;
}

/** The cases of a choice between formulas; undefined for any other call. */
function casesOf({ args }: CallSyntax, form: string | undefined): readonly Case[] | undefined {
  const at = (index: number): Syntax | undefined => args[index];
  const cases: Case[] = [];
  const add = (value: Syntax | undefined, when: readonly (Syntax | undefined)[] | undefined): void => {
    if (value) cases.push({ value, when: when?.filter((one) => one !== undefined) });
  };
  if (form === 'if') {
    add(at(1), [at(0)]);
    add(at(2), undefined);
  } else if (form === 'ifs') {
    for (let index = 0; index + 1 < args.length; index += 2) {
      const condition = at(index);
      const rest = condition?.kind === 'truth' && condition.value;
      add(at(index + 1), rest ? undefined : [condition]);
    }
  } else if (form === 'switch') {
    for (let index = 1; index + 1 < args.length; index += 2) add(at(index + 1), [at(0), at(index)]);
    if (args.length % 2 === 0) add(at(args.length - 1), undefined);
  } else return undefined;
  return cases;
}

/** One case after another: what must hold, then what follows, on one line if they fit. */
function caseLines(
  cases: readonly Case[],
  room: number,
  indent: number,
  again: Breaker,
): readonly FormulaLine[] {
  return cases.flatMap(({ value, when }) => {
    const head = when ? condition(when, room, indent, again) : [line(indent, words('otherwise  '))];
    const last = head.at(-1);
    const beside = again(value, room - (last?.width ?? 0), indent);
    const [first, ...rest] = beside;
    if (last && first && rest.length === 0 && last.width + first.width <= room) {
      return [...head.slice(0, -1), joined(last, first)];
    }
    return [...head, ...again(value, room - 1.5, indent + 1.5)];
  });
}

function line(indent: number, { pieces, width }: Mark): FormulaLine {
  return { indent, pieces, width };
}

function condition(
  [subject, value]: readonly Syntax[],
  room: number,
  indent: number,
  again: Breaker,
): readonly FormulaLine[] {
  const left = subject ? again(subject, room - 2.2, indent) : [];
  const right = value ? again(value, room - 2, indent) : [];
  const equal = right.length > 0 ? led(right, sign('=')) : [];
  const [first, ...rest] = equal;
  const last = left.at(-1);
  const both = first && last ? [...left.slice(0, -1), joined(last, first), ...rest] : left;
  return ended(led(both, words('if ')), words(':  '));
}
