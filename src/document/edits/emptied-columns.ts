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

/** What columns come to where they are blank, `w 0 %`, as far as they have something for that. */
export function blankMeanings(columns: readonly GivenColumn[]): readonly string[] {
  return columns.flatMap(({ name, default: meant, unit = '' }) => {
    if (meant === undefined) return [];
    const beside = typeof meant === 'number' && unit !== '' && unit !== '-' ? ` ${unit}` : '';
    return [`${name} ${meant}${beside}`];
  });
}
