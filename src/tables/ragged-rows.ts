import { type Problem, problem } from '../diagnostics/index.ts';
import type { Delimiter, TextRow } from './records.ts';

const NOWHERE = { from: 0, to: 0 };

/**
 * What is wrong with a row that has more cells than the text has columns, if it has. Blank cells at its end are nothing,
 * but where a comma parts cells and two numbers stand side by side they may be one that its comma broke in two, unless it
 * was said that no number has one (`isPlain`).
 */
export function longRow(
  { line, cells }: TextRow,
  columns: number,
  delimiter: Delimiter,
  isPlain: boolean,
): Problem | undefined {
  const extra = cells.slice(columns).map((cell) => cell.trim());
  if (extra.length === 0) return undefined;
  if (extra.every((cell) => cell === '')) {
    const at = isPlain || delimiter !== ',' ? -1 : digitsBesideDigits(cells);
    if (at < 0) return undefined;
    const [first = '', second = ''] = [cells[at]?.trim(), cells[at + 1]?.trim()];
    return problem('row-ends-blank', NOWHERE, { line, cells: cells.length, columns, first, second });
  }
  const number = delimiter === ',' ? brokenNumber(cells) : '';
  return problem('row-long', NOWHERE, {
    line,
    cells: cells.length,
    columns,
    extra: extra.join(', '),
    number,
  });
}

/**
 * What is wrong with a row that has fewer cells than the text has columns, if it has. Where spaces part cells, any cell
 * of the row may be the blank one.
 */
export function shortRow(
  { line, cells }: TextRow,
  columns: number,
  delimiter: Delimiter,
): Problem | undefined {
  if (cells.length >= columns) return undefined;
  const code = delimiter === '  ' ? 'row-short-spaced' : 'row-short';
  return problem(code, NOWHERE, { line, cells: cells.length, columns });
}

function digitsBesideDigits(cells: readonly string[]): number {
  return cells.findIndex((cell, at) => /\d\s*$/.test(cell) && /^\s*\d+\s*$/.test(cells[at + 1] ?? ''));
}

/** A number that the commas between its thousands seem to have broken into several cells, else `''`. */
function brokenNumber(cells: readonly string[]): string {
  const row = cells.map((cell) => (cell.includes(',') ? '' : cell.trim())).join(',');
  return /(?<![^,])[+\-−$]?\d{1,3}(?:,\d{3})+(?:\.\d*)?(?![^, ])/.exec(row)?.[0] ?? '';
}
