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
const PLAIN_THOUSANDS = /^[+\-−]?[$€£]?\d{4,}(?:\.\d+)?$/;

/** Rows with two numbers beside each other, below which no pattern shows. */
const FEW = 3;

/**
 * The cells of a text with commas that may be one number in two: up to three digits and then three. Not where the
 * first of the two columns has thousands without a comma elsewhere, nor where most rows look so and none is odd; a
 * row is odd where its second value is beyond its range.
 *
 * @param numeric the positions of columns of numbers that are taken
 */
export function splitNumbers(
  rows: readonly TextRow[],
  numeric: ReadonlySet<number>,
  source: readonly string[],
  isOdd: (row: TextRow, position: number) => boolean,
): readonly SplitNumber[] {
  return [...numeric].flatMap((position) => {
    const pairs = rows.filter(({ cells }) => isFilled(cells[position]) && isFilled(cells[position + 1]));
    if (rows.some(({ cells }) => PLAIN_THOUSANDS.test(cells[position]?.trim() ?? ''))) return [];
    const alike = pairs.filter((row) => looksSplit(row, position) && !isQuoted(row, position, source));
    const isPattern = pairs.length >= FEW && alike.length * 2 > pairs.length;
    return alike
      .filter((row) => !isPattern || isOdd(row, position + 1))
      .map((row) => ({
        row,
        position,
        joined: `${row.cells[position]?.trim()},${row.cells[position + 1]?.trim()}`,
      }));
  });
}

function isFilled(cell: string | undefined): boolean {
  return cell !== undefined && cell.trim() !== '';
}

function looksSplit({ cells }: TextRow, position: number): boolean {
  return HEAD.test(cells[position]?.trim() ?? '') && TAIL.test(cells[position + 1] ?? '');
}

/** Whether quotation marks say that each of the two is a cell of its own. */
function isQuoted({ line, cells }: TextRow, position: number, source: readonly string[]): boolean {
  const written = source[line - 1] ?? '';
  return [cells[position], cells[position + 1]].some((cell) => written.includes(`"${cell}"`));
}
