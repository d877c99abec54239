import type { Syntax, TypesetForm } from '../../language/index.ts';
import { element, type Markup, none } from '../../markup/index.ts';
import {
  encloseMarkup,
  numeral,
  operator,
  parenthesise,
  power,
  row,
  upright,
  variable,
  words,
} from './markup.ts';

type Draw = (part: Syntax) => Markup;
type Form = (args: readonly Syntax[], draw: Draw) => Markup;

/** Parentheses that a form makes needless. */
function inside(node: Syntax | undefined, draw: Draw): Markup {
  if (!node) return none;
  return node.kind === 'group' ? inside(node.inner, draw) : draw(node);
}

function between(open: string, close: string): Form {
  return ([x, step], draw) => {
    const held = encloseMarkup(open, inside(x, draw), close);
    return step ? element('msub', {}, held, row(draw(step))) : held;
  };
}

/** Values beside their conditions, behind one brace. */
function cases(lines: readonly (readonly [value: Markup, condition: Markup])[]): Markup {
  const table = lines.map(([value, condition]) =>
    element('mtr', {}, element('mtd', {}, value), element('mtd', {}, condition)),
  );
  return row(operator('{', { stretchy: 'true' }), element('mtable', { class: 'cases' }, table));
}

const space = element('mspace', { width: '0.3em' });
const when = (condition: Markup): Markup => row(words('if'), space, condition);
const otherwise = words('otherwise');

/** A condition among others; one that is joined itself keeps parentheses. */
function member(node: Syntax, draw: Draw): Markup {
  return node.kind === 'call' && /^(and|or)$/i.test(node.name) ? parenthesise(draw(node)) : draw(node);
}

/** Conditions joined by a word. */
function joined(word: string, args: readonly Syntax[], draw: Draw): Markup {
  const parts = args.map((arg) => member(arg, draw));
  return row(...parts.flatMap((part, at) => (at === 0 ? [part] : [space, words(word), space, part])));
}

function pairs(args: readonly Syntax[]): readonly (readonly [Syntax, Syntax])[] {
  const found: (readonly [Syntax, Syntax])[] = [];
  for (let at = 0; at + 1 < args.length; at += 2) {
    const [first, second] = [args[at], args[at + 1]];
    if (first && second) found.push([first, second]);
  }
  return found;
}

/** What is still legible as an exponent: a name or a number, with a sign or grouped. */
function isShort(node: Syntax): boolean {
  if (node.kind === 'negate') return isShort(node.operand);
  if (node.kind === 'group') return isShort(node.inner);
  return node.kind === 'name' || node.kind === 'number';
}

/** A root; one of another root is set as one, with what it is in its hook: the fourth root of ψ. */
export function root(node: Syntax, draw: Draw, degree = 2): Markup {
  if (node.kind === 'group') return root(node.inner, draw, degree);
  const within = rootedIn(node);
  if (within) return root(within, draw, degree * 2);
  return degree === 2
    ? element('msqrt', {}, draw(node))
    : element('mroot', {}, row(draw(node)), numeral(`${degree}`));
}

/** What a square root is taken of, where the whole of a formula's part is one. */
function rootedIn(node: Syntax): Syntax | undefined {
  if (node.kind === 'group') return rootedIn(node.inner);
  if (node.kind === 'root') return node.operand;
  return node.kind === 'call' && node.name.toUpperCase() === 'SQRT' ? node.args[0] : undefined;
}

/** How each special form of the function table is drawn. */
export const forms: Readonly<Record<TypesetForm, Form>> = {
  root: ([x], draw) => (x ? root(x, draw) : element('msqrt', {}, none)),
  bars: between('|', '|'),
  floor: between('⌊', '⌋'),
  ceiling: between('⌈', '⌉'),
  pi: () => variable('π'),
  exponential: ([x], draw) =>
    x && isShort(x)
      ? power(upright('e'), row(inside(x, draw)))
      : row(upright('exp'), operator('\u2061'), parenthesise(inside(x, draw))),
  power: ([base, exponent], draw) =>
    power(base?.kind === 'name' ? draw(base) : parenthesise(inside(base, draw)), row(inside(exponent, draw))),
  blank: ([cell], draw) => row(cell ? draw(cell) : none, space, words('is blank')),
  not: ([condition], draw) => row(words('not'), space, condition ? member(condition, draw) : none),
  and: (args, draw) => joined('and', args, draw),
  or: (args, draw) => joined('or', args, draw),
  sum: (args, draw) =>
    row(
      operator('∑', { movablelimits: 'false' }),
      ...args.map((arg) => (arg.kind === 'binary' ? parenthesise(draw(arg)) : draw(arg))),
    ),
  if: ([condition, value, other], draw) =>
    cases([
      [value ? draw(value) : none, condition ? when(inside(condition, draw)) : none],
      [other ? draw(other) : none, otherwise],
    ]),
  ifs: (args, draw) =>
    cases(
      pairs(args).map(([condition, value]) => [
        draw(value),
        condition.kind === 'truth' && condition.value ? otherwise : when(inside(condition, draw)),
      ]),
    ),
  switch: ([subject, ...rest], draw) => {
    const lines = pairs(rest).map(
      ([value, result]) =>
        [draw(result), when(row(subject ? draw(subject) : none, operator('='), draw(value)))] as const,
    );
    const last = rest.length % 2 === 1 ? rest[rest.length - 1] : undefined;
    return cases(last ? [...lines, [draw(last), otherwise]] : lines);
  },
};
