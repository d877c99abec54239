/// <reference path="./papaparse.d.ts" />
import papaparse from 'papaparse';
import type { TableCell } from './column.ts';
import { guardText } from './guarded-text.ts';
import type { Delimiter } from './records.ts';

/** A column to write. `unit` is the one its numbers are in, `''` or absent for none. */
export interface WrittenColumn {
  readonly name: string;
  readonly unit?: string;
  /** Whether it holds words, which no spreadsheet is to take for formulas. */
  readonly words?: boolean;
  readonly cells: readonly TableCell[];
}

/**
 * A table as text, by RFC 4180 (lines end with CR LF): a header with the columns' names, and after a name the unit in
 * parentheses if the column has numbers and a unit; then the rows. Entries stand as typed; in front of words that
 * begin like a formula stands an apostrophe, and a row with nothing in it begins with `""`. Where nothing else tells
 * that 1.125 is not 1125, it has a zero behind it: `1.1250`. Reading the text back gives the same values.
 */
export function writeTable(columns: readonly WrittenColumn[], delimiter: Delimiter = ','): string {
  const fields = columns.map(({ name, unit = '', cells }) =>
    unit !== '' && cells.some((cell) => typeof cell === 'number') ? `${name} (${unit})` : name,
  );
  const length = Math.max(0, ...columns.map(({ cells }) => cells.length));
  const told = tellsDecimals(columns);
  const data = Array.from({ length }, (_, row) => {
    const written = columns.map(({ cells, words }) => writtenCell(cells[row] ?? null, words === true, told));
    return written.every((cell) => cell === '') ? [BLANK_ROW, ...written.slice(1)] : written;
  });
  const text = papaparse.unparse({ fields, data }, { delimiter, newline: '\r\n' });
  return `${text.replaceAll(BLANK_ROW, '""')}\r\n`;
}

/** Holds the place of the quotation marks that begin a blank row; no text of a book has this sign. */
const BLANK_ROW = '\u0000';

/** A number that may have three decimals or be parted at its thousands, depending on who reads it. */
const READ_TWO_WAYS = /^-?[1-9]\d{0,2}\.\d{3}$/;

/** Whether some number says by itself that its point is one of decimals. */
function tellsDecimals(columns: readonly WrittenColumn[]): boolean {
  return columns.some(({ cells }) =>
    cells.some((cell) => {
      return typeof cell === 'number' && /\.\d+$/.test(String(cell)) && !READ_TWO_WAYS.test(String(cell));
    }),
  );
}

function writtenCell(cell: TableCell, words: boolean, told: boolean): TableCell {
  if (cell === null) return '';
  if (typeof cell === 'number') return !told && READ_TWO_WAYS.test(String(cell)) ? `${cell}0` : cell;
  return words ? guardText(cell) : cell;
}
