import type { Typed } from '../language/index.ts';
import type { Model } from './model.ts';

/** Functions whose value is a count whatever they are given, and those whose value is one where what they are given is. */
const COUNTING: ReadonlySet<string> = new Set(['COUNT', 'COUNTIF']);
const KEEPING: ReadonlySet<string> = new Set(['SUM', 'MAX', 'MIN']);

/**
 * Whether a comparison is one of yes or no: a count, or a flag of whole numbers, against none or one, as "each name stands
 * once". How near it is to its limit means nothing.
 */
export function comparesYesOrNo(left: Typed, right: Typed, model: Model): boolean {
  const [limit, counted] = right.kind === 'number' ? [right, left] : [left, right];
  return isNoneOrOne(limit) && counted.kind !== 'number' && isWholeCount(counted, model);
}

function isNoneOrOne(side: Typed): boolean {
  return side.kind === 'number' && side.unit === undefined && (side.si === 0 || side.si === 1);
}

/** Whether an expression is a whole number by how it is made; `seen` are the lines and columns on the way, for a formula may lead back to itself. */
function isWholeCount(
  node: Typed,
  { items }: Pick<Model, 'items'>,
  seen: ReadonlySet<string> = new Set(),
): boolean {
  const isCount = (part: Typed): boolean => isWholeCount(part, { items }, seen);
  switch (node.kind) {
    case 'number':
      return node.unit === undefined && Number.isInteger(node.si);
    case 'arithmetic':
      return node.op !== '/' && isCount(node.left) && isCount(node.right);
    case 'branch':
      return [...node.arms.map(({ value }) => value), ...(node.otherwise ? [node.otherwise] : [])].every(
        isCount,
      );
    case 'call':
      return COUNTING.has(node.fn.name) || (KEEPING.has(node.fn.name) && node.args.every(isCount));
    case 'known':
      return isCount(node.column);
    case 'cell':
    case 'column': {
      const item = items.get(node.id);
      if (!item || !('checked' in item) || item.methods || seen.has(node.id)) return false;
      return isWholeCount(item.checked.typed, { items }, new Set([...seen, node.id]));
    }
    default:
      return false;
  }
}
