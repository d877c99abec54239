import type { SyntaxNode } from '@lezer/common';
import { type Problem, problem } from '../diagnostics/index.ts';
import { normaliseLookAlikes } from '../units/index.ts';
import { parser } from './grammar/parser.js';
import type { CallSyntax, NumberSyntax, Syntax } from './syntax.ts';
import { commasInNumbers, diagnose, unwrittenProduct } from './syntax-errors.ts';
import type { ComparisonOperator } from './typed.ts';

/** A formula's tree and what is wrong with its writing, in the order it stands there. */
export interface ParsedFormula {
  /** The text with look-alike characters replaced, unit for unit. */
  readonly text: string;
  readonly syntax: Syntax;
  readonly problems: readonly Problem[];
}

const spelling = /^\p{L}[\p{L}\d_']*(?:\.\p{L}[\p{L}\d_']*)*/u;
const longest = 10_000;
const deepest = 250;
/** The grammar's tree is built by recursion, one step deeper for each of these at worst. */
const mostSigns = 1000;
const sign = /[-+*/^%&=<>(,;√²³·÷×−≤≥≠]/g;

const comparisonSigns: ReadonlyMap<string, ComparisonOperator> = new Map(
  Object.entries({
    '=': '=',
    '<>': '<>',
    '≠': '<>',
    '<': '<',
    '<=': '<=',
    '≤': '<=',
    '>': '>',
    '>=': '>=',
    '≥': '>=',
  } as const),
);
const arithmeticSigns: ReadonlyMap<string, '+' | '-' | '*' | '/' | '&'> = new Map(
  Object.entries({
    '+': '+',
    '-': '-',
    '−': '-',
    '*': '*',
    '·': '*',
    '×': '*',
    '/': '/',
    '÷': '/',
    '&': '&',
  } as const),
);

/**
 * Reads a formula. Never fails: what cannot be understood becomes an `error` node with a problem. Writing that two
 * careful people could read two ways is kept in the tree and reported with both readings as fixes.
 */
export function parseFormula(source: string): ParsedFormula {
  const text = normalised(source);
  const whole = { from: 0, to: text.length };
  if (text.length > longest) {
    const tooLong = problem('formula-too-long', whole, { length: text.length, limit: longest });
    return { text, syntax: { kind: 'error', ...whole }, problems: [tooLong] };
  }
  if (text.length > mostSigns && (text.match(sign)?.length ?? 0) > mostSigns) {
    const tooMany = problem('formula-too-many-parts', whole, { limit: mostSigns });
    return { text, syntax: { kind: 'error', ...whole }, problems: [tooMany] };
  }
  const builder = new TreeBuilder(text);
  const top = parser.parse(text).topNode;
  const first = top.firstChild;
  const start = first?.name === 'Equals' ? first.nextSibling : first;
  const syntax: Syntax = start ? builder.build(start, 0) : { kind: 'error', ...whole };
  const slips = builder.broken || hasError(top) ? diagnose(text, top) : commasInNumbers(text);
  const problems = [...slips, ...builder.problems].sort((a, b) => a.from - b.from);
  return { text, syntax, problems };
}

/** The formula with look-alike characters replaced, but for what stands in quotation marks, straight or curly. */
function normalised(source: string): string {
  let text = '';
  let at = 0;
  for (const { 0: quotation, index } of source.matchAll(/"(?:[^"]|"")*"|“[^"“”]*”/g)) {
    text += `${normaliseLookAlikes(source.slice(at, index))}"${quotation.slice(1, -1)}"`;
    at = index + quotation.length;
  }
  return text + normaliseLookAlikes(source.slice(at));
}

function hasError(node: SyntaxNode): boolean {
  let found = false;
  node.cursor().iterate((part) => {
    if (part.type.isError) found = true;
    return !found;
  });
  return found;
}

