import type { Syntax } from '../../src/language/index.ts';

/**
 * A tree in one line: `(+ 1 (* 2 a))`; a quantity is `3[ft]`, or `3[(kN/m)]` with its parentheses; a group `{…}`;
 * a call `SUM(a, b)`; what could not be read `?`.
 */
export function writeTree(node: Syntax): string {
  switch (node.kind) {
    case 'number': {
      if (!node.unit) return `${node.value}`;
      return node.unit.compound ? `${node.value}[(${node.unit.text})]` : `${node.value}[${node.unit.text}]`;
    }
    case 'text':
      return JSON.stringify(node.value);
    case 'truth':
      return node.value ? 'TRUE' : 'FALSE';
    case 'name':
      return node.name;
    case 'call':
      return `${node.name}(${node.args.map(writeTree).join(', ')})`;
    case 'group':
      return `{${writeTree(node.inner)}}`;
    case 'negate':
      return `(neg ${writeTree(node.operand)})`;
    case 'percent':
      return `(% ${writeTree(node.operand)})`;
    case 'root':
      return `(√ ${writeTree(node.operand)})`;
    case 'power':
      return `(^ ${writeTree(node.base)} ${writeTree(node.exponent)})`;
    case 'binary':
    case 'comparison':
      return `(${node.op} ${writeTree(node.left)} ${writeTree(node.right)})`;
    case 'error':
      return '?';
  }
}
