import { type Cell, cellOf, type GivenColumn, rowCalled, type Table } from '../../../document/index.ts';
import { cellsFor, folded, type NewRows } from './new-rows.ts';
import { rememberLast } from './remember-last.ts';
import { firstRowOf, type Where } from './where.ts';

/** Where the items of a list that is put over another stood before. */
export interface Followed {
  /** For each new row the row, from 0, in which its item stood; undefined where in none, or where two are called so. */
  readonly from: readonly (number | undefined)[];
  /** The items that stood in no row, as they are called now. */
  readonly fresh: readonly string[];
  /** The items that the new rows take the place of and do not have, and rows of no name that go with what they hold. */
  readonly gone: readonly string[];
  /** What several rows are called, before or now: which of them is which nobody knows. */
  readonly doubled: readonly string[];
}

/**
 * Finds the items of new rows among those whose place they take and those below, by the column that names them; capitals
 * and blanks make no other item. Undefined where the rows name nothing.
 */
export const followItems = rememberLast(findItems);

function findItems(table: Table, rows: NewRows, where: Where): Followed | undefined {
  const row = firstRowOf(where);
  const name = nameColumn(table, rows);
  const now = name && cellsFor(name, rows);
  if (!name || !now) return undefined;
  const length = table.length ?? 0;
  const before = Array.from({ length: Math.max(0, length - row) }, (_, at) => cellOf(name, row + at));
  const placesBefore = placesOf(before);
  const placesNow = placesOf(now);
  const isOne = (key: string): boolean =>
    placesBefore.get(key)?.length === 1 && placesNow.get(key)?.length === 1;
  // In place of all rows, those beyond the length of the new ones go as well.
  const end = where.kind === 'from' ? Math.min(rows.length, before.length) : before.length;
  const overwritten = [...placesBefore].filter(([, [first = 0]]) => first < end);
  const unnamed = before.slice(0, end).flatMap((cell, at) => {
    return folded(cell ?? '') === '' && holdsAny(table, row + at) ? [row + at] : [];
  });
  return {
    from: Array.from({ length: rows.length }, (_, at) => {
      const key = folded(now[at] ?? '');
      const [place] = isOne(key) ? (placesBefore.get(key) ?? []) : [];
      return place === undefined ? undefined : row + place;
    }),
    fresh: [...placesNow].flatMap(([key, [first = 0]]) => (placesBefore.has(key) ? [] : [`${now[first]}`])),
    gone: [
      ...overwritten.flatMap(([key, [first = 0]]) => (placesNow.has(key) ? [] : [`${before[first]}`])),
      ...unnamed.map((at) => rowCalled(table, at)),
    ],
    doubled: [...placesNow].flatMap(([key, [first = 0]]) =>
      placesBefore.has(key) && !isOne(key) ? [`${now[first]}`] : [],
    ),
  };
}

/** Whether a row has an entry in any column. */
function holdsAny(table: Table, row: number): boolean {
  return table.columns.some((column) => column.kind === 'given' && cellOf(column, row) !== null);
}

/** The column by which the rows name their items: the first of words that they have something for. */
export function nameColumn(table: Table, rows: NewRows): GivenColumn | undefined {
  return table.columns.find(
    (column): column is GivenColumn =>
      column.kind === 'given' && column.type === 'text' && cellsFor(column, rows) !== undefined,
  );
}

/** Whether the rows name items that can be told apart: most are not called alike, as layers of clay and sand are. */
export function nameItems(table: Table, rows: NewRows): boolean {
  const name = nameColumn(table, rows);
  const cells = name && cellsFor(name, rows);
  const names = (cells ?? []).flatMap((cell) => (cell === null ? [] : [folded(cell)]));
  return new Set(names).size * 2 > names.length;
}

/** In which places each name stands; what has none is left out. */
function placesOf(cells: readonly Cell[]): ReadonlyMap<string, readonly number[]> {
  const places = new Map<string, number[]>();
  for (const [at, cell] of cells.entries()) {
    const key = folded(cell ?? '');
    if (key === '') continue;
    const known = places.get(key);
    if (known) known.push(at);
    else places.set(key, [at]);
  }
  return places;
}