/** Turns Lezer's tree into ours and reports what could be read two ways. */
class TreeBuilder {
  readonly problems: Problem[] = [];
  /** Whether an error node stands in the tree. */
  broken = false;

  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  build(node: SyntaxNode, depth: number): Syntax {
    const { from, to } = node;
    if (depth > deepest) {
      if (!this.problems.some((known) => known.code === 'formula-too-deep'))
        this.problems.push(problem('formula-too-deep', { from, to }, { limit: deepest }));
      return { kind: 'error', from, to };
    }
    const parts = childrenOf(node);
    const at = (index: number): Syntax => {
      const part = parts[index];
      return part && !part.type.isError ? this.build(part, depth + 1) : this.error(from, to);
    };
    switch (node.name) {
      case 'Number':
        return this.number(node);
      case 'Quantity':
        return this.quantity(node);
      case 'Text':
        return { kind: 'text', from, to, value: this.slice(from + 1, to - 1).replaceAll('""', '"') };
      case 'Name': {
        // An error node may stretch a name over what follows it.
        const name = spelling.exec(this.slice(from, to))?.[0] ?? '';
        if (/^(true|false)$/i.test(name))
          return { kind: 'truth', from, to, value: name.toLowerCase() === 'true' };
        return { kind: 'name', from, to: from + name.length, name };
      }
      case 'Call':
        return this.call(node, depth);
      case 'Group':
        return { kind: 'group', from, to, inner: at(0) };
      case 'Root':
        return { kind: 'root', from, to, operand: at(0) };
      case 'Percent':
        return this.percent(from, to, at(0));
      case 'Raised':
        return this.raised(from, to, at(0), parts[1]);
      case 'Power':
        return this.power(from, to, at(0), at(2));
      case 'Signed':
        return this.signed(from, to, parts[0], at(1));
      case 'Product':
      case 'Sum':
      case 'Join':
        return this.binary(from, to, at(0), parts[1], at(2));
      case 'Comparison':
        return this.comparison(from, to, at(0), parts[1], at(2));
      default:
        return this.error(from, to);
    }
  }

  private slice(from: number, to: number): string {
    return this.text.slice(from, to);
  }

  /** A part as written, a raised digit as an ordinary one. */
  private plainly(part: Syntax): string {
    return this.slice(part.from, part.to).replace(/^²$/, '2').replace(/^³$/, '3');
  }

  private error(from: number, to: number): Syntax {
    this.broken = true;
    return { kind: 'error', from, to };
  }

  private number(node: SyntaxNode): NumberSyntax {
    const { from, to } = node;
    const value = Number(this.slice(from, to));
    if (!Number.isFinite(value))
      this.problems.push(problem('number-too-large', { from, to }, { written: this.slice(from, to) }));
    if (value === 0 && /[1-9]/.test(this.slice(from, to).replace(/e.*$/i, '')))
      this.problems.push(problem('number-too-small', { from, to }, { written: this.slice(from, to) }));
    return { kind: 'number', from, to, value: Number.isFinite(value) ? value : 0 };
  }

  private quantity(node: SyntaxNode): Syntax {
    const { from, to } = node;
    const [numberNode, unitNode] = childrenOf(node);
    if (!numberNode || !unitNode || unitNode.type.isError) return this.error(from, to);
    const number = this.number(numberNode);
    const compound = unitNode.name === 'UnitGroup';
    // A broken unit is told of as what it looks like: an open parenthesis, or a product.
    if (compound && hasError(unitNode)) return this.error(from, to);
    if (compound && !/[\p{L}\p{Sc}°%‰]/u.test(this.slice(unitNode.from, unitNode.to))) {
      this.problems.push(unwrittenProduct(this.text, numberNode, unitNode));
      return { kind: 'error', from, to };
    }
    const inset = compound ? 1 : 0;
    const unit = {
      text: this.slice(unitNode.from + inset, unitNode.to - inset),
      compound,
      from: unitNode.from + inset,
      to: unitNode.to - inset,
    };
    if (unitNode.from === numberNode.to && !compound && !unit.text.startsWith('°')) {
      const written = this.slice(from, to);
      const spaced = { label: 'write a space', from: numberNode.to, to: numberNode.to, insert: ' ' };
      this.problems.push(problem('unit-needs-space', { from, to }, { written, unit: unit.text }, [spaced]));
    }
    return { ...number, from, to, unit };
  }

