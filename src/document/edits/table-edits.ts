import type { JsonValue } from '../../diagnostics/index.ts';
import type { ColumnPlace, TablePlace } from '../find.ts';
import type { CalcColumn, Cell, Column, GivenColumn, SeriesColumn } from '../schema/columns.ts';
import type { Table } from '../schema/parts.ts';
import type { Statement } from '../schema/rows.ts';
import { setPatch } from './book-edits.ts';
import type { Edit } from './patch.ts';

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
  { stated = [] }: CalcColumn,
  row: number,
  statement: Statement | undefined,
): Edit {
  const others = stated.filter((one) => one.row !== row);
  const next = statement ? [...others, { row, ...statement }].toSorted((a, b) => a.row - b.row) : others;
  const label = statement ? 'state a cell' : 'take a stated cell back';
  return { label, patches: [setPatch([...columnPath(place), 'stated'], next.length > 0 ? next : undefined)] };
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
