import type { TextRow } from './records.ts';

/** Two cells of a row that may be one number, parted by the comma between its thousands. */
export interface SplitNumber {
  readonly row: TextRow;
  /** The position of the first of the two. */
  readonly position: number;
  readonly joined: string;
}

const HEAD = /^[+\-−]?\s*[$€£]?\s*[1-9]\d{0,2}$/;
const TAIL = /^\d{3}(?:\.\d+)?$/;
/** Digits that no one writes as a number of their own, but that stand behind a comma. */
const ZERO_LED = /^0\d+(?:\.\d+)?$/;
const WHOLE = /^[+\-−]?\s*[$€£]?\s*\d{1,3}$/;
const PLAIN_THOUSANDS = /^[+\-−]?[$€£]?\d{4,}(?:\.\d+)?$/;

/** What is known of the columns of a text. */
interface SplitColumns {
  /** The positions at which a split number can begin: all that are left out or go to a column of numbers. */
  readonly from: readonly number[];
  /** Those of them that go to a column of numbers. */
  readonly numeric: ReadonlySet<number>;
  /** How many columns the text has. */
  readonly width: number;
}

/**
 * The cells of a text with commas that may be one number in two: up to three digits and then three, or any that begin
 * with 0. Such a number makes its row longer by one, unless its blank cells at the end were not written; so a pair is
 * told wherever the row, read with the pair as one number and the cells behind it moved to the left, has no words in a
 * column of numbers. It is two cells where quotation marks say so, where the first column counts its rows; and, as long as
 * nothing of the row is beyond its range, where the column has thousands without a comma elsewhere, or where the row is as
 * long as the headers and other rows show that blank cells at the end are written.
 */
export function splitNumbers(
  rows: readonly TextRow[],
  { from, numeric, width }: SplitColumns,
  source: readonly string[],
  isOdd: (row: TextRow, position: number) => boolean,
): readonly SplitNumber[] {
  const isZeroLed = ({ cells }: TextRow, position: number): boolean =>
    numeric.has(position) &&
    WHOLE.test(cells[position]?.trim() ?? '') &&
    ZERO_LED.test(cells[position + 1]?.trim() ?? '');
  const isAlike = (row: TextRow, position: number): boolean =>
    isZeroLed(row, position) || looksSplit(row, position);
  const isFull = endsAreWritten(rows, width, (row) => from.some((position) => isAlike(row, position)));
  return from.flatMap((position) => {
    const alike = rows.filter((row) => isAlike(row, position));
    if (alike.length === 0 || (!numeric.has(position) && countsRows(rows, position))) return [];
    const isPlain = rows.some(({ cells }) => PLAIN_THOUSANDS.test(cells[position]?.trim() ?? ''));
    return alike
      .filter((row) => !isQuoted(row, position, source) && !saysWords(row, position, numeric, width))
      .filter(
        (row) =>
          isOdd(row, position + 1) ||
          isZeroLed(row, position) ||
          !(isPlain || (isFull && row.cells.length === width)),
      )
      .map((row) => ({
        row,
        position,
        joined: `${row.cells[position]?.trim()},${row.cells[position + 1]?.trim()}`,
      }));
  });
}

/** Whether no row ends early, and one that can be read but one way ends with a blank cell: then one joined would be short. */
export function endsAreWritten(
  rows: readonly TextRow[],
  width: number,
  isAlike: (row: TextRow) => boolean,
): boolean {
  const isBlank = (cell: string | undefined): boolean => cell?.trim() === '';
  return (
    rows.every(({ cells }) => cells.length >= width || cells.every(isBlank)) &&
    rows.some((row) => row.cells.length === width && isBlank(row.cells.at(-1)) && !isAlike(row))
  );
}

function looksSplit({ cells }: TextRow, position: number): boolean {
  return HEAD.test(cells[position]?.trim() ?? '') && TAIL.test(cells[position + 1] ?? '');
}

/** Whether the cells behind the pair, moved to the left by one, put words in a column of numbers. */
export function saysWords(
  { cells }: TextRow,
  position: number,
  numeric: ReadonlySet<number>,
  width: number,
): boolean {
  return cells.slice(position + 2, width).some((cell, at) => {
    const text = cell.trim();
    return text !== '' && numeric.has(position + 1 + at) && !/[\d½¼¾⅓⅔⅛⅜⅝⅞]/.test(text);
  });
}

/** Whether a column has 1, 2, 3 … in `least` rows or more: each row one more than the row above. */
export function countsRows(rows: readonly TextRow[], position: number, least = 2): boolean {
  const numbers = rows.flatMap(({ cells }) => {
    const text = cells[position]?.trim() ?? '';
    return text === '' ? [] : [/^\d+$/.test(text) ? Number(text) : Number.NaN];
  });
  const [first = Number.NaN] = numbers;
  return numbers.length >= least && numbers.every((number, at) => number === first + at);
}

/** Whether quotation marks say that each of the two is a cell of its own. */
export function isQuoted({ line, cells }: TextRow, position: number, source: readonly string[]): boolean {
  const written = source[line - 1] ?? '';
  return [cells[position], cells[position + 1]].some((cell) => written.includes(`"${cell}"`));
}
