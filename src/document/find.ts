import type { Book, Sheet } from './schema/book.ts';
import type { Column } from './schema/columns.ts';
import type { Table } from './schema/parts.ts';
import type { Row } from './schema/rows.ts';

/** Where a part stands: its sheet's key and its id. */
export interface PartPlace {
  readonly sheet: string;
  readonly part: string;
}

/** Where a row stands: its sheet's key, the id of its block, its id. */
export interface RowPlace extends PartPlace {
  readonly row: string;
}

/** Where a table stands: its sheet's key and its id as a part. */
export interface TablePlace {
  readonly sheet: string;
  readonly table: string;
}

/** Where a column stands: its table's place and its id. */
export interface ColumnPlace extends TablePlace {
  readonly column: string;
}

/** A row with its place. */
export interface FoundRow {
  readonly place: RowPlace;
  readonly row: Row;
}

/** A table with its place. */
export interface FoundTable {
  readonly place: TablePlace;
  readonly table: Table;
}

/** The sheet with the key, if there is one. */
export function findSheet(book: Book, key: string): Sheet | undefined {
  return book.sheets.find((sheet) => sheet.key === key);
}

/** The row called `name` on a sheet, if there is one. */
export function findRow(sheet: Sheet, name: string): FoundRow | undefined {
  for (const part of sheet.parts) {
    if (part.kind !== 'rows') continue;
    const row = part.rows.find((one) => one.name === name);
    if (row !== undefined) return { place: { sheet: sheet.key, part: part.id, row: row.id }, row };
  }
  return undefined;
}

/** The table called `name` on a sheet, if there is one. */
export function findTable(sheet: Sheet, name: string): FoundTable | undefined {
  for (const part of sheet.parts) {
    if (part.kind === 'table' && part.name === name) {
      return { place: { sheet: sheet.key, table: part.id }, table: part };
    }
  }
  return undefined;
}

/** The column called `name` of a table, if there is one. */
export function findColumn(table: Table, name: string): Column | undefined {
  return table.columns.find((column) => column.name === name);
}
