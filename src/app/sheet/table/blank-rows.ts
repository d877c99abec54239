import { CHUNK_CELLS, rowIdsOf, rowWithId, type Table } from '../../../document/index.ts';

/** The wholly blank rows of a table: the first of them, from 0, and how many there are. */
export interface BlankRows {
  readonly first: number;
  readonly count: number;
}

/** The rows of a table in which nothing at all is entered or stated; undefined if each has something. */
export function blankRows(table: Table): BlankRows | undefined {
  const { length } = table;
  if (length === undefined) return undefined;
  const isBlank = blankRowsOf(table);
  let first = 0;
  let count = 0;
  for (let row = 0; row < length; row += 1) {
    if (!isBlank(row)) continue;
    if (count === 0) first = row;
    count += 1;
  }
  return count === 0 ? undefined : { first, count };
}

/** Tells of a row of a table with rows of its own whether nothing at all is entered or stated in it. */
export function blankRowsOf(table: Table): (row: number) => boolean {
  const stated = rowsStated(table);
  const given = table.columns.filter((column) => column.kind === 'given');
  return (row) => {
    const [chunk, at] = [Math.floor(row / CHUNK_CELLS), row % CHUNK_CELLS];
    const isFilled = given.some(({ chunks }) => {
      const cell = chunks[chunk]?.[at] ?? null;
      return cell !== null && cell !== '';
    });
    return !isFilled && !stated.has(row);
  };
}

/** The rows in which a value is stated in place of a computed one. */
function rowsStated(table: Table): ReadonlySet<number> {
  const ids = rowIdsOf(table);
  const rows = table.columns.flatMap((column) =>
    column.kind === 'calc' ? (column.stated ?? []).map(({ row }) => rowWithId(ids, row)) : [],
  );
  return new Set(rows.filter((row) => row !== undefined));
}