  private call(node: SyntaxNode, depth: number): Syntax {
    const { from, to } = node;
    const [fn, list] = childrenOf(node);
    if (!fn || !list) return this.error(from, to);
    const args: Syntax[] = [];
    let awaiting = true;
    let last = list.from + 1;
    const missing = (at: number): void => {
      this.problems.push(
        problem('argument-missing', { from: at, to: at }, { function: this.slice(fn.from, fn.to) }),
      );
      args.push({ kind: 'error', from: at, to: at });
    };
    for (const part of childrenOf(list)) {
      if (part.type.isError) this.broken = true;
      else if (part.name === 'Separator') {
        if (awaiting) missing(part.from);
        awaiting = true;
        last = part.to;
      } else {
        args.push(this.build(part, depth + 1));
        awaiting = false;
      }
    }
    if (awaiting && args.length > 0) missing(last);
    const call: CallSyntax = {
      kind: 'call',
      from,
      to,
      name: this.slice(fn.from, fn.to),
      nameSpan: { from: fn.from, to: fn.to },
      args,
    };
    if (/^(true|false)$/i.test(call.name) && args.length === 0)
      return { kind: 'truth', from, to, value: call.name.toLowerCase() === 'true' };
    return call;
  }

  private percent(from: number, to: number, operand: Syntax): Syntax {
    const bare =
      operand.kind === 'group' || operand.kind === 'call' || (operand.kind === 'number' && !operand.unit);
    if (!bare && operand.kind !== 'error') {
      const written = this.slice(operand.from, operand.to);
      this.problems.push(
        problem('percent-after', { from, to }, { operand: written }, [
          { label: `(${written})%`, from, to, insert: `(${written})%` },
        ]),
      );
    }
    return { kind: 'percent', from, to, operand };
  }

  private raised(from: number, to: number, base: Syntax, mark: SyntaxNode | undefined): Syntax {
    if (!mark) return this.error(from, to);
    const value = this.slice(mark.from, mark.to) === '³' ? 3 : 2;
    return this.power(from, to, base, { kind: 'number', from: mark.from, to: mark.to, value });
  }

