import { type ColumnCell, PAST_ALL_ROWS } from './cells.ts';

/** The rows of a column whose values have changed: from `from` to before `to`; none if `to <= from`. */
export interface RowWindow {
  from: number;
  to: number;
}

/** All rows, however many there are. */
export const ALL_ROWS: Readonly<RowWindow> = { from: 0, to: PAST_ALL_ROWS };

/** A window without rows. */
export function noRows(): RowWindow {
  return { from: PAST_ALL_ROWS, to: 0 };
}

/** Marks rows of a column to be computed again. */
export function markDirty(column: ColumnCell, from: number, to: number): void {
  if (to <= from) return;
  column.resumable = false;
  if (from < column.dirtyFrom) column.dirtyFrom = from;
  if (to > column.dirtyTo) column.dirtyTo = to;
}

/** Marks a column that is another than before: all rows, and what depends on it even if there are none. */
export function reshape(column: ColumnCell): void {
  column.reshaped = true;
  markAllDirty(column);
}

/** Marks all rows. */
export function markAllDirty(column: ColumnCell): void {
  column.resumable = false;
  column.dirtyFrom = 0;
  column.dirtyTo = PAST_ALL_ROWS;
}

/** Marks no row. */
export function clean(column: ColumnCell): void {
  column.resumable = false;
  column.dirtyFrom = PAST_ALL_ROWS;
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
 * Writes `count` new values over the rows from `from` on, which stand from place `at` on, and widens `changed` by
 * those that differ. A value that is missing before and after counts as changed, for the reason may be another.
 */
export function write(
  column: ColumnCell,
  from: number,
  count: number,
  after: Float64Array,
  at: number,
  changed: RowWindow,
): void {
  const { values } = column;
  const { first, last } = difference(values, from, after, at, count);
  if (first > last) return;
  const start = from + first;
  const end = from + last + 1;
  if (column.gaps > 0) column.gaps -= countGaps(values, start, end);
  values.set(after.subarray(at + first, at + last + 1), start);
  column.gaps += countGaps(values, start, end);
  changed.from = Math.min(changed.from, start);
  changed.to = Math.max(changed.to, end);
}

/** The first and the last of `count` places in which two stretches differ; NaN differs from NaN. */
export function difference(
  a: Float64Array,
  aFrom: number,
  b: Float64Array,
  bFrom: number,
  count: number,
): { readonly first: number; readonly last: number } {
  let first = 0;
  while (first < count && a[aFrom + first] === b[bFrom + first]) first += 1;
  let last = count - 1;
  while (last > first && a[aFrom + last] === b[bFrom + last]) last -= 1;
  return { first, last };
}

/** Takes every value from a column. */
export function empty(column: ColumnCell): void {
  column.values.fill(Number.NaN);
  column.gaps = column.values.length;
}

/** How many of the values from `from` to before `to` are NaN. */
export function countGaps(values: Float64Array, from: number, to: number): number {
  let i = firstOddFour(values, from, to);
  let gaps = 0;
  for (; i < to; i += 1) if (Number.isNaN(values[i])) gaps += 1;
  return gaps;
}

/** Where the first four neighbours begin among which there may be NaN; most stretches have none, up to the last few. */
function firstOddFour(values: Float64Array, from: number, to: number): number {
  let i = from;
  for (; i + 3 < to; i += 4) {
    const sum =
      (values[i] as number) +
      (values[i + 1] as number) +
      (values[i + 2] as number) +
      (values[i + 3] as number);
    // Zero times anything is 0, except NaN and the infinite.
    if (sum * 0 !== 0) return i;
  }
  return i;
}
