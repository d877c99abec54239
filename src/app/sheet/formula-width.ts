import { findFunction, type Syntax } from '../../language/index.ts';

/** What stands for a name when its width is judged: the name itself, or the number put in. */
export type TextOf = (name: string) => string;

/**
 * About how wide a formula is set, in em of its type: enough to choose between beside and below without laying the
 * page out. `textOf` gives what is drawn for a name.
 */
export function formulaWidth(node: Syntax, textOf: TextOf = (name) => name): number {
  const width = (part: Syntax): number => formulaWidth(part, textOf);
  switch (node.kind) {
    case 'number':
      return textWidth(`${node.value}`) + (node.unit ? textWidth(node.unit.text) + 0.2 : 0);
    case 'text':
      return textWidth(node.value) + 0.9;
    case 'truth':
      return 1.8;
    case 'name':
      return nameWidth(textOf(node.name));
    case 'group':
      return width(node.inner) + (node.inner.kind === 'binary' && node.inner.op === '/' ? 0 : 0.8);
    case 'negate':
      return width(node.operand) + 0.8;
    case 'percent':
      return width(node.operand) + 0.8;
    case 'root':
      return width(node.operand) + 1;
    case 'power':
      return width(node.base) + exponentWidth(bare(node.exponent), width);
    case 'binary':
      if (node.op === '/') return Math.max(width(bare(node.left)), width(bare(node.right))) + 0.3;
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

/** Inside an exponent a fraction stands on the line, and all is smaller. */
function exponentWidth(node: Syntax, width: (part: Syntax) => number): number {
  if (node.kind === 'binary' && node.op === '/') return 0.75 * (width(node.left) + width(node.right)) + 0.9;
  return 0.75 * width(node) + 0.1;
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
      return 0.7 * at(0) + 0.7;
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

function nameWidth(text: string): number {
  const [head = '', ...below] = text.split('_');
  const dots = head.split('.').length - 1;
  return textWidth(head) + 0.25 * dots + 0.72 * textWidth(below.join(','));
}

/** How wide text is in the face of mathematics, in em: thin letters, wide letters, all others. */
export function textWidth(text: string): number {
  let width = 0;
  for (const letter of text)
    width += /[ijlt.,;:'|!()\u202f ]/.test(letter) ? 0.3 : /[mwMWA-Z%]/.test(letter) ? 0.72 : 0.5;
  return width;
}
