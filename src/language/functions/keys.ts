import { areEqual } from '../../units/index.ts';
import type { GatherRefusal } from './entry.ts';
import { firstAbove, firstNotBelow, firstRowsAmong, type SortedKeys, sortKeys } from './sorted-keys.ts';

/** The first row, from 1, whose key does not rise above the one before it; undefined if all do. */
export function firstNotRising(keys: Float64Array): number | undefined {
  for (let at = 1; at < keys.length; at += 1) {
    const before = keys[at - 1] as number;
    const key = keys[at] as number;
    if (!(key > before) || areEqual(key, before)) return at + 1;
  }
  return undefined;
}

export const matchKinds = ['exact', 'first', 'at or below', 'at or above'] as const;

/** The row of a key, from 0; NaN where there is none, where an exact key stands twice, or where keys do not ascend. */
export function matchRow(key: number, keys: Float64Array, kind: string): number {
  if (kind === 'exact' || kind === 'first') {
    let found = Number.NaN;
    for (let at = 0; at < keys.length; at += 1) {
      if (!areEqual(keys[at] as number, key)) continue;
      if (kind === 'first') return at;
      if (!Number.isNaN(found)) return Number.NaN;
      found = at;
    }
    return found;
  }
  if (firstNotRising(keys) !== undefined) return Number.NaN;
  let below = -1;
  for (let at = 0; at < keys.length; at += 1) {
    const other = keys[at] as number;
    if (areEqual(other, key)) return at;
    if (other < key) below = at;
  }
  const row = kind === 'at or below' ? below : below + 1;
  return row >= 0 && row < keys.length ? row : Number.NaN;
}

/** The same for many keys sought in the same column, which is sorted (or found to rise) once. */
export function matchAmong(keys: Float64Array, kind: string): (key: number) => number {
  if (kind === 'exact' || kind === 'first') {
    const sorted = sortKeys(keys);
    return (key) => {
      const from = firstNotBelow(sorted.keys, key);
      const to = firstAbove(sorted.keys, key);
      if (to <= from || (kind === 'exact' && to - from > 1)) return Number.NaN;
      return firstRowOf(sorted, from, to);
    };
  }
  if (firstNotRising(keys) !== undefined) return () => Number.NaN;
  return (key) => {
    const at = firstNotBelow(keys, key);
    if (at < keys.length && areEqual(keys[at] as number, key)) return at;
    const row = kind === 'at or below' ? at - 1 : at;
    return row >= 0 && row < keys.length ? row : Number.NaN;
  };
}

/** How many rows are named in which a key stands. */
const ROWS_TOLD = 3;

/** The first rows of a key, from 1. */
function firstRows(key: number, keys: Float64Array): readonly number[] {
  const rows: number[] = [];
  for (let at = 0; at < keys.length && rows.length < ROWS_TOLD; at += 1)
    if (areEqual(keys[at] as number, key)) rows.push(at + 1);
  return rows;
}

function firstRowOf({ keys, rows }: SortedKeys, from: number, to: number): number {
  let first = rows[from] as number;
  // Keys that are equal within the tolerance only may stand in any order of rows.
  if (keys[from] !== keys[to - 1])
    for (let at = from + 1; at < to; at += 1) first = Math.min(first, rows[at] as number);
  return first;
}

/** Why `matchRow` found none; the key is the first argument, the keys are the second. */
export function matchRefusal(key: number, keys: Float64Array, kind: string): GatherRefusal {
  if (keys.length > 0 && (kind === 'exact' || kind === 'first')) return rowsRefusal(firstRows(key, keys));
  return matchRefusals(keys, kind)(key);
}

/** The same for many keys sought in the same column, which is sorted (or found to rise) once. */
export function matchRefusals(keys: Float64Array, kind: string): (key: number) => GatherRefusal {
  if (keys.length === 0) return () => ({ words: 'the table it looks in has no rows' });
  if (kind === 'exact' || kind === 'first') {
    const sorted = sortKeys(keys);
    return (key) => rowsRefusal(firstRowsAmong(sorted, key, ROWS_TOLD).map((row) => row + 1));
  }
  const row = firstNotRising(keys);
  if (row !== undefined)
    return () => ({ words: `the keys must rise from row to row, and row ${row} does not` });
  const below = kind === 'at or below';
  const end = (below ? keys[0] : keys.at(-1)) as number;
  return () => ({
    words: ({ shown }) => `the value is ${below ? 'below the first' : 'above the last'} key, ${shown(end)}`,
    argument: 0,
  });
}

/** Why a key that stands in these rows, from 1, is not found where it is to stand once, or at all. */
function rowsRefusal(rows: readonly number[]): GatherRefusal {
  if (rows.length > 1)
    return { words: `the key stands in rows ${rows.join(' and ')}; "first" takes the first`, argument: 0 };
  return { unlisted: true };
}
