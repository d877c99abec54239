import { statedUnit } from './headers.ts';
import type { TextRow } from './records.ts';
import type { TableText } from './table-text.ts';

/** The first value of a column of a text: the row, counted from 1 under a header, and the line it stands in. */
interface FirstValue {
  readonly row: number;
  readonly line: number;
  readonly text: string;
}

/** One column of a text. One without a header has a value, for else there would be nothing of it. */
export interface TextColumn {
  /** Counted from 0. */
  readonly position: number;
  /** What stands above it, `''` for nothing. */
  readonly header: string;
  /** The unit in brackets at the end of the header, `''` for none. */
  readonly unit: string;
  readonly first: FirstValue | undefined;
}

/**
 * The columns of a text that have a header or a value.
 *
 * @param headed whether the first row names them; otherwise it is data like the others
 */
export function textColumns(text: TableText, headed: boolean): readonly TextColumn[] {
  const rows = dataRows(text, headed);
  return text.top.cells.flatMap((cell, position) => {
    const header = headed ? cell.trim() : '';
    const first = firstValue(rows, position);
    return header === '' && first === undefined
      ? []
      : [{ position, header, unit: statedUnit(header), first }];
  });
}

/** The rows of a text without the one that names its columns. */
export function dataRows({ rows }: TableText, headed: boolean): readonly TextRow[] {
  return headed ? rows.slice(1) : rows;
}

/** Whether the first row of a text is more like data than like names of columns. */
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
  for (const [at, { line, cells }] of rows.entries()) {
    const text = cells[position]?.trim() ?? '';
    if (text !== '') return { row: at + 1, line, text };
  }
  return undefined;
}
