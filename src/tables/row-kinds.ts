import { isNumeric, isOption, type TableCell } from './column.ts';
import type { TakenColumn } from './mapping.ts';
import type { TextRow } from './records.ts';
import { addTo, clear, isNear, isWithin, noRun, numberIn, type Run, stepOf } from './row-sums.ts';
import { beginsAsTotal, maySayTotal, saysTotal } from './total-words.ts';

/**
 * What a row seems to be beside an item of the table: a total; a sum of those above that is called like an item; one that
 * says all and is not their sum; an item whose name begins like a total's; a note among them; the numbers of the columns;
 * or numbers without the words that the other rows have.
 */
export type RowKind = 'total' | 'sum' | 'all' | 'called' | 'note' | 'numbering' | 'unnamed';

/** Words that name a total where the numbers beside them are one: `All deck`. */
const SAYS_ALL = /^\W*(?:all|alle|overall|together|zusammen|insgesamt)(?![\p{L}\d-])/iu;

/**
 * How many numbers a sum has at least where its row has a name of its own; where no row has words, 10, 20, 30 is as
 * likely a series, and one more is needed.
 */
const LEAST_SUMMANDS = { worded: 2, bare: 3 } as const;

/** The sums of a column as far as it was read, and its number in the row that is looked at. */
interface Sum {
  readonly at: number;
  x: number | undefined;
  /** One step of its last digit; 0 of lengths, for layers are seldom added up, and thicknesses often nearly are. */
  step: number;
  /** Of all rows but totals and what may be one. */
  readonly total: Run;
  /** The same since the last of these. */
  readonly since: Run;
  /** Since the last row that is sure to be a total, with those that may be one. */
  readonly whole: Run;
}

/** What is known of a text beside its cells. */
interface Facts {
  /** Whether it is a table that was saved, whose rows may have no words. */
  readonly isSaved?: boolean;
  /** The taken columns that hold lengths, by their place among them. */
  readonly lengths?: ReadonlySet<number>;
}

/** What a row may be the sum of; all its numbers are of the same. */
const RUNS = ['since', 'total', 'whole'] as const;

/**
 * Finds the rows of a text that seem to be totals or notes. A total says so; or it has no words where all rows above
 * it have some and a number that is the sum of those above. A row that is called like an item is a sum if all its numbers
 * are that of two or more above since the last total: in any language a total would be. A note has one cell, of
 * words, where the rows beside it have more; of a table of words so has the heading of a section. A row is unnamed if it has numbers and no words, and
 * at least half of the rows have some.
 *
 * @param cells the taken cells by column, as far as `rows`
 */
