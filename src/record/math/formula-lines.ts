import { type CallSyntax, findFunction, type Syntax } from '../../language/index.ts';
import {
  alone,
  appendMark,
  callMark,
  closing,
  encloseLines,
  type FormulaLine,
  joinLines,
  type Mark,
  opening,
  prependMark,
  scriptMark,
  sign,
  words,
} from './formula-pieces.ts';
import { exponentWidth, formulaWidth, type TextOf, textWidth } from './formula-width.ts';

/**
 * A formula on as few lines as a width (in em) allows: broken in front of signs and of "and" and "or", between
 * arguments and the words of a text, a fraction at its bar, and a choice between formulas as one case after another. A
 * name, a number and a root stay whole.
 */
export function formulaLines(node: Syntax, most: number, textOf?: TextOf): readonly FormulaLine[] {
  const attempts = { left: MOST_ATTEMPTS };
  const breaker = (part: Syntax, room: number, indent: number): readonly FormulaLine[] =>
    broken(part, { room, indent, textOf, attempts, again: breaker });
  return breaker(node, most, 0);
}

/** So often an argument is tried both beside its name and below it: each try within another would double the work. */
const MOST_ATTEMPTS = 60;

type Breaker = (node: Syntax, room: number, indent: number) => readonly FormulaLine[];

function broken(node: Syntax, parts: Parts): readonly FormulaLine[] {
  const { room, indent, textOf, again } = parts;
  const width = formulaWidth(node, textOf);
  const whole: FormulaLine = { indent, pieces: [{ kind: 'node', node }], width };
  if (width <= room) return [whole];
  switch (node.kind) {
    case 'comparison':
      return [
        ...operand(node.left, parts),
        ...prependMark(operand(node.right, narrower(parts, 1.3)), sign(comparisonSigns[node.op])),
      ];
    case 'binary': {
      const { op } = node;
      if (op === '/') return gathered(chain(node, ['/']), parts);
      return gathered(chain(node, op === '*' ? ['*'] : op === '&' ? ['&'] : ['+', '-']), parts);
    }
    case 'negate':
      return prependMark(operand(node.operand, narrower(parts, 0.8)), opening('−'));
    case 'group':
      return encloseLines(again(node.inner, room - 1, indent + 0.5), opening('('), closing(')'), indent);
    case 'power':
      return node.base.kind === 'group' ? powerLines(node.base.inner, node.exponent, parts) : [whole];
    case 'call':
      return callLines(node, parts) ?? [whole];
    case 'text':
      return textLines(`“${node.value}”`, parts);
    default:
      return [whole];
  }
}

/** What the parts of a formula are broken with: the room they have, where they start, and how each is broken. */
interface Parts {
  readonly room: number;
  readonly indent: number;
  readonly textOf: TextOf | undefined;
  readonly attempts: { left: number };
  readonly again: Breaker;
}

const narrower = (parts: Parts, width: number): Parts => ({ ...parts, room: parts.room - width });

const signs = { '+': '+', '-': '−', '*': '·', '/': '/', '&': '&' } as const;
const comparisonSigns = { '<=': '≤', '<': '<', '>=': '≥', '>': '>', '=': '=', '<>': '≠' } as const;

interface Term {
  readonly lead: Mark | undefined;
  readonly node: Syntax;
}

/** The terms of a sum, the factors of a product or the halves of a fraction, each with the sign in front of it. */
function chain(node: Syntax, ops: readonly (keyof typeof signs)[]): readonly Term[] {
  if (node.kind === 'binary' && ops.includes(node.op))
    return [...chain(node.left, ops), { lead: sign(signs[node.op]), node: node.right }];
  return [{ lead: undefined, node }];
}

/** Terms on lines, as many on each as fit. */
function gathered(terms: readonly Term[], parts: Parts): readonly FormulaLine[] {
  const lines: FormulaLine[] = [];
  for (const { lead, node } of terms) {
    const own = operand(node, narrower(parts, lead?.width ?? 0));
    const marked = lead ? prependMark(own, lead) : own;
    const [first, ...rest] = marked;
    const last = lines.at(-1);
    if (first && last && last.width + first.width <= parts.room && rest.length === 0) {
      lines[lines.length - 1] = joinLines(last, first);
    } else lines.push(...marked);
  }
  return lines;
}

/** A term or a side on its lines; a choice between formulas, and conditions among others, keep to themselves in parentheses. */
function operand(node: Syntax, { room, indent, textOf, again }: Parts): readonly FormulaLine[] {
  const form = node.kind === 'call' ? findFunction(node.name)?.typeset : undefined;
  // A choice that does not fit is always on several lines: that is known without breaking it.
  const loose = form === 'and' || form === 'or' || (isChoice(form) && formulaWidth(node, textOf) > room);
  return loose
    ? encloseLines(again(node, room - 1, indent + 0.5), opening('('), closing(')'), indent)
    : again(node, room, indent);
}

