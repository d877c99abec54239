import {
  type Cell,
  cellOf,
  type Edit,
  type GivenColumn,
  insertTableRows,
  joinEdits,
  replaceTableRows,
  setCells,
  type Table,
} from '../../../document/index.ts';
import { insertionLabel } from '../lines/describe-insertion.ts';

/** Rows for a table, as they were read: by the name of a column a cell for each row. */
export interface NewRows {
  readonly length: number;
  readonly cells: Readonly<Record<string, readonly Cell[]>>;
}

/** Where rows go in a table: in place of all that are there, behind them, or over those from a row on (from 0). */
export type Where =
  | { readonly kind: 'replace' }
  | { readonly kind: 'behind' }
  | { readonly kind: 'from'; readonly row: number };

/** What becomes of the cells of rows that are gone over, in columns the text has nothing for. */
export type Others = 'stay' | 'empty';

const verbs = { replace: 'take', behind: 'add', from: 'paste' } as const;

/**
 * The edit that puts rows into a table of a sheet, and says in its label how many, how many of them are new, which columns
 * hold what they held because the text has nothing for them, and `account`.
 */
export function putRows(
  sheet: string,
  table: Table,
  rows: NewRows,
  where: Where,
  account: string,
  others: Others = 'stay',
): Edit {
  const at = { sheet, table: table.id };
  const before = table.length ?? 0;
  const verb = verbs[where.kind];
  const label = (
    more: { readonly fresh?: number; readonly kept?: readonly GivenColumn[]; readonly below?: number } = {},
  ) => insertionLabel(verb, rows.length, { ...more, kept: (more.kept ?? []).map(headingOf), account });
  if (where.kind === 'replace') return { ...replaceTableRows(at, table, rows), label: label() };
  if (where.kind === 'behind') return { ...insertTableRows(at, table, before, rows), label: label() };
  const { row } = where;
  const grown = Math.max(0, row + rows.length - before);
  const growth = grown > 0 ? [insertTableRows(at, table, before, { length: grown, cells: {} })] : [];
  const filled = table.columns.flatMap((column) => {
    const cells = cellsFor(column, rows);
    return cells ? [setCells({ ...at, column: column.id }, row, cells)] : [];
  });
  const kept = othersFilled(table, rows, row);
  const blank = Array.from({ length: rows.length - grown }, () => null);
  const emptied =
    others === 'empty' ? kept.map((column) => setCells({ ...at, column: column.id }, row, blank)) : [];
  const told = { fresh: grown, kept: others === 'empty' ? [] : kept, below: rowsBelow(table, rows, row) };
  return joinEdits(label(told), [...growth, ...filled, ...emptied]);
}

/** The columns that rows from a row on have nothing for, and that hold something there. */
export function othersFilled(table: Table, rows: NewRows, row: number): readonly GivenColumn[] {
  return table.columns
    .filter((column) => column.kind === 'given')
    .filter((column) => !cellsFor(column, rows))
    .filter((column) => isAnyRow(table, rows, row, (at) => cellOf(column, at) !== null));
}

/**
 * Whether what those columns hold may be of something else from now on: a row in which one of them holds something is called
 * by other words.
 */
export function isOfOthers(
  table: Table,
  rows: NewRows,
  row: number,
  kept: readonly GivenColumn[] = othersFilled(table, rows, row),
): boolean {
  const words = table.columns.flatMap((column) => {
    const cells = column.kind === 'given' && column.type === 'text' ? cellsFor(column, rows) : undefined;
    return column.kind === 'given' && cells ? [{ column, cells }] : [];
  });
  const isRenamed = (at: number): boolean =>
    words.some(({ column, cells }) => {
      const there = cellOf(column, at);
      return there !== null && folded(there) !== folded(cells[at - row] ?? '');
    });
  return isAnyRow(
    table,
    rows,
    row,
    (at) => isRenamed(at) && kept.some((column) => cellOf(column, at) !== null),
  );
}

/** How many rows of a list stay below a shorter one that is put over it from its first row on; none where no item is named. */
export function rowsBelow(table: Table, rows: NewRows, row: number): number {
  const names = table.columns.some(
    (column) => column.kind === 'given' && column.type === 'text' && cellsFor(column, rows),
  );
  return row === 0 && names ? Math.max(0, (table.length ?? 0) - rows.length) : 0;
}

/** How a column is called for people. */
export function headingOf({ name, label = '' }: GivenColumn): string {
  return label === '' ? name : label;
}

function cellsFor({ name }: Table['columns'][number], { cells }: NewRows): readonly Cell[] | undefined {
  return Object.hasOwn(cells, name) ? cells[name] : undefined;
}

/** A name as it is compared: capitals and blanks make no other item. */
function folded(cell: Cell): string {
  return `${cell}`.trim().toLowerCase().replace(/\s+/g, ' ');
}

/** Whether it is so of any row of the table that such rows go over. */
function isAnyRow(table: Table, { length }: NewRows, row: number, isSo: (at: number) => boolean): boolean {
  const end = Math.min(row + length, table.length ?? 0);
  for (let at = row; at < end; at += 1) if (isSo(at)) return true;
  return false;
}