  private power(from: number, to: number, base: Syntax, exponent: Syntax): Syntax {
    const baseText = this.slice(base.from, base.to);
    const raisedBy = this.slice(base.to, to)
      .trim()
      .replace(/^\^\s*/, '');
    const exponentText = raisedBy.replace(/^²$/, '2').replace(/^³$/, '3');
    const rewrite = (insert: string) => ({ label: insert, from, to, insert });
    if (base.kind === 'number' && base.unit) {
      const number = this.slice(base.from, base.unit.from).replace(/\s*\(?\s*$/, '');
      const oneUnit = base.unit.compound
        ? `${number} * (1 (${base.unit.text}))^${exponentText}`
        : `${number} (${base.unit.text}^${exponentText})`;
      const whole = `(${baseText})^${exponentText}`;
      this.problems.push(
        problem(
          'unit-power',
          { from, to },
          { written: this.slice(from, to), first: oneUnit, second: whole },
          [rewrite(oneUnit), rewrite(whole)],
        ),
      );
    } else if (base.kind === 'power' || exponent.kind === 'power') {
      const [inner, middle] = base.kind === 'power' ? [base, base.exponent] : [exponent, base];
      if (inner.kind !== 'power') return { kind: 'power', from, to, base, exponent };
      const [a, b, c] =
        base.kind === 'power' ? [base.base, middle, exponent] : [base, inner.base, inner.exponent];
      const [x, y, z] = [a, b, c].map((part) => this.plainly(part));
      const first = `(${x}^${y})^${z}`;
      const second = `${x}^(${y}^${z})`;
      this.problems.push(
        problem('power-chain', { from, to }, { written: this.slice(from, to), first, second }, [
          rewrite(first),
          rewrite(second),
        ]),
      );
    } else if (base.kind === 'root') {
      const inner = this.slice(base.operand.from, base.operand.to);
      const first = `(${baseText})^${exponentText}`;
      const second = `√(${inner}^${exponentText})`;
      this.problems.push(
        problem('root-power', { from, to }, { written: this.slice(from, to), first, second }, [
          rewrite(first),
          rewrite(second),
        ]),
      );
    }
    return { kind: 'power', from, to, base, exponent };
  }

  private signed(from: number, to: number, sign: SyntaxNode | undefined, operand: Syntax): Syntax {
    if (!sign) return this.error(from, to);
    if (this.slice(sign.from, sign.to) === '+') return operand;
    if (operand.kind === 'power') {
      const base = this.slice(operand.base.from, operand.base.to);
      const rest = this.slice(operand.base.to, to);
      const first = `(-${base})${rest}`;
      const second = `-(${base}${rest})`;
      this.problems.push(
        problem('minus-power', { from, to }, { written: this.slice(from, to), first, second }, [
          { label: first, from, to, insert: first },
          { label: second, from, to, insert: second },
        ]),
      );
    }
    return { kind: 'negate', from, to, operand };
  }

  private binary(
    from: number,
    to: number,
    left: Syntax,
    sign: SyntaxNode | undefined,
    right: Syntax,
  ): Syntax {
    const op = sign && arithmeticSigns.get(this.slice(sign.from, sign.to));
    if (!sign || !op) return this.error(from, to);
    const opSpan = { from: sign.from, to: sign.to };
    if (op === '/' && right.kind === 'number' && right.unit) this.fractionWithUnit(left, right);
    return { kind: 'binary', from, to, op, left, right, opSpan };
  }

  /** `3/4 in`: three quarters of an inch to one reader, three over four inches to another. */
  private fractionWithUnit(left: Syntax, right: NumberSyntax): void {
    const numerator = lastFactor(left);
    if (numerator.kind !== 'number' || numerator.unit || !right.unit) return;
    const { from } = numerator;
    const { to } = right;
    const unit = right.unit.compound ? `(${right.unit.text})` : right.unit.text;
    const top = this.slice(from, numerator.to);
    const first = `(${top}/${right.value}) * 1 ${unit}`;
    const second = `${top}/(${this.slice(right.from, right.to)})`;
    this.problems.push(
      problem('fraction-with-unit', { from, to }, { written: this.slice(from, to), first, second }, [
        { label: first, from, to, insert: first },
        { label: second, from, to, insert: second },
      ]),
    );
  }

  private comparison(
    from: number,
    to: number,
    left: Syntax,
    sign: SyntaxNode | undefined,
    right: Syntax,
  ): Syntax {
    const op = sign && comparisonSigns.get(this.slice(sign.from, sign.to));
    if (!op) return this.error(from, to);
    const parts = [left, right, ...(left.kind === 'comparison' ? [left.left, left.right] : [])];
    if (left.kind === 'comparison' && parts.every((part) => part.kind !== 'error')) {
      const [a, b, c] = [left.left, left.right, right].map((part) => this.slice(part.from, part.to));
      const insert = `AND(${a} ${left.op} ${b}; ${b} ${op} ${c})`;
      this.problems.push(
        problem('comparison-chain', { from, to }, { written: this.slice(from, to), instead: insert }, [
          { label: insert, from, to, insert },
        ]),
      );
    }
    return { kind: 'comparison', from, to, op, left, right };
  }
}

function childrenOf(node: SyntaxNode): SyntaxNode[] {
  const children: SyntaxNode[] = [];
  for (let child = node.firstChild; child; child = child.nextSibling) children.push(child);
  return children;
}

/** The factor that stands directly before the sign, without a minus of its own. */
function lastFactor(node: Syntax): Syntax {
  if (node.kind === 'negate') return lastFactor(node.operand);
  return node.kind === 'binary' && (node.op === '*' || node.op === '/') ? lastFactor(node.right) : node;
}
