/** One cell of the grid: a number, a truth value, a formula (a text that begins with `=`), or nothing. */
export type GridCell = number | boolean | string | null;

/** One sheet of plain spreadsheet cells, row by row; short rows end early. */
export interface GridSheet {
  readonly name: string;
  readonly rows: readonly (readonly GridCell[])[];
}

/** What a person may read beside or above a cell. Labels stand apart, so that nobody's text is taken for a formula. */
export interface GridLabel {
  readonly sheet: string;
  /** From 0. */
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/** A book as plain spreadsheet formulas: a value without behaviour, to compute or to export. */
export interface Grid {
  readonly sheets: readonly GridSheet[];
  readonly labels: readonly GridLabel[];
}

/** A sheet while it is filled. */
export interface OpenSheet {
  readonly name: string;
  readonly rows: GridCell[][];
}

/** Where a cell stands; row and column from 0. */
export interface GridPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** The letters of a column counted from 0: A, B, … Z, AA. */
function columnLetters(column: number): string {
  const rest = Math.floor(column / 26) - 1;
  return (rest >= 0 ? columnLetters(rest) : '') + String.fromCharCode(65 + (column % 26));
}

/**
 * The address of a cell, `Cells!$B$4`; `moving` leaves the row unpinned (`$B4`), so that the formulas down a column
 * are the same formula to a spreadsheet.
 */
export function address(sheet: string, row: number, column: number, moving = false): string {
  return `${sheet}!$${columnLetters(column)}${moving ? '' : '$'}${row + 1}`;
}

/** The address of cells below one another, or of one cell. */
export function columnRange(sheet: string, row: number, column: number, count: number): string {
  const letters = columnLetters(column);
  return `${sheet}!$${letters}$${row + 1}:$${letters}$${row + count}`;
}

/** The address of cells side by side; the row is unpinned. */
export function rowRange(sheet: string, row: number, column: number, count: number): string {
  return `${sheet}!$${columnLetters(column)}${row + 1}:$${columnLetters(column + count - 1)}${row + 1}`;
}

const single = /^[A-Za-z0-9]+!\$[A-Z]+\$?\d+$/;

/** Whether a formula is nothing but the address of one cell. */
export function isAddress(formula: string): boolean {
  return single.test(formula);
}
