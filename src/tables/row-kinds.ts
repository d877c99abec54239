import { isNumeric, type TableCell } from './column.ts';
import type { TakenColumn } from './mapping.ts';
import type { TextRow } from './records.ts';

/** What a row seems to be beside an item of the table: a sum of those above, or a note among them. */
export type RowKind = 'total' | 'note';

/** Words for a total, as the whole of a cell, at its start or at its end. */
const SAYS_TOTAL =
  /^\W*(?:(?:grand|sub|net|gross)[\s-]*)?(?:totals?|subtotals?|sums?|summe|zwischensumme|gesamt(?:summe)?|somme|sous-total|suma|totale|totaal|total général)(?![\p{L}\d])|(?:^|\s)(?:sub-?)?totals?\W*$/iu;

/** How many rows a sum has at least where the row has a name of its own, so that 1 + 2 = 3 is no total. */
const LEAST_SUMMANDS = 3;

/**
 * Finds the rows of a text that seem to be totals or notes. A total says so; or it has no words where all rows above
 * it have some and a number that is the sum of those above; or it is the last row and all its numbers are such sums. A
 * note has one cell, of words, where the rows beside it have more.
 *
 * @param cells the taken cells by column, as far as `rows`
 */
export function rowKinds(
  rows: readonly TextRow[],
  taken: readonly TakenColumn[],
  cells: readonly (readonly TableCell[])[],
): ReadonlyMap<TextRow, RowKind> {
  const found = new Map<TextRow, RowKind>();
  const worded = taken.flatMap(({ column }, at) => (isNumeric(column) ? [] : [at]));
  const sums = taken.flatMap(({ column }, at) => (isNumeric(column) ? [{ at, total: 0, since: 0 }] : []));
  const typical = typicalFilling(rows);
  const lastFull = rows.findLastIndex((row) => filledIn(row) > 1);
  let count = 0;
  let allWorded = worded.length > 0;
  for (const [index, row] of rows.entries()) {
    const says = row.cells.some(saysTotal);
    const hasWords = worded.some((at) => cells[at]?.[index] != null);
    const numbers = sums.flatMap((sum) => {
      const number = numberIn(cells[sum.at]?.[index] ?? null);
      return number === undefined ? [] : [{ sum, ...number }];
    });
    const repeats = numbers.filter(({ sum, x, step }) => x !== 0 && isSum(x, step * count, sum));
    const isLast = index === rows.length - 1;
    const isTotal =
      says ||
      (!hasWords && allWorded && count >= 2 && repeats.length > 0) ||
      (isLast && count >= LEAST_SUMMANDS && repeats.length > 0 && repeats.length === numbers.length);
    if (isTotal) {
      found.set(row, 'total');
      for (const sum of sums) sum.since = 0;
      continue;
    }
    if (taken.length > 1 && hasWords && filledIn(row) === 1 && isNote(row, typical, index > lastFull)) {
      found.set(row, 'note');
      continue;
    }
    count += 1;
    allWorded &&= hasWords;
    for (const { sum, x } of numbers) {
      sum.total += x;
      sum.since += x;
    }
  }
  return found;
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

function saysTotal(cell: string): boolean {
  const text = cell.trim();
  // Most cells of a long table are numbers.
  return text !== '' && text.length < 80 && !/^\d/.test(text) && SAYS_TOTAL.test(text);
}

/** Whether a number is the sum of all above or of those since the last total, to the rounding of its digits. */
function isSum(
  x: number,
  slack: number,
  { total, since }: { readonly total: number; readonly since: number },
): boolean {
  return [total, since].some((sum) => Math.abs(x - sum) <= slack / 2 + 1e-9 * Math.abs(sum));
}

/** The number a cell begins with, and one step of its last digit; whole numbers are not rounded. */
function numberIn(cell: TableCell): { readonly x: number; readonly step: number } | undefined {
  if (cell === null) return undefined;
  const [digits] = /^-?[\d, '’\u00a0\u2009\u202f]*\.?\d+/.exec(`${cell}`) ?? [];
  if (digits === undefined) return undefined;
  const plain = digits.replace(/[^\d.-]/g, '');
  const decimals = plain.split('.')[1]?.length ?? 0;
  const x = Number(plain);
  return Number.isFinite(x) ? { x, step: decimals === 0 ? 0 : 10 ** -decimals } : undefined;
}

/** How many cells are filled in the middle row, counted by how many are filled. */
function typicalFilling(rows: readonly TextRow[]): number {
  const counts = rows.map(filledIn).sort((a, b) => a - b);
  return counts[Math.floor(counts.length / 2)] ?? 0;
}

function filledIn({ cells }: TextRow): number {
  return cells.filter((cell) => cell.trim() !== '').length;
}
