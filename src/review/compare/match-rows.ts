import { cellOf, cellsOfColumn, type GivenColumn, rowIdsOf, type Table } from '../../document/index.ts';
import type { LocatedColumn } from './located.ts';
import { movedAmong } from './moved.ts';
import type { Pair } from './pairs.ts';

/** Which row of a table is which in another state of it; rows are counted from 0. */
export interface RowPairs {
  readonly by: 'identity' | 'key' | 'position';
  /** The column by whose texts rows are known. */
  readonly key?: Pair<GivenColumn>;
  /** Pairs of rows in the order of the new table. */
  readonly both: readonly Pair<number>[];
  readonly removed: readonly number[];
  readonly added: readonly number[];
  /** Those of `both` that stand elsewhere among the others. */
  readonly moved: readonly Pair<number>[];
  /** What a row is called in the column by which rows are known. */
  readonly nameBefore: (row: number) => string | undefined;
  readonly nameAfter: (row: number) => string | undefined;
}

/**
 * Finds which row is which. `sameTable`: the tables have one identity, so that those of their rows tell. They do not where
 * most rows that have a text in common in the first column of distinct texts have different identities: two files filled
 * each for itself, or a list that was pasted over another. Then that text tells, and without such a column the position.
 */
export function matchRows(
  { before, after }: Pair<Table>,
  lengths: Pair<number>,
  columns: readonly Pair<LocatedColumn>[],
  sameTable: boolean,
): RowPairs {
  const key = keyColumn(columns, lengths);
  const names = key && { before: cellsOfColumn(key.before), after: cellsOfColumn(key.after) };
  const byKey = names && pairsOf(names.before, names.after);
  const isMade = before.length === undefined || after.length === undefined;
  const ids = !isMade && sameTable && { before: idsOf(before), after: idsOf(after) };
  const byId = ids && pairsOf(ids.before, ids.after);
  const naming = {
    ...(key && { key }),
    nameBefore: (row: number) => nameIn(names?.before[row]),
    nameAfter: (row: number) => nameIn(names?.after[row]),
  };
  if (byId && (byKey === undefined ? sharesAny(byId, lengths) : isBorneOut(byId, byKey))) {
    const labels = ids.after;
    return { by: 'identity', ...naming, ...arranged(byId, lengths, (row) => String(labels[row])) };
  }
  if (names && byKey)
    return { by: 'key', ...naming, ...arranged(byKey, lengths, (row) => String(names.after[row])) };
  const places = Array.from({ length: Math.min(lengths.before, lengths.after) }, (_, row) => row);
  return { by: 'position', ...naming, ...arranged(places, lengths, String) };
}

/** Of each row of the new table the row of the old one, -1 for none. */
type Partners = readonly number[];

function pairsOf(before: readonly unknown[], after: readonly unknown[]): Partners {
  const rows = new Map(before.map((mark, row) => [mark, row]));
  return after.map((mark) => rows.get(mark) ?? -1);
}

/** Whether identities tell rows: at least half of those with a text in common have their identity in common too. */
function isBorneOut(byId: Partners, byKey: Partners): boolean {
  const common = byKey.filter((row) => row >= 0).length;
  const agreeing = byKey.filter((row, at) => row >= 0 && byId[at] === row).length;
  return 2 * agreeing >= common;
}

function sharesAny(byId: Partners, lengths: Pair<number>): boolean {
  return lengths.before === 0 || lengths.after === 0 || byId.some((row) => row >= 0);
}

/** The first column of texts that are all there and distinct in both tables. */
function keyColumn(
  columns: readonly Pair<LocatedColumn>[],
  lengths: Pair<number>,
): Pair<GivenColumn> | undefined {
  // The first by its places in both, so that it is the same one whichever table is the old one.
  const place = ({ before, after }: Pair<LocatedColumn>): number => before.index + after.index;
  for (const pair of columns.toSorted((a, b) => place(a) - place(b))) {
    const [before, after] = [pair.before.column, pair.after.column];
    if (before.kind !== 'given' || after.kind !== 'given') continue;
    if (before.type !== 'text' || after.type !== 'text') continue;
    if (isKey(before, lengths.before) && isKey(after, lengths.after)) return { before, after };
  }
  return undefined;
}

function isKey(column: GivenColumn, length: number): boolean {
  if (length === 0) return true;
  // Most columns that are no key show it in their first rows.
  if (length > 1 && cellOf(column, 0) === cellOf(column, 1)) return false;
  const cells = cellsOfColumn(column);
  const isFilled = cells.every((cell) => typeof cell === 'string' && cell.trim() !== '');
  return isFilled && new Set(cells).size === length;
}

function idsOf(table: Table): readonly number[] {
  const ids = rowIdsOf(table);
  return ids.runs.flatMap(({ first, count }) => Array.from({ length: count }, (_, i) => first + i));
}

function nameIn(cell: unknown): string | undefined {
  return typeof cell === 'string' ? cell : undefined;
}

function arranged(
  partners: Partners,
  lengths: Pair<number>,
  label: (after: number) => string,
): Pick<RowPairs, 'both' | 'removed' | 'added' | 'moved'> {
  const both: Pair<number>[] = [];
  const added: number[] = [];
  const isKept = new Uint8Array(lengths.before);
  for (let after = 0; after < lengths.after; after += 1) {
    const before = partners[after] ?? -1;
    if (before < 0) added.push(after);
    else {
      both.push({ before, after });
      isKept[before] = 1;
    }
  }
  const removed = Array.from(isKept.keys()).filter((row) => isKept[row] === 0);
  const moved = movedAmong(both.map((pair) => ({ ...pair, label: label(pair.after) })));
  return { both, removed, added, moved: both.filter((_, at) => moved.has(at)) };
}
