import { address, type GridCell, type GridSheet } from './grid.ts';

/** Of fewer formulas that read a cell nothing is gained. */
const FEW_READERS = 256;
/** How many copies such a cell gets, each for the formulas of every so many rows. */
const COPIES = 64;

const NAME = 'Copies';

/** The address of one cell, pinned, as formulas write it: no end of a range. */
const pinnedCell = /[A-Za-z]+\d*!\$[A-Z]+\$\d+(?![\d:])/g;

/**
 * The same sheets and one of copies: of each cell that very many formulas read, those of every 64th row read a copy.
 * HyperFormula looks through all formulas that read a cell for each one more, so that a number read by 60,000 formulas
 * would take two thousand million steps. A copy stands in the row of those that read it, or as far from it as in the rows
 * around, so that the formulas of a column remain one formula to HyperFormula.
 */
export function spreadReaders(sheets: readonly GridSheet[]): readonly GridSheet[] {
  const readers = new Map<string, number>();
  for (const { rows } of sheets)
    for (const row of rows)
      for (const cell of row)
        if (typeof cell === 'string')
          for (const [read] of cell.matchAll(pinnedCell)) readers.set(read, (readers.get(read) ?? 0) + 1);
  const columns = new Map<string, number>();
  for (const [read, count] of readers) if (count > FEW_READERS) columns.set(read, columns.size);
  if (columns.size === 0) return sheets;

  const copyIn = (row: number) => (read: string) => {
    const column = columns.get(read);
    return column === undefined ? read : address(NAME, row % COPIES, column, true);
  };
  const spread = (row: readonly GridCell[], at: number): readonly GridCell[] => {
    const copy = copyIn(at);
    return row.map((cell) => (typeof cell === 'string' ? cell.replace(pinnedCell, copy) : cell));
  };
  const formulas = Array.from(columns.keys(), (read) => `=${read}`);
  const copies: GridSheet = { name: NAME, rows: Array.from({ length: COPIES }, () => formulas) };
  return [copies, ...sheets.map(({ name, rows }) => ({ name, rows: rows.map(spread) }))];
}
