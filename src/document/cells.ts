import { type Cell, CHUNK_CELLS, type Chunk, type GivenColumn } from './schema/columns.ts';

/** Cells cut into the chunks a column keeps them in. */
export function chunksOfCells(cells: readonly Cell[]): readonly Chunk[] {
  const chunks: Chunk[] = [];
  for (let from = 0; from < cells.length; from += CHUNK_CELLS)
    chunks.push(cells.slice(from, from + CHUNK_CELLS));
  return chunks;
}

/** All cells of a given column, in row order. */
export function cellsOfColumn(column: GivenColumn): readonly Cell[] {
  return column.chunks.flat();
}

/** One cell of a given column; null for a blank one. */
export function cellOf(column: GivenColumn, row: number): Cell {
  return column.chunks[Math.floor(row / CHUNK_CELLS)]?.[row % CHUNK_CELLS] ?? null;
}

/** The cells of rows `from` to before `to`. */
export function cellsBetween(chunks: readonly Chunk[], from: number, to: number): readonly Cell[] {
  const cells: Cell[] = [];
  for (let chunk = Math.floor(from / CHUNK_CELLS); chunk * CHUNK_CELLS < to; chunk++) {
    const start = chunk * CHUNK_CELLS;
    const part = chunks[chunk]?.slice(Math.max(0, from - start), to - start) ?? [];
    for (const cell of part) cells.push(cell);
  }
  return cells;
}

/** The chunks with the cells from row `from` on overwritten by `values`; chunks without such cells stay the same. */
export function overwriteCells(
  chunks: readonly Chunk[],
  from: number,
  values: readonly Cell[],
): readonly Chunk[] {
  const to = from + values.length;
  const next = chunks.slice();
  for (let chunk = Math.floor(from / CHUNK_CELLS); chunk * CHUNK_CELLS < to; chunk++) {
    const start = chunk * CHUNK_CELLS;
    const cells = (chunks[chunk] ?? []).slice();
    const end = Math.min(cells.length, to - start);
    for (let i = Math.max(0, from - start); i < end; i++) cells[i] = values[start + i - from] ?? null;
    next[chunk] = cells;
  }
  return next;
}

/** The chunks with `remove` cells from row `from` on replaced by `insert`; chunks in front of them stay the same. */
export function spliceCells(
  chunks: readonly Chunk[],
  from: number,
  remove: number,
  insert: readonly Cell[],
): readonly Chunk[] {
  if (remove === insert.length) return overwriteCells(chunks, from, insert);
  const kept = Math.floor(from / CHUNK_CELLS);
  const tail = chunks.slice(kept).flat();
  const cut = from - kept * CHUNK_CELLS;
  const spliced = tail.slice(0, cut).concat(insert, tail.slice(cut + remove));
  return [...chunks.slice(0, kept), ...chunksOfCells(spliced)];
}
