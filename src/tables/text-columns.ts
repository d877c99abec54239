import { bracketedUnit, splitUnit } from './headers.ts';
import { isBlankRow, type TextRow } from './records.ts';
import type { TableText } from './table-text.ts';
import { unitStated } from './unit-row.ts';

/** The first value of a column of a text, and the line it stands in. */
interface FirstValue {
  readonly line: number;
  readonly text: string;
}

/** One column of a text. One without a header has a value, for else there would be nothing of it. */
export interface TextColumn {
  /** Counted from 0. */
  readonly position: number;
  /** What stands above it, `''` for nothing. */
  readonly header: string;
  /** The unit in brackets at the end of the header or in a row of units below it, `''` for none. */
  readonly unit: string;
  /** The unit in a row of units below the header, `''` for none. */
  readonly below: string;
  readonly first: FirstValue | undefined;
}

/**
 * The columns of a text that have a header or a value.
 *
 * @param headed whether a row names them; otherwise that row is data like the others
 */
export function textColumns(text: TableText, headed: boolean): readonly TextColumn[] {
  const rows = dataRows(text, headed);
  const { top, units } = text;
  const width = headed ? top.cells.length : Math.max(top.cells.length, rows[0]?.cells.length ?? 0);
  return Array.from({ length: width }).flatMap((_, position) => {
    const header = headed ? (top.cells[position] ?? '').trim() : '';
    const first = firstValue(rows, position);
    const stated = headed && units ? unitStated(units.cells[position] ?? '') : '';
    // A dash above nothing is about nothing.
    const below = stated === '-' && first === undefined ? '' : stated;
    return header === '' && first === undefined
      ? []
      : [{ position, header, unit: below || bracketedUnit(header), below, first }];
  });
}

/** The rows of a text that may be data: without those left out as was said, and the headers with what is above them. */
export function dataRows(text: TableText, headed: boolean): readonly TextRow[] {
  const { rows, top, more, units, skipped } = text;
  const isHead = ({ at }: TextRow): boolean => at <= top.at || at === more?.at || at === units?.at;
  return rows.filter(
    (row) => !skipped.has(row.line) && (!headed || (!isHead(row) && !repeatsHeaders(row, text))),
  );
}

/** The rows among the others that say the headers again, as each page of a printed table does. */
export function headerRepeats(text: TableText): readonly TextRow[] {
  const { rows, top, skipped } = text;
  return rows.filter((row) => row.at > top.at && !skipped.has(row.line) && repeatsHeaders(row, text));
}

function repeatsHeaders({ cells, at }: TextRow, { rows, top }: TableText): boolean {
  const written = rows[top.at]?.cells ?? [];
  // A row of numbers is never one of headers, and most rows differ from them in their first cell.
  if (at <= top.at || cells[0]?.trim() !== written[0]?.trim()) return false;
  const filled = cells.filter((cell) => cell.trim() !== '').length;
  return filled > 1 && written.every((cell, position) => (cells[position] ?? '').trim() === cell.trim());
}

/** A row that says the headers again, and the first of them that has another unit there. */
export interface ChangedHeaders {
  readonly row: TextRow;
  readonly header: string;
  readonly again: string;
}

/** The rows among the others that say the headers again with other units in their brackets. */
export function changedHeaders({ rows, top, skipped }: TableText): readonly ChangedHeaders[] {
  const written = (rows[top.at]?.cells ?? []).map((cell) => cell.trim());
  const headed = written.findIndex((header) => bracketedUnit(header) !== '');
  if (headed < 0) return [];
  return rows.flatMap((row) => {
    // Of a long table hardly a row has a bracket there.
    if (row.at <= top.at || skipped.has(row.line) || bracketedUnit(row.cells[headed] ?? '') === '') return [];
    const cells = written.map((_, position) => row.cells[position]?.trim() ?? '');
    const isAgain = written.every(
      (header, position) => unbracketed(cells[position] ?? '') === unbracketed(header),
    );
    const position = isAgain ? written.findIndex((header, at) => cells[at] !== header) : -1;
    return position < 0 ? [] : [{ row, header: written[position] ?? '', again: cells[position] ?? '' }];
  });
}

/** A header without the unit in the brackets at its end, in small letters. */
function unbracketed(header: string): string {
  return splitUnit(header).name.trim().toLowerCase();
}

/** The rows above the headers that have something in them and are not left out as was said. */
export function rowsAbove({ rows, top, skipped }: TableText): readonly TextRow[] {
  return rows.slice(0, top.at).filter((row) => !skipped.has(row.line) && !isBlankRow(row));
}

/** Whether the row in the place of headers is more like data than like names of columns. */
export function looksLikeData({ top }: TableText): boolean {
  const end = top.cells.findLastIndex((cell) => cell.trim() !== '') + 1;
  return top.cells.slice(0, end).some((cell) => cell.trim() === '' || /^[\s$(+\-−.]*\d/.test(cell));
}

/** What problems tell of a column of a text. */
export function columnFacts({ position, header, first }: TextColumn): {
  readonly position: number;
  readonly header: string;
  readonly first: string;
} {
  return { position: position + 1, header, first: first?.text ?? '' };
}

function firstValue(rows: readonly TextRow[], position: number): FirstValue | undefined {
  for (const { line, cells } of rows) {
    const text = cells[position]?.trim() ?? '';
    if (text !== '') return { line, text };
  }
  return undefined;
}
