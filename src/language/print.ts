import type { Syntax } from './syntax.ts';

/** A tree as formula text in the language's own spelling; reading it again gives the same tree, spans aside. */
export function printSyntax(node: Syntax): string {
  switch (node.kind) {
    case 'number': {
      const number = printNumber(node.value);
      if (!node.unit) return number;
      return node.unit.compound ? `${number} (${node.unit.text})` : `${number} ${node.unit.text}`;
    }
    case 'text':
      return `"${node.value.replaceAll('"', '""')}"`;
    case 'truth':
      return node.value ? 'TRUE' : 'FALSE';
    case 'name':
      return node.name;
    case 'call':
      return `${node.name}(${node.args.map(printSyntax).join('; ')})`;
    case 'group':
      return `(${printSyntax(node.inner)})`;
    case 'negate':
      return `-${printSyntax(node.operand)}`;
    case 'percent':
      return `${printSyntax(node.operand)}%`;
    case 'root':
      return `√${printSyntax(node.operand)}`;
    case 'power':
      return `${printSyntax(node.base)}^${printSyntax(node.exponent)}`;
    case 'binary':
      return `${printSyntax(node.left)} ${node.op} ${printSyntax(node.right)}`;
    case 'comparison':
      return `${printSyntax(node.left)} ${node.op} ${printSyntax(node.right)}`;
    case 'error':
      return '';
  }
}

/** Without an exponent where a person would write none; always the same number when read again. */
function printNumber(value: number): string {
  return `${value}`.replace('e+', 'e');
}
