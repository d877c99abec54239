import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import type { Range } from '../document/index.ts';
import { type Entry, readEntry, sameDimension, type UnitRegistry, writeQuantity } from '../units/index.ts';
import { outOfRange } from './inputs.ts';
import type { FormulaItem, InputItem, Model } from './model.ts';
import type { Result } from './result.ts';

/**
 * What the permitted range says of the value a calculated line has. Its limits hold for what it computes and for what is
 * stated in its place; those that a given has hold for the value it takes from a link as well.
 */
export function lineRangeProblems(
  item: InputItem | FormulaItem,
  read: Result,
  model: Model,
): readonly Problem[] {
  if (item.kind !== 'formula' || item.row.kind !== 'calc') return [];
  if (read.status !== 'ok' || read.value.kind !== 'number') return [];
  const { range, link } = item.row;
  const { si, unit } = read.value;
  const entry = { kind: 'number', si, unit } as const;
  const ranges = [range, link?.kind === 'given' ? link.range : undefined].filter((one) => one !== undefined);
  const found = ranges.flatMap((one) =>
    item.unit || unit.dimension.key === ''
      ? outOfRange(entry, one, item.unit, model.registry)
      : outOfComputedRange(entry, one, model.registry),
  );
  return found.map((one) => inCell(one, item.id));
}

/** Of a line without a unit of its own the limits have theirs: the one it is shown in may be another tomorrow. */
function outOfComputedRange(
  entry: Extract<Entry, { kind: 'number' }>,
  range: Range,
  registry: UnitRegistry,
): readonly Problem[] {
  for (const limit of [range.min, range.max]) {
    const read = limit === undefined ? undefined : readEntry(limit, registry);
    if (limit === undefined || !read?.ok || (read.value.kind !== 'number' && read.value.kind !== 'point'))
      continue;
    if (sameDimension(read.value.unit.dimension, entry.unit.dimension)) continue;
    const facts = { limit, value: writeQuantity(entry.si, entry.unit) };
    return [problem('range-without-unit', { from: 0, to: 0 }, facts)];
  }
  return outOfRange(entry, range, undefined, registry);
}
