import {
  type CalcColumn,
  cellOf,
  type Edit,
  type GivenColumn,
  idOfRow,
  idOfRowOrNext,
  rowIdsOf,
  type Statement,
  setCells,
  stateCells,
  type Table,
} from '../../../document/index.ts';
import { cellsFor, type NewRows } from './new-rows.ts';
import { givenFor, isRenamed } from './what-becomes.ts';

/** A column that may hold something a person entered: a given one, or a calculated one in whose cells values are stated. */
export type OtherColumn = GivenColumn | CalcColumn;

interface TableAt {
  readonly sheet: string;
  readonly table: string;
}

/** The columns that rows from a row on have nothing for, and that hold something there. */
export function othersFilled(table: Table, rows: NewRows, row: number): readonly OtherColumn[] {
  return filledAmong(table, rows, row, Math.min(row + rows.length, table.length ?? 0));
}

/** The columns that rows have nothing for, and that hold something anywhere from a row on. */
export function filledFrom(table: Table, rows: NewRows, row: number): readonly OtherColumn[] {
  return filledAmong(table, rows, row, table.length ?? 0);
}

function filledAmong(table: Table, rows: NewRows, from: number, to: number): readonly OtherColumn[] {
  return table.columns.filter((column): column is OtherColumn => {
    if ((column.kind !== 'given' && column.kind !== 'calc') || cellsFor(column, rows)) return false;
    const holds = holding(table, column);
    for (let at = from; at < to; at += 1) if (holds(at)) return true;
    return false;
  });
}

/** Whether a row, from 0, has something in a column that a person entered. */
function holding(table: Table, column: OtherColumn): (row: number) => boolean {
  if (column.kind === 'given') return (row) => cellOf(column, row) !== null;
  const statementOf = statementsIn(table, column);
  return (row) => statementOf(row) !== undefined;
}

function statementsIn(table: Table, { stated = [] }: CalcColumn): (row: number) => Statement | undefined {
  if (stated.length === 0) return () => undefined;
  const ids = rowIdsOf(table);
  const byId = new Map(stated.map(({ row, ...statement }) => [row, statement]));
  return (row) => byId.get(idOfRow(ids, row) ?? 0);
}

/**
 * Puts into the rows of a column from `row` on what stood in those of `from`; nothing where that says none. Reasons that were
 * given for other figures are to be confirmed.
 */
export function heldFrom(
  at: TableAt,
  table: Table,
  rows: NewRows,
  column: OtherColumn,
  row: number,
  from: readonly (number | undefined)[],
  idOf = (down: number): number => idOfRowOrNext(table, row + down),
): Edit {
  const place = { ...at, column: column.id };
  if (column.kind === 'given')
    return setCells(
      place,
      row,
      from.map((one) => (one === undefined ? null : cellOf(column, one))),
    );
  const statementOf = statementsIn(table, column);
  const changes = from.map((one, down) => {
    const statement = one === undefined ? undefined : statementOf(one);
    const given = one === undefined ? undefined : givenFor(table, rows, one, down);
    return [idOf(down), statement && toConfirm(statement, given)] as const;
  });
  return stateCells(place, column, new Map(changes));
}

/** Values stated in rows that are of another item or other figures from now on stay, and their reasons are to be confirmed. */
export function reasonsToConfirm(at: TableAt, table: Table, rows: NewRows, row: number): readonly Edit[] {
  return table.columns.flatMap((column) => {
    if (column.kind !== 'calc' || cellsFor(column, rows)) return [];
    const statementOf = statementsIn(table, column);
    const changes = placesIn(table, rows, row).flatMap((where) => {
      const statement = statementOf(where);
      const next = statement && toConfirm(statement, givenFor(table, rows, where, where - row));
      return next && next !== statement ? [[idOfRowOrNext(table, where), next] as const] : [];
    });
    return changes.length > 0 ? [stateCells({ ...at, column: column.id }, column, new Map(changes))] : [];
  });
}

/** A statement in a row that is something else from now on; the same where it is not, or where nobody gave a reason. */
function toConfirm(statement: Statement, given: string | undefined): Statement {
  if (given === undefined || statement.reason.trim() === '') return statement;
  return { ...statement, reasonFor: statement.reasonFor ?? given };
}

/** The rows, from 0, that new rows go over. */
function placesIn(table: Table, rows: NewRows, row: number): readonly number[] {
  const end = Math.min(row + rows.length, table.length ?? 0);
  return Array.from({ length: Math.max(0, end - row) }, (_, down) => row + down);
}

/** Whether what those columns hold may be of something else from now on. */
export function isOfOthers(
  table: Table,
  rows: NewRows,
  row: number,
  kept: readonly OtherColumn[] = othersFilled(table, rows, row),
): boolean {
  return renamedRows(table, rows, row, kept).next().done !== true;
}

/** The rows, from 0, in which one of those columns holds something and that are called by other words from now on. */
export function* renamedRows(
  table: Table,
  rows: NewRows,
  row: number,
  kept: readonly OtherColumn[],
): Generator<number, undefined> {
  const holds = kept.map((column) => holding(table, column));
  for (const at of placesIn(table, rows, row))
    if (isRenamed(table, rows, at, at - row) && holds.some((one) => one(at))) yield at;
  return undefined;
}

/** How a column is called for people. */
export function headingOf({ name, label = '' }: OtherColumn): string {
  return label === '' ? name : label;
}
