import {
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
import { followItems, nameColumn } from './follow-items.ts';
import { cellsFor, folded, type NewRows } from './new-rows.ts';

/** Where rows go in a table: in place of all that are there, behind them, or over those from a row on (from 0). */
export type Where =
  | { readonly kind: 'replace' }
  | { readonly kind: 'behind' }
  | { readonly kind: 'from'; readonly row: number };

/** What becomes of the cells of rows that are gone over, in columns the text has nothing for: `follow` goes with their items. */
export type Others = 'stay' | 'empty' | 'follow';

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
    more: {
      readonly fresh?: number;
      readonly kept?: readonly GivenColumn[];
      readonly followed?: readonly GivenColumn[];
      readonly below?: number;
    } = {},
  ) => {
    const { kept = [], followed = [] } = more;
    const named = { kept: kept.map(headingOf), followed: followed.map(headingOf) };
    return insertionLabel(verb, rows.length, { ...more, ...named, account });
  };
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
  const told = { fresh: grown, below: rowsBelow(table, rows, row) };
  if (others === 'follow') {
    const from = followItems(table, rows, row)?.from ?? [];
    const following = filledFrom(table, rows, row);
    const followed = following.map((column) => {
      const cells = from.map((place) => (place === undefined ? null : cellOf(column, place)));
      return setCells({ ...at, column: column.id }, row, cells);
    });
    return joinEdits(label({ ...told, followed: following }), [...growth, ...filled, ...followed]);
  }
  const blank = Array.from({ length: rows.length - grown }, () => null);
  const emptied =
    others === 'empty' ? kept.map((column) => setCells({ ...at, column: column.id }, row, blank)) : [];
  return joinEdits(label({ ...told, kept: others === 'empty' ? [] : kept }), [
    ...growth,
    ...filled,
    ...emptied,
  ]);
}

/** The columns that rows from a row on have nothing for, and that hold something there. */
export function othersFilled(table: Table, rows: NewRows, row: number): readonly GivenColumn[] {
  return columnsWithout(table, rows).filter((column) =>
    isAnyRow(table, rows, row, (at) => cellOf(column, at) !== null),
  );
}

/** The columns that rows have nothing for, and that hold something anywhere from a row on. */
function filledFrom(table: Table, rows: NewRows, row: number): readonly GivenColumn[] {
  const toEnd = { ...rows, length: (table.length ?? 0) - row };
  return columnsWithout(table, rows).filter((column) =>
    isAnyRow(table, toEnd, row, (at) => cellOf(column, at) !== null),
  );
}

function columnsWithout(table: Table, rows: NewRows): readonly GivenColumn[] {
  return table.columns
    .filter((column) => column.kind === 'given')
    .filter((column) => !cellsFor(column, rows));
}

/** Whether what those columns hold may be of something else from now on. */
export function isOfOthers(
  table: Table,
  rows: NewRows,
  row: number,
  kept: readonly GivenColumn[] = othersFilled(table, rows, row),
): boolean {
  return renamedRows(table, rows, row, kept).next().done !== true;
}

/** The rows, from 0, in which one of those columns holds something and that are called by other words from now on. */
export function* renamedRows(
  table: Table,
  rows: NewRows,
  row: number,
  kept: readonly GivenColumn[],
): Generator<number, undefined> {
  const words = table.columns.flatMap((column) => {
    const cells = column.kind === 'given' && column.type === 'text' ? cellsFor(column, rows) : undefined;
    return column.kind === 'given' && cells ? [{ column, cells }] : [];
  });
  const isRenamed = (at: number): boolean =>
    words.some(({ column, cells }) => {
      const there = cellOf(column, at);
      return there !== null && folded(there) !== folded(cells[at - row] ?? '');
    });
  const end = Math.min(row + rows.length, table.length ?? 0);
  for (let at = row; at < end; at += 1)
    if (isRenamed(at) && kept.some((column) => cellOf(column, at) !== null)) yield at;
  return undefined;
}

/** How many rows of a list stay below a shorter one that is put over it from its first row on; none where no item is named. */
export function rowsBelow(table: Table, rows: NewRows, row: number): number {
  return row === 0 && nameColumn(table, rows) ? Math.max(0, (table.length ?? 0) - rows.length) : 0;
}

/** How a column is called for people. */
export function headingOf({ name, label = '' }: GivenColumn): string {
  return label === '' ? name : label;
}

/** Whether it is so of any row of the table that such rows go over. */
function isAnyRow(table: Table, { length }: NewRows, row: number, isSo: (at: number) => boolean): boolean {
  const end = Math.min(row + length, table.length ?? 0);
  for (let at = row; at < end; at += 1) if (isSo(at)) return true;
  return false;
}