export function rowKinds(
  rows: readonly TextRow[],
  taken: readonly TakenColumn[],
  cells: readonly (readonly TableCell[])[],
  { isSaved = false, lengths = new Set() }: Facts = {},
): ReadonlyMap<TextRow, RowKind> {
  const found = new Map<TextRow, RowKind>();
  const worded = taken.flatMap(({ column }, at) => (isNumeric(column) ? [] : [at]));
  const sums = taken.flatMap(({ column }, at): Sum[] =>
    isNumeric(column) ? [{ at, x: undefined, step: 0, total: noRun(), since: noRun(), whole: noRun() }] : [],
  );
  const numeric = new Set(
    taken.flatMap(({ column, position, unitsAt = position }) =>
      isNumeric(column) ? [position, unitsAt] : [],
    ),
  );
  const chosen = new Map(taken.map(({ column, position }) => [position, column.options ?? []]));
  const leastSummands = worded.length > 0 ? LEAST_SUMMANDS.worded : LEAST_SUMMANDS.bare;
  const unnamed: TextRow[] = [];
  const typical = typicalFilling(rows);
  const lastFull = rows.findLastIndex((row) => filledIn(row) > 1);
  // In a table of words nothing shows later that a heading became an item, as a blank number would.
  const isOfWords = sums.length === 0;
  const isMostlyFull = rows.filter((row) => filledIn(row) > 1).length * 2 > rows.length;
  let count = 0;
  let allWorded = worded.length > 0;
  let leastWords = worded.length;
  for (const [index, row] of rows.entries()) {
    const says = row.cells.some((cell, at) => saysTotal(cell) && !isOption(cell, chosen.get(at)));
    const words = worded.filter((at) => cells[at]?.[index] != null).length;
    const hasWords = words > 0;
    let filled = 0;
    let repeats = 0;
    for (const sum of sums) {
      const cell = cells[sum.at]?.[index] ?? null;
      sum.x = numberIn(cell);
      if (sum.x === undefined) continue;
      sum.step = lengths.has(sum.at) ? 0 : stepOf(cell);
      filled += 1;
      if (sum.x !== 0 && isSum(sum.x, sum)) repeats += 1;
    }
    if (index === 0 && worded.length > 0 && countsColumns(row)) {
      found.set(row, 'numbering');
      continue;
    }
    const begins =
      !says && row.cells.some((cell, at) => beginsAsTotal(cell) && !isOption(cell, chosen.get(at)));
    // The name of an item may begin like that of a total; what stands beside it tells them apart.
    const bears = count >= 1 && filled > 0 && (repeats === filled || (words === 1 && leastWords > 1));
    const isTotal =
      says ||
      (begins && bears) ||
      (!hasWords && allWorded && count >= 1 && repeats > 0) ||
      (count >= 1 && repeats > 0 && row.cells.some((cell) => SAYS_ALL.test(cell) || maySayTotal(cell)));
    if (isTotal) {
      found.set(row, 'total');
      for (const sum of sums) for (const run of [sum.since, sum.whole]) clear(run);
      continue;
    }
    // Words in columns that are left out, and nothing in those that are taken: a heading, or the foot of a page.
    const isEmpty = taken.every((_, at) => (cells[at]?.[index] ?? null) === null);
    if (taken.length > 0 && isEmpty && !isSaved && row.cells.some((cell) => /\p{L}/u.test(cell))) {
      found.set(row, 'note');
      continue;
    }
    const isLone = taken.length > 1 && hasWords && filledIn(row) === 1;
    if (isLone && (isNote(row, typical, index > lastFull) || (isOfWords && isMostlyFull))) {
      found.set(row, 'note');
      continue;
    }
    if (
      filled > 0 &&
      repeats === filled &&
      isSumOfRows(sums, leastSummands) &&
      !isInSeries(cells, sums, index)
    ) {
      found.set(row, 'sum');
      for (const { x, step, since, whole } of sums) {
        clear(since);
        addTo(whole, x, step);
      }
      continue;
    }
    const saysAll = worded.some((at) => SAYS_ALL.test(`${cells[at]?.[index] ?? ''}`));
    if (count >= 1 && (saysAll || begins) && sums.some((sum) => isNearOne(sum))) found.set(row, 'all');
    else if (begins || (saysAll && filled > 0)) found.set(row, 'called');
    if (filled > 0 && !hasWords && !row.cells.some((cell, at) => !numeric.has(at) && /\p{L}/u.test(cell)))
      unnamed.push(row);
    count += 1;
    allWorded &&= hasWords;
    leastWords = Math.min(leastWords, words);
    for (const { x, step, total, since, whole } of sums)
      for (const run of [total, since, whole]) addTo(run, x, step);
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

/** The number of a page, as the foot of one has it. */
const FOOT_OF_PAGE =
  /^\W*(?:pages?|seite|blatt|página|pagina|pág\.?|pag\.?|sida|side|sivu|strona|str\.|strana|oldal|стр\.?|страница|σελ\.?|sayfa|trang|halaman|หน้า|صفحة|صفحه)\s*(?:nr\.?|no\.?)?\s*\p{Nd}+/iu;

/**
 * Whether a row of one cell of words is a note: it begins as notes do, the rows beside it have more than two cells, or
 * it is a sentence behind all others. Of two columns one may just be blank.
 */
function isNote({ cells }: TextRow, typical: number, isBehind: boolean): boolean {
  if (typical > 2) return true;
  return cells.some(
    (cell) =>
      /^\s*(?:[*†‡#]|notes?\b|remarks?\b|n\.?b\.)/i.test(cell) ||
      FOOT_OF_PAGE.test(cell) ||
      (typical > 1 && isBehind && cell.trim().split(/\s+/).length > 3),
  );
}

/** Whether a number is the sum of all above or of those since the last total, to the rounding of all of them. */
function isSum(x: number, sum: Sum): boolean {
  return RUNS.some((run) => isWithin(x, sum.step, sum[run], isBeside(sum)));
}

/** Whether a total stands right above the row that is looked at. */
function isBeside({ since, total }: Sum): boolean {
  return since.summands === 0 && total.summands > 0;
}

/** Whether a number is near such a sum of two or more. */
function isNearOne({ x, ...sum }: Sum): boolean {
  return x !== undefined && RUNS.some((run) => isNear(x, sum[run]));
}

/** Whether all numbers of a row are sums of the same rows, and one of them of enough that are not 0. */
function isSumOfRows(sums: readonly Sum[], least: number): boolean {
  const numbers = sums.flatMap((sum) => (sum.x === undefined ? [] : [{ ...sum, x: sum.x }]));
  return RUNS.some(
    (run) =>
      numbers.some(({ x, [run]: { summands } }) => x !== 0 && summands >= least) &&
      numbers.every((one) => isWithin(one.x, one.step, one[run], isBeside(one))),
  );
}

/** Whether the numbers of a row go on in the steps of the two above and the one below, as 1, 2, 3, 4 do. */
function isInSeries(cells: readonly (readonly TableCell[])[], sums: readonly Sum[], index: number): boolean {
  return sums.every(({ at, x }) => {
    if (x === undefined) return true;
    const [second, first, next] = [-2, -1, 1].map((by) => numberIn(cells[at]?.[index + by] ?? null));
    if (second === undefined || first === undefined || next === undefined) return false;
    const step = x - first;
    return [first - second, next - x].every((other) => Math.abs(other - step) <= 1e-9 * Math.abs(x));
  });
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
