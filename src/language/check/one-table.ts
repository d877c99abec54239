import { type Fix, problem } from '../../diagnostics/index.ts';
import type { FunctionEntry } from '../functions/entry.ts';
import { type Axis, sameAxis } from '../type.ts';
import type { ColumnNode, Typed } from '../typed.ts';
import { type Context, written } from './context.ts';

/** How the same function over each table alone is put together again, where that is what is meant. */
const apart: ReadonlyMap<string, (calls: readonly string[]) => string> = new Map([
  ['SUM', (calls: readonly string[]) => calls.join(' + ')],
  ['COUNT', (calls: readonly string[]) => calls.join(' + ')],
  ['PRODUCT', (calls: readonly string[]) => calls.join(' * ')],
  ['MAX', (calls: readonly string[]) => `MAX(${calls.join('; ')})`],
  ['MIN', (calls: readonly string[]) => `MIN(${calls.join('; ')})`],
]);

/**
 * Whether what one call gathers runs over the rows of one table. Two careful people read columns of two tables in one
 * aggregate two ways, row by row or every row with every row, so both are named and it is refused.
 */
export function overOneTable(
  fn: FunctionEntry,
  node: { readonly from: number; readonly to: number },
  args: readonly Typed[],
  gathered: readonly Axis[],
  context: Context,
): boolean {
  const [first, second] = gathered;
  if (!first || !second) return true;
  const column = (axis: Axis): string => findColumn(args, axis)?.name ?? axis.table;
  const facts = { function: fn.name, left: column(first), right: column(second) };
  context.report(problem('two-tables-together', node, facts, apartFix(fn, node, args, context)));
  return false;
}

/** The first whole column of a table that a call would take in. */
function findColumn(parts: readonly Typed[], axis: Axis): ColumnNode | undefined {
  for (const part of parts) {
    if (!part.type.axes.some((other) => sameAxis(other, axis))) continue;
    if (part.kind === 'column') return part;
    const found = findColumn(partsOf(part), axis);
    if (found) return found;
  }
  return undefined;
}

function partsOf(node: Typed): readonly Typed[] {
  return Object.values(node)
    .flat()
    .filter((part): part is Typed => typeof part === 'object' && part !== null && 'type' in part);
}

/** Each argument over its own table, where every argument has but one. */
function apartFix(
  fn: FunctionEntry,
  { from, to }: { readonly from: number; readonly to: number },
  args: readonly Typed[],
  context: Context,
): readonly Fix[] {
  const join = apart.get(fn.name);
  const single = args.every(({ type }) => type.axes.filter((axis) => axis.fresh).length <= 1);
  if (!join || !single) return [];
  const insert = join(args.map((arg) => `${fn.name}(${written(context, arg)})`));
  return [{ label: insert, from, to, insert }];
}
