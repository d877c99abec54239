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

/** Gives a column as many rows as its table; new rows have no value. */
export function resize(column: ColumnCell, length: number): boolean {
  const { values } = column;
  if (values.length === length) return false;
  const next = new Float64Array(length).fill(Number.NaN);
  next.set(values.length <= length ? values : values.subarray(0, length));
  column.values = next;
  column.gaps = countGaps(next);
  return true;
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
  let first = -1;
  let last = -1;
  let gaps = 0;
  for (let i = 0; i < count; i += 1) {
    const before = values[from + i] as number;
    // Adding 0 turns -0 into 0, so that equal values are the same.
    const after = (data[offset + i * stride] as number) + 0;
    if (before === after) continue;
    if (first < 0) first = i;
    last = i;
    values[from + i] = after;
    if (Number.isNaN(before)) gaps -= 1;
    if (Number.isNaN(after)) gaps += 1;
  }
  column.gaps += gaps;
  if (first < 0) return;
  changed.from = Math.min(changed.from, from + first);
  changed.to = Math.max(changed.to, from + last + 1);
}

/** Takes every value from a column. */
export function empty(column: ColumnCell): void {
  column.values.fill(Number.NaN);
  column.gaps = column.values.length;
}

function countGaps(values: Float64Array): number {
  let gaps = 0;
  for (let i = 0; i < values.length; i += 1) if (Number.isNaN(values[i])) gaps += 1;
  return gaps;
}
