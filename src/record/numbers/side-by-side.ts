import type { NameSyntax, Syntax } from '../../language/index.ts';

/**
 * The names, or what stands in their place, that are compared or added as they stand. Their numbers are put in in the
 * line's own unit, because they are read against each other; a factor keeps the unit it was entered in, which is how the
 * reader knows it again.
 */
export function valuesSideBySide(node: Syntax): readonly NameSyntax[] {
  switch (node.kind) {
    case 'name':
      return [node];
    case 'group':
      return valuesSideBySide(node.inner);
    case 'negate':
      return valuesSideBySide(node.operand);
    case 'comparison':
      return [node.left, node.right].flatMap(valuesSideBySide);
    case 'binary':
      return node.op === '+' || node.op === '-' ? [node.left, node.right].flatMap(valuesSideBySide) : [];
    default:
      return [];
  }
}
