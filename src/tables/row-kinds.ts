import { isNumeric, type TableCell } from './column.ts';
import type { TakenColumn } from './mapping.ts';
import type { TextRow } from './records.ts';
import { maySayTotal, saysTotal } from './total-words.ts';

/**
 * What a row seems to be beside an item of the table: a sum of those above; one that says all and is not their sum; a
 * note among them; the numbers of the columns; or numbers without the words that the other rows have.
 */
export type RowKind = 'total' | 'all' | 'note' | 'numbering' | 'unnamed';

/** Words that name a total where the numbers beside them are one: `All deck`. */
const SAYS_ALL = /^\W*(?:all|alle|overall|together|zusammen|insgesamt)(?![\p{L}\d-])/iu;

/** How many rows a sum has at least where the row has a name of its own, so that 1 + 2 = 3 is no total. */
const LEAST_SUMMANDS = 3;

/** The sums of a column as far as it was read, and its number in the row that is looked at. */
interface Sum {
  readonly at: number;
  x: number | undefined;
  total: number;
  since: number;
}

/**
 * Finds the rows of a text that seem to be totals or notes. A total says so; or it has no words where all rows above
 * it have some and a number that is the sum of those above; or it is the last row and all its numbers are such sums. A
 * note has one cell, of words, where the rows beside it have more. A row is unnamed if it has numbers and no words, and
 * at least half of the rows have some.
 *
 * @param cells the taken cells by column, as far as `rows`
 * @param isSaved whether the text is a table that was saved, whose rows may have no words
 */
export function rowKinds(
  rows: readonly TextRow[],
  taken: readonly TakenColumn[],
  cells: readonly (readonly TableCell[])[],
  isSaved = false,
): ReadonlyMap<TextRow, RowKind> {
  const found = new Map<TextRow, RowKind>();
  const worded = taken.flatMap(({ column }, at) => (isNumeric(column) ? [] : [at]));
  const sums = taken.flatMap(({ column }, at): Sum[] =>
    isNumeric(column) ? [{ at, x: undefined, total: 0, since: 0 }] : [],
  );
  const numeric = new Set(
    taken.flatMap(({ column, position, unitsAt = position }) =>
      isNumeric(column) ? [position, unitsAt] : [],
    ),
  );
  const unnamed: TextRow[] = [];
  const typical = typicalFilling(rows);
  const lastFull = rows.findLastIndex((row) => filledIn(row) > 1);
  let count = 0;
  let allWorded = worded.length > 0;
  for (const [index, row] of rows.entries()) {
    const says = row.cells.some(saysTotal);
    const hasWords = worded.some((at) => cells[at]?.[index] != null);
    let filled = 0;
    let repeats = 0;
    for (const sum of sums) {
      const cell = cells[sum.at]?.[index] ?? null;
      sum.x = numberIn(cell);
      if (sum.x === undefined) continue;
      filled += 1;
      if (sum.x !== 0 && isSum(sum.x, cell, count, sum)) repeats += 1;
    }
    if (index === 0 && worded.length > 0 && countsColumns(row)) {
      found.set(row, 'numbering');
      continue;
    }
    const isLast = index === rows.length - 1;
    const isTotal =
      says ||
      (!hasWords && allWorded && count >= 1 && repeats > 0) ||
      (count >= 1 && repeats > 0 && row.cells.some((cell) => SAYS_ALL.test(cell) || maySayTotal(cell))) ||
      (isLast && count >= LEAST_SUMMANDS && repeats > 0 && repeats === filled);
    if (isTotal) {
      found.set(row, 'total');
      for (const sum of sums) sum.since = 0;
      continue;
    }
    if (taken.length > 1 && hasWords && filledIn(row) === 1 && isNote(row, typical, index > lastFull)) {
      found.set(row, 'note');
      continue;
    }
    if (count >= 1 && filled > 0 && worded.some((at) => SAYS_ALL.test(`${cells[at]?.[index] ?? ''}`)))
      found.set(row, 'all');
    if (filled > 0 && !hasWords && !row.cells.some((cell, at) => !numeric.has(at) && /\p{L}/u.test(cell)))
      unnamed.push(row);
    count += 1;
    allWorded &&= hasWords;
    for (const sum of sums) {
      sum.total += sum.x ?? 0;
      sum.since += sum.x ?? 0;
    }
  }
  if (worded.length > 0 && !isSaved && unnamed.length * 2 <= count)
    for (const row of unnamed) found.set(row, 'unnamed');
  return found;
}

/** Whether a row has 1, 2, 3 …, maybe in brackets, under the headers of its columns. */
function countsColumns({ cells }: TextRow): boolean {
  const end = cells.findLastIndex((cell) => cell.trim() !== '') + 1;
  return end > 2 && cells.slice(0, end).every((cell, at) => /^\W*(\d+)\W*$/.exec(cell)?.[1] === `${at + 1}`);
}

/**
 * Whether a row of one cell of words is a note: it begins as notes do, the rows beside it have more than two cells, or
 * it is a sentence behind all others. Of two columns one may just be blank.
 */
function isNote({ cells }: TextRow, typical: number, isBehind: boolean): boolean {
  if (typical > 2) return true;
  return cells.some(
    (cell) =>
      /^\s*(?:[*†‡#]|notes?\b|remarks?\b|n\.?b\.)/i.test(cell) ||
      (typical > 1 && isBehind && cell.trim().split(/\s+/).length > 3),
  );
}

/** Whether a number is the sum of all above or of those since the last total, to the rounding of its digits. */
function isSum(x: number, cell: TableCell, count: number, { total, since }: Sum): boolean {
  const isWithin = (sum: number, step: number): boolean =>
    Math.abs(x - sum) <= (step * count) / 2 + 1e-9 * Math.abs(sum);
  // Most numbers are no sum even if they had but one decimal; only of the others are the digits counted.
  if (!isWithin(total, COARSEST) && !isWithin(since, COARSEST)) return false;
  const step = stepOf(cell);
  return isWithin(total, step) || isWithin(since, step);
}

/** One step of the last digit of a number with one decimal. */
const COARSEST = 0.1;

/** One step of the last digit of the number that a cell begins with; whole numbers are not rounded. */
function stepOf(cell: TableCell): number {
  const decimals = digitsIn(`${cell}`)?.split('.')[1]?.length ?? 0;
  return decimals === 0 ? 0 : 10 ** -decimals;
}

/** The number a cell begins with. */
function numberIn(cell: TableCell): number | undefined {
  if (cell === null || typeof cell === 'number') return cell ?? undefined;
  const digits = digitsIn(cell);
  const x = digits === undefined ? Number.NaN : Number(digits);
  return Number.isFinite(x) ? x : undefined;
}

/** The digits a cell begins with, without signs between thousands. */
function digitsIn(cell: string): string | undefined {
  const [digits] = /^-?[\d, '’\u00a0\u2009\u202f]*\.?\d+/.exec(cell) ?? [];
  return digits === undefined || /^-?\d+(?:\.\d+)?$/.test(digits) ? digits : digits.replace(/[^\d.-]/g, '');
}

/** How many cells are filled in the middle one of the rows with more than one, however many notes there are. */
function typicalFilling(rows: readonly TextRow[]): number {
  const counts = rows
    .map(filledIn)
    .filter((count) => count > 1)
    .sort((a, b) => a - b);
  return counts[Math.floor(counts.length / 2)] ?? 1;
}

function filledIn({ cells }: TextRow): number {
  return cells.filter((cell) => cell.trim() !== '').length;
}
