import { findFunction, type NameSyntax, type Syntax } from '../../language/index.ts';

/** What stands for a name when its width is judged: the name itself, or the number put in. */
export type TextOf = (name: NameSyntax) => string;

/**
 * About how wide a formula is set, in em of its type: enough to choose between beside and below without laying the
 * page out. `textOf` gives what is drawn for a name.
 */
export function formulaWidth(node: Syntax, textOf: TextOf = ({ name }) => name, flat = false): number {
  const width = (part: Syntax): number => formulaWidth(part, textOf, flat);
  const flatWidth = (part: Syntax): number => formulaWidth(bare(part), textOf, true);
  switch (node.kind) {
    case 'number':
      return textWidth(`${node.value}`) + (node.unit ? textWidth(node.unit.text) + 0.2 : 0);
    case 'text':
      return textWidth(node.value) + 0.9;
    case 'truth':
      return 1.8;
    case 'name':
      return nameWidth(textOf(node));
    case 'group':
      return width(node.inner) + (node.inner.kind === 'binary' && node.inner.op === '/' && !flat ? 0 : 0.8);
    case 'negate':
      return width(node.operand) + 0.8;
    case 'percent':
      return width(node.operand) + 0.8;
    case 'root':
      return width(node.operand) + 1;
    case 'power':
      return baseWidth(node.base, width) + exponentWidth(node.exponent, textOf);
    case 'binary':
      if (node.op === '/' && flat) return width(node.left) + width(node.right) + 0.9;
      if (node.op === '/') return Math.max(flatWidth(node.left), flatWidth(node.right)) + 0.3;
      return width(node.left) + width(node.right) + (node.op === '*' ? 0.75 : 1.25);
    case 'comparison':
      return width(node.left) + width(node.right) + 1.4;
    case 'call':
      return callWidth(node.name, node.args, width);
    case 'error':
      return 1;
  }
}

function bare(node: Syntax): Syntax {
  return node.kind === 'group' ? bare(node.inner) : node;
}

/** A base keeps the parentheses that a fraction elsewhere makes needless. */
function baseWidth(base: Syntax, width: (part: Syntax) => number): number {
  return base.kind === 'group' ? width(base.inner) + 0.8 : width(base);
}

/** How wide an exponent is: all in it is smaller, and a fraction stands on the line. */
export function exponentWidth(exponent: Syntax, textOf?: TextOf): number {
  return 0.75 * formulaWidth(bare(exponent), textOf, true) + 0.1;
}

function callWidth(name: string, args: readonly Syntax[], width: (part: Syntax) => number): number {
  const widths = args.map(width);
  const at = (index: number): number => widths[index] ?? 0;
  const fn = findFunction(name);
  switch (fn?.typeset) {
    case 'if':
      return Math.max(at(1), at(2)) + Math.max(at(0) + 0.8, 4.2) + 2;
    case 'ifs':
      return columnsWidth(widths, 1, 0) + 2.8;
    case 'switch':
      return columnsWidth(widths.slice(1), 1, 0) + at(0) + 4.2;
    case 'root':
      return at(0) + 1;
    case 'exponential':
      // As "exp" of it, the wider of its two forms.
      return at(0) + 2.4;
    case 'power':
      return at(0) + 0.7 * at(1) + 0.8;
    case 'pi':
      return 0.6;
    case 'bars':
    case 'floor':
    case 'ceiling':
      return at(0) + 0.8 + 0.7 * at(1);
    case 'sum':
      return at(0) + 2.3;
    default: {
      const between = Math.max(args.length - 1, 0) * 0.6;
      return textWidth(fn?.typesetName ?? name) + widths.reduce((a, b) => a + b, 1.25) + between;
    }
  }
}

/** Two columns of pairs, each as wide as its widest. */
function columnsWidth(widths: readonly number[], first: 0 | 1, second: 0 | 1): number {
  let [a, b] = [0, 0];
  for (let at = 0; at < widths.length; at += 2) {
    a = Math.max(a, widths[at + first] ?? 0);
    b = Math.max(b, widths[at + second] ?? 0);
  }
  return a + b;
}

/** How wide a name is set, in em: what follows `_` is smaller. */
export function nameWidth(text: string): number {
  const [head = '', ...below] = text.split('_');
  return textWidth(head) + 0.72 * textWidth(below.join(', '));
}

/** How wide text is in the face of mathematics, in em: thin letters, wide letters, all others. */
export function textWidth(text: string): number {
  let width = 0;
  for (const letter of text)
    width += /[fijlt.,;:'|!()\s]/.test(letter)
      ? 0.3
      : /[mwMW]/.test(letter)
        ? 0.85
        : /[A-Z%]/.test(letter)
          ? 0.72
          : 0.52;
  return width;
}
