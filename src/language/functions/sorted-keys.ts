import { areEqual } from '../../units/index.ts';

/** The keys of a column in ascending order. */
export interface SortedKeys {
  readonly keys: Float64Array;
  /** The row (from 0) each of them comes from; rows of one and the same key ascend. */
  readonly rows: Uint32Array;
}

/** Sorts the keys of a column, none of which may be missing. */
export function sortKeys(column: Float64Array): SortedKeys {
  // Sorting numbers alone is many times as fast as sorting rows by a comparison.
  const keys = column.slice().sort();
  const rows = new Uint32Array(keys.length);
  const taken = new Uint32Array(keys.length);
  for (let row = 0; row < column.length; row += 1) {
    const place = firstAtLeast(keys, column[row] as number);
    rows[place + (taken[place] as number)] = row;
    taken[place] = (taken[place] as number) + 1;
  }
  return { keys, rows };
}

function firstAtLeast(keys: Float64Array, key: number): number {
  let low = 0;
  let high = keys.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((keys[middle] as number) < key) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The first place in ascending keys that is not below a key, to the tolerance of comparison; their number if none is. */
export function firstNotBelow(keys: Float64Array, key: number): number {
  let low = 0;
  let high = keys.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const other = keys[middle] as number;
    if (other < key && !areEqual(other, key)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The first place in ascending keys that is above a key, to the tolerance of comparison; their number if none is. */
export function firstAbove(keys: Float64Array, key: number): number {
  let low = 0;
  let high = keys.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const other = keys[middle] as number;
    if (other <= key || areEqual(other, key)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The first rows (from 0) of a key, to the tolerance of comparison, in the order of rows; at most `most`. */
export function firstRowsAmong({ keys, rows }: SortedKeys, key: number, most: number): readonly number[] {
  const found: number[] = [];
  const to = firstAbove(keys, key);
  let at = firstNotBelow(keys, key);
  while (at < to) {
    // Rows ascend among keys that are the very same.
    const end = firstPast(keys, keys[at] as number);
    found.push(...rows.subarray(at, Math.min(end, at + most)));
    at = end;
  }
  return found.sort((a, b) => a - b).slice(0, most);
}

function firstPast(keys: Float64Array, key: number): number {
  let low = 0;
  let high = keys.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((keys[middle] as number) <= key) low = middle + 1;
    else high = middle;
  }
  return low;
}
