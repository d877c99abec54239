/// <reference path="./papaparse.d.ts" />
import papaparse from 'papaparse';
import type { TableCell } from './column.ts';
import type { Delimiter } from './records.ts';

/** A column to write. `unit` is the one its numbers are in, `''` or absent for none. */
export interface WrittenColumn {
  readonly name: string;
  readonly unit?: string;
  readonly cells: readonly TableCell[];
}

/**
 * A table as text, by RFC 4180 (lines end with CR LF): a header with the columns' names, and after a name the unit in
 * parentheses if the column has numbers and a unit; then the rows. Entries stand as typed. Reading the text back gives
 * the same values.
 */
export function writeTable(columns: readonly WrittenColumn[], delimiter: Delimiter = ','): string {
  const fields = columns.map(({ name, unit = '', cells }) =>
    unit !== '' && cells.some((cell) => typeof cell === 'number') ? `${name} (${unit})` : name,
  );
  const length = Math.max(0, ...columns.map(({ cells }) => cells.length));
  const data = Array.from({ length }, (_, row) => columns.map(({ cells }) => cells[row] ?? ''));
  return `${papaparse.unparse({ fields, data }, { delimiter, newline: '\r\n' })}\r\n`;
}
