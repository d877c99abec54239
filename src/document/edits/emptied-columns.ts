import type { GivenColumn } from '../schema/columns.ts';
import type { Table } from '../schema/parts.ts';
import type { TableRows } from './table-edits.ts';

/** The columns of a table that have something in them now, and would be blank if `rows` replaced its rows. */
export function emptiedColumns(table: Table, { cells }: TableRows): readonly GivenColumn[] {
  return table.columns
    .filter((column) => column.kind === 'given')
    .filter(
      ({ name, chunks }) =>
        !Object.hasOwn(cells, name) && chunks.some((chunk) => chunk.some((cell) => cell !== null)),
    );
}
