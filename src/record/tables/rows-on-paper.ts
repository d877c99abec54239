import type { Column } from '../../document/index.ts';
import { type FormulaColumnItem, type Notebook, statedIn } from '../../notebook/index.ts';
import { governingRow } from '../numbers/governing-row.ts';

/** How a calculated table is shortened on paper: above so many rows, to how many of its first and last. */
interface Shortening {
  readonly above: number;
  readonly first: number;
  readonly last: number;
}

/** Longer tables fill pages of their own; where they are summarised, nothing but what matters is left of any. */
const [long, summarised]: readonly [Shortening, Shortening] = [
  { above: 48, first: 6, last: 3 },
  { above: 16, first: 3, last: 2 },
];
/** So many rows with a problem are printed of one column. */
const MOST_FAILING = 5;

/** Rows of a table, from 0, one after the other: printed, or left out. */
export interface RowsOnPaper {
  readonly kind: 'printed' | 'left out';
  readonly from: number;
  readonly to: number;
}

/** A row of a printed table from 0, or rows that are left out. */
export type PrintedRow = number | RowsOnPaper;

/**
 * The rows of a table (`sheet.table`) that paper has, in their order. Of a long table in which nothing is entered they are
 * the first, the last, those that a line takes its value from, those that are stated and those that fail; all of any
 * other table, and where the book says so.
 */
export function rowsOnPaper(
  notebook: Notebook,
  table: string,
  columns: readonly Column[],
  length: number,
  summarises = false,
): readonly RowsOnPaper[] {
  const { above, first, last: end } = summarises ? summarised : long;
  const all: readonly RowsOnPaper[] = [{ kind: 'printed', from: 0, to: length - 1 }];
  const isCalculated = columns.every(({ kind }) => kind !== 'given');
  if (length <= above || !isCalculated || notebook.book.settings.printedTables === 'whole') return all;
  const kept = new Set<number>();
  for (let row = 0; row < first; row += 1) kept.add(row);
  for (let row = length - end; row < length; row += 1) kept.add(row);
  for (const { name } of columns) {
    const item = notebook.model.items.get(`${table}.${name}`);
    if (item?.kind === 'formula column') for (const row of rowsOfNote(notebook, item)) kept.add(row);
  }
  const runs: { kind: RowsOnPaper['kind']; from: number; to: number }[] = [];
  for (let row = 0; row < length; row += 1) {
    // One row takes no more room than the words that it is left out.
    const alone = kept.has(row - 1) && kept.has(row + 1);
    const kind = kept.has(row) || alone ? 'printed' : 'left out';
    const last = runs.at(-1);
    if (last?.kind === kind) last.to = row;
    else runs.push({ kind, from: row, to: row });
  }
  return runs;
}

/** The rows of a column that a checker looks for. */
function rowsOfNote(notebook: Notebook, item: FormulaColumnItem): readonly number[] {
  const governing = governingRow(notebook, item);
  const stated = statedIn(notebook, item).flatMap(({ row }) => row ?? []);
  const failing: number[] = [];
  const column = notebook.column(item.id);
  if (column.status === 'ok' && column.reading.gaps > 0)
    for (let row = 0; row < column.reading.length && failing.length < MOST_FAILING; row += 1)
      if (Number.isNaN(column.reading.values[row])) failing.push(row);
  return [...(governing?.reader ? [governing.row] : []), ...stated, ...failing];
}
