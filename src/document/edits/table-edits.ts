import type { JsonValue } from '../../diagnostics/index.ts';
import { cellsBetween } from '../cells.ts';
import type { ColumnPlace, TablePlace } from '../find.ts';
import { cut, idOfRow, rowIdsOf } from '../row-ids.ts';
import type { CalcColumn, Cell, Column, GivenColumn, SeriesColumn } from '../schema/columns.ts';
import type { Table } from '../schema/parts.ts';
import type { Statement } from '../schema/rows.ts';
import { setPatch } from './book-edits.ts';
import type { Edit, Patch } from './patch.ts';

type FieldsOf<Item> = Item extends unknown ? Exclude<keyof Item, 'id' | 'kind'> : never;

/** A field that some kind of column has. */
export type ColumnField = FieldsOf<GivenColumn | CalcColumn | SeriesColumn>;

/** Rows for a table, column by column: `cells` by the column's name, each with `length` cells. */
export interface TableRows {
  readonly length: number;
  readonly cells: Readonly<Record<string, readonly Cell[]>>;
}

/** Overwrites cells of a given column from row `from` (counted from 0) on. */
export function setCells(place: ColumnPlace, from: number, values: readonly Cell[]): Edit {
  const label = values.length === 1 ? 'change a cell' : `change ${values.length} cells`;
  return { label, patches: [{ kind: 'cells', at: columnPath(place), from, values }] };
}

/** Puts `rows` in place of all rows of `table`, which stands at `place`. Given columns not among them become blank. */
export function replaceTableRows(place: TablePlace, table: Table, rows: TableRows): Edit {
  return spliceEdit('replace the rows of a table', place, table, 0, table.length ?? 0, rows);
}

/** Puts rows into `table` in front of row `from` (counted from 0). Given columns not among them are blank there. */
export function insertTableRows(place: TablePlace, table: Table, from: number, rows: TableRows): Edit {
  return spliceEdit('insert rows', place, table, from, 0, rows);
}

/** Takes `count` rows out of a table, from row `from` (counted from 0) on. */
export function removeTableRows(place: TablePlace, from: number, count: number): Edit {
  return {
    label: 'remove rows',
    patches: [{ kind: 'splice', at: tablePath(place), from, remove: count, insert: 0, cells: {} }],
  };
}

/**
 * Moves `count` rows of `table`, which stands at `place`, from row `from` (counted from 0) so that the first of them
 * stands at row `to`. Each takes its identity along, and with it what is said of it.
 */
export function moveTableRows(
  place: TablePlace,
  table: Table,
  from: number,
  count: number,
  to: number,
): Edit {
  const [start, end] = [Math.min(from, to), Math.max(from, to) + count];
  // What stands between the old place and the new one makes room.
  const split = from < to ? count : from - to;
  const cells = Object.fromEntries(
    table.columns.flatMap((column) => {
      if (column.kind !== 'given') return [];
      const all = cellsBetween(column.chunks, start, end);
      return [[column.id, [...all.slice(split), ...all.slice(0, split)]]];
    }),
  );
  const { runs } = rowIdsOf(table);
  const ids = [...cut(runs, start + split, end), ...cut(runs, start, start + split)];
  const span = end - start;
  return {
    label: count === 1 ? 'move a row' : `move ${count} rows`,
    patches: [{ kind: 'splice', at: tablePath(place), from: start, remove: span, insert: span, cells, ids }],
  };
}

/**
 * Puts a second row like row `from` (counted from 0) of `table` behind it. What is stated in its cells is stated in those
 * of the new one, for which its reasons are to be confirmed.
 */
export function duplicateTableRow(place: TablePlace, table: Table, from: number): Edit {
  const cells = Object.fromEntries(
    table.columns.flatMap((column) =>
      column.kind === 'given' ? [[column.id, cellsBetween(column.chunks, from, from + 1)]] : [],
    ),
  );
  const ids = rowIdsOf(table);
  const own = idOfRow(ids, from);
  const stated = table.columns.flatMap((column) => {
    const known = column.kind === 'calc' ? column.stated?.find(({ row }) => row === own) : undefined;
    if (column.kind !== 'calc' || !known) return [];
    const { entry, reason, reasonFor = `row ${from + 1}` } = known;
    const statement = reason.trim() === '' ? { entry, reason } : { entry, reason, reasonFor };
    return stateCell({ ...place, column: column.id }, column, ids.next, statement).patches;
  });
  const splice: Patch = { kind: 'splice', at: tablePath(place), from: from + 1, remove: 0, insert: 1, cells };
  return { label: 'duplicate a row', patches: [splice, ...stated] };
}

/** Puts a column into a table in front of position `index`; a given one brings a cell for each row. */
export function insertColumn(place: TablePlace, index: number, column: Column): Edit {
  const at = [...tablePath(place), 'columns'];
  return { label: 'insert a column', patches: [{ kind: 'insert', at, index, value: column }] };
}

/** Takes a column out of its table. */
export function removeColumn(place: ColumnPlace): Edit {
  return { label: 'remove a column', patches: [{ kind: 'remove', at: columnPath(place) }] };
}

/** Moves a column to position `to` among the other columns of its table. */
export function moveColumn(place: ColumnPlace, to: number): Edit {
  return { label: 'move a column', patches: [{ kind: 'move', at: columnPath(place), to }] };
}

/** States a value in place of the computed cell of the row with an identity; `undefined` gives the computed one back. */
export function stateCell(
  place: ColumnPlace,
  column: CalcColumn,
  row: number,
  statement: Statement | undefined,
): Edit {
  const label = statement ? 'state a cell' : 'take a stated cell back';
  return { ...stateCells(place, column, new Map([[row, statement]])), label };
}

/** States values in place of computed cells, by the identities of their rows; `undefined` gives a computed one back. */
export function stateCells(
  place: ColumnPlace,
  { stated = [] }: CalcColumn,
  changes: ReadonlyMap<number, Statement | undefined>,
): Edit {
  const fresh = [...changes].flatMap(([row, statement]) => (statement ? [{ row, ...statement }] : []));
  const next = [...stated.filter(({ row }) => !changes.has(row)), ...fresh].toSorted((a, b) => a.row - b.row);
  return {
    label: `state ${fresh.length} cells`,
    patches: [setPatch([...columnPath(place), 'stated'], next.length > 0 ? next : undefined)],
  };
}

/** Sets a field of a column; `undefined` takes an optional one away. */
export function setColumnField(place: ColumnPlace, field: ColumnField, value: JsonValue | undefined): Edit {
  return { label: `change a column’s ${field}`, patches: [setPatch([...columnPath(place), field], value)] };
}

function spliceEdit(
  label: string,
  place: TablePlace,
  table: Table,
  from: number,
  remove: number,
  rows: TableRows,
): Edit {
  const ids = new Map(table.columns.map(({ name, id }) => [name, id]));
  // A name the table does not have is left as it is, for the edit to be refused by it.
  const cells = Object.fromEntries(
    Object.entries(rows.cells).map(([name, values]) => [ids.get(name) ?? name, values]),
  );
  return {
    label,
    patches: [{ kind: 'splice', at: tablePath(place), from, remove, insert: rows.length, cells }],
  };
}

function tablePath({ sheet, table }: TablePlace): readonly string[] {
  return ['sheets', sheet, 'parts', table];
}

function columnPath({ sheet, table, column }: ColumnPlace): readonly string[] {
  return ['sheets', sheet, 'parts', table, 'columns', column];
}
