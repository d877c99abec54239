import { CHUNK_CELLS, type Table } from '../../document/index.ts';

/** The wholly blank rows of a table: the first of them, from 0, and how many there are. */
export interface BlankRows {
  readonly first: number;
  readonly count: number;
}

/** The rows of a table in which nothing at all is entered; undefined if each has something. */
export function blankRows({ columns, length }: Table): BlankRows | undefined {
  if (length === undefined) return undefined;
  const given = columns.filter((column) => column.kind === 'given');
  let first = 0;
  let count = 0;
  for (let row = 0; row < length; row += 1) {
    const [chunk, at] = [Math.floor(row / CHUNK_CELLS), row % CHUNK_CELLS];
    const filled = given.some(({ chunks }) => {
      const cell = chunks[chunk]?.[at] ?? null;
      return cell !== null && cell !== '';
    });
    if (filled) continue;
    if (count === 0) first = row;
    count += 1;
  }
  return count === 0 ? undefined : { first, count };
}
