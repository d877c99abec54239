import { partsOf, type Typed } from './typed.ts';

/** Whether a tree takes one date from another somewhere: such a time is counted in days. */
export function holdsDateDifference(node: Typed): boolean {
  const isOne =
    node.kind === 'arithmetic' &&
    node.op === '-' &&
    [node.left, node.right].every(({ type }) => isDate(type));
  return isOne || partsOf(node).some(holdsDateDifference);
}

function isDate(type: Typed['type']): boolean {
  return type.kind === 'point' && type.of === 'date';
}
