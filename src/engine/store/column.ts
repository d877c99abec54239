import type { ColumnCell } from './cells.ts';

/** The rows of a column whose values have changed: from `from` to before `to`; none if `to <= from`. */
export interface RowWindow {
  from: number;
  to: number;
}

/** A window without rows. */
export function noRows(): RowWindow {
  return { from: Number.POSITIVE_INFINITY, to: 0 };
}

/** Marks rows of a column to be computed again. */
export function soil(column: ColumnCell, from: number, to: number): void {
  if (to <= from) return;
  if (from < column.dirtyFrom) column.dirtyFrom = from;
  if (to > column.dirtyTo) column.dirtyTo = to;
}

/** Marks a column that is another than before: all rows, and what depends on it even if there are none. */
export function reshape(column: ColumnCell): void {
  column.reshaped = true;
  soilAll(column);
}

/** Marks all rows. */
export function soilAll(column: ColumnCell): void {
  column.dirtyFrom = 0;
  column.dirtyTo = Number.POSITIVE_INFINITY;
}

/** Marks no row. */
export function clean(column: ColumnCell): void {
  column.dirtyFrom = Number.POSITIVE_INFINITY;
  column.dirtyTo = 0;
}

/** Gives a column as many rows as its table; new rows have no value. Whether it had another number of rows. */
export function resize(column: ColumnCell, length: number): boolean {
  const { values } = column;
  if (values.length === length) return false;
  const next = new Float64Array(length);
  next.set(values.length <= length ? values : values.subarray(0, length));
  next.fill(Number.NaN, values.length);
  column.values = next;
  column.gaps = countGaps(next, 0, length);
  return true;
}

/** Gives a column all new values; the array becomes the column's own. */
export function adopt(column: ColumnCell, values: Float64Array, gaps: number): void {
  column.values = values;
  column.gaps = gaps;
}

/**
 * Writes new values over the rows from `from` on and widens `changed` by those that differ. A value that is missing
 * before and after counts as changed, for the reason may be another.
 */
export function write(
  column: ColumnCell,
  from: number,
  count: number,
  data: Float64Array,
  offset: number,
  stride: 0 | 1,
  changed: RowWindow,
): void {
  const { values } = column;
  let first = 0;
  while (first < count && values[from + first] === data[offset + first * stride]) first += 1;
  if (first === count) return;
  let last = count - 1;
  while (values[from + last] === data[offset + last * stride]) last -= 1;
  const start = from + first;
  const end = from + last + 1;
  if (column.gaps > 0) column.gaps -= countGaps(values, start, end);
  if (stride === 1) values.set(data.subarray(offset + first, offset + last + 1), start);
  else values.fill(data[offset] as number, start, end);
  column.gaps += countGaps(values, start, end);
  changed.from = Math.min(changed.from, start);
  changed.to = Math.max(changed.to, end);
}

/** Takes every value from a column. */
export function empty(column: ColumnCell): void {
  column.values.fill(Number.NaN);
  column.gaps = column.values.length;
}

/** How many of the values from `from` to before `to` are NaN. */
export function countGaps(values: Float64Array, from: number, to: number): number {
  let gaps = 0;
  for (let i = from; i < to; i += 1) if (Number.isNaN(values[i] as number)) gaps += 1;
  return gaps;
}
