import { isBareNumber, unitInPrint } from '../units/index.ts';
import { cellOf } from './cells.ts';
import { rowIdsOf, rowWithId } from './row-ids.ts';
import type { CalcColumn, Cell, Column } from './schema/columns.ts';
import type { Table } from './schema/parts.ts';
import type { Statement } from './schema/rows.ts';

/** A value that is stated in a row, from 0, of a table. */
export interface StatedValue {
  readonly column: CalcColumn;
  readonly row: number;
  readonly statement: Statement;
}

/** The values that are stated in the rows of a table. */
export function statedInRows(table: Table): readonly StatedValue[] {
  const ids = rowIdsOf(table);
  return table.columns.flatMap((column) =>
    column.kind === 'calc'
      ? (column.stated ?? []).flatMap(({ row: id, ...statement }) => {
          const row = rowWithId(ids, id);
          return row === undefined ? [] : [{ column, row, statement }];
        })
      : [],
  );
}

/** A stated value as people tell it from others: `M of deck slab 4700 ST (weighed at gate)`. */
export function statedInWords(table: Table, { column, row, statement }: StatedValue): string {
  const reason = onOneLine(statement.reason);
  return `${entryInWords(table, column, row, statement.entry)} (${reason === '' ? 'reason open' : reason})`;
}

/** What is entered in a row, from 0, as people tell it from other entries: `V_s of deck slab 380 cy`. */
export function entryInWords(table: Table, column: Column, row: number, entry: Cell): string {
  return `${column.name} of ${rowCalled(table, row)} ${cellInWords(column, entry)}`;
}

/** An entry with the unit that it is read in: `380 cy`; a blank one is called so. */
export function cellInWords(column: Column, entry: Cell): string {
  const text = onOneLine(`${entry ?? ''}`);
  const unit = 'unit' in column ? (column.unit ?? '') : '';
  if (text === '') return 'blank';
  return unit === '' || unit === '-' || !isBareNumber(text) ? text : `${text} ${unitInPrint(unit)}`;
}

/** What a row, from 0, is called: by its first cell of words, else by its number. */
export function rowCalled(table: Table, row: number): string {
  for (const column of table.columns) {
    const cell = column.kind === 'given' && column.type === 'text' ? cellOf(column, row) : null;
    const words = onOneLine(`${cell ?? ''}`);
    if (words !== '') return words;
  }
  return `row ${row + 1}`;
}

const onOneLine = (text: string): string => text.trim().replace(/\s+/g, ' ');