/** A text in quotation marks, as many of its words on a line as fit. */
function textLines(text: string, { room, indent }: Parts): readonly FormulaLine[] {
  const [first = '', ...rest] = text.split(' ');
  const lines = [first];
  for (const word of rest) {
    const longer = `${lines.at(-1)} ${word}`;
    if (textWidth(longer) <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines.map((line) => alone(indent, words(line)));
}

/** A power of a group: the power stands at the parenthesis that closes it. */
function powerLines(base: Syntax, exponent: Syntax, parts: Parts): readonly FormulaLine[] {
  const { room, indent, textOf, again } = parts;
  const width = exponentWidth(exponent, textOf);
  const inner = again(base, room - 1 - width, indent + 0.5);
  return encloseLines(inner, opening('('), scriptMark('raised', ')', exponent, width), indent);
}

const fences: Readonly<Record<string, readonly [open: string, close: string]>> = {
  bars: ['|', '|'],
  floor: ['⌊', '⌋'],
  ceiling: ['⌈', '⌉'],
};

/** The lines of a call; undefined where its form does not break. */
function callLines(call: CallSyntax, parts: Parts): readonly FormulaLine[] | undefined {
  const { room, indent, textOf, again } = parts;
  const fn = findFunction(call.name);
  const [first, second] = call.args;
  const cases = casesOf(call, fn?.typeset);
  if (cases) return caseLines(cases, parts);
  if (!first) return undefined;
  switch (fn?.typeset) {
    case undefined:
      return listLines(fn?.typesetName ?? call.name, call.args, parts);
    case 'sum':
      return listLines('∑', call.args, parts);
    case 'exponential':
      return listLines('exp', call.args, parts);
    case 'bars':
    case 'floor':
    case 'ceiling': {
      const [open = '', close = ''] = fences[fn.typeset] ?? [];
      const width = second ? exponentWidth(second, textOf) : 0;
      const end = second ? scriptMark('lowered', close, second, width) : closing(close);
      return encloseLines(again(first, room - 1 - width, indent + 0.5), opening(open), end, indent);
    }
    case 'power':
      return second && first.kind !== 'name' ? powerLines(first, second, parts) : undefined;
    case 'and':
    case 'or': {
      const word = words(fn.typeset === 'and' ? ' and ' : ' or ');
      return gathered(
        call.args.map((node, at) => ({ lead: at === 0 ? undefined : word, node })),
        parts,
      );
    }
    case 'not':
      return prependMark(operand(first, narrower(parts, 1.8)), words('not '));
    default:
      return undefined;
  }
}

/** A name with its arguments, as many on a line as fit; the first goes below the name where it would not fit beside. */
function listLines(name: string, args: readonly Syntax[], parts: Parts): readonly FormulaLine[] {
  const { room, indent, textOf, attempts, again } = parts;
  const open = callMark(name);
  const argument = (arg: Syntax, at: number, beside: number): readonly FormulaLine[] =>
    appendMark(again(arg, room - 2 - beside, indent + 1.5), at < args.length - 1 ? sign(';') : closing(')'));
  const headed = (arg: Syntax): readonly FormulaLine[] => {
    const fits = formulaWidth(arg, textOf) <= room - 2 - open.width;
    if (!fits && attempts.left <= 0) return [alone(indent, open), ...argument(arg, 0, 0)];
    attempts.left -= fits ? 0 : 1;
    const beside = prependMark(argument(arg, 0, open.width), open);
    if (fits) return beside;
    const below = [alone(indent, open), ...argument(arg, 0, 0)];
    const broken = beside.length > 1 && beside.length >= below.length;
    return broken || widest(beside) > room ? below : beside;
  };
  const lines: FormulaLine[] = [];
  args.forEach((arg, at) => {
    const own = at === 0 ? headed(arg) : argument(arg, at, 0);
    const [first, ...rest] = own;
    const last = lines.at(-1);
    if (first && last && rest.length === 0 && last.width + first.width + 0.3 <= room - 1.5)
      lines[lines.length - 1] = joinLines(last, first, 0.3);
    else lines.push(...own);
  });
  const [first, ...rest] = lines;
  return first ? [{ ...first, indent }, ...rest] : lines;
}

const widest = (lines: readonly FormulaLine[]): number => Math.max(...lines.map(({ width }) => width));

const isChoice = (form: string | undefined): boolean => form === 'if' || form === 'ifs' || form === 'switch';

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
function caseLines(cases: readonly Case[], { room, indent, textOf, again }: Parts): readonly FormulaLine[] {
  return cases.flatMap(({ value, when }) => {
    const head = when ? condition(when, room, indent, again) : [alone(indent, words('otherwise  '))];
    const last = head.at(-1);
    const width = formulaWidth(value, textOf);
    if (last && last.width + width <= room) {
      const whole: FormulaLine = { indent, pieces: [{ kind: 'node', node: value }], width };
      return [...head.slice(0, -1), joinLines(last, whole)];
    }
    return [...head, ...again(value, room - 1.5, indent + 1.5)];
  });
}

function condition(
  [subject, value]: readonly Syntax[],
  room: number,
  indent: number,
  again: Breaker,
): readonly FormulaLine[] {
  const left = subject ? again(subject, room - 2.2, indent) : [];
  const right = value ? again(value, room - 2, indent) : [];
  const equal = right.length > 0 ? prependMark(right, sign('=')) : [];
  const [first, ...rest] = equal;
  const last = left.at(-1);
  const fits = first && last && last.width + first.width <= room - 2.2;
  const both = fits ? [...left.slice(0, -1), joinLines(last, first), ...rest] : [...left, ...equal];
  return appendMark(prependMark(both, words('if ')), words(':  '));
}
