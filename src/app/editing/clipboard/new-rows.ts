import type { Cell, Table } from '../../../document/index.ts';

/** Rows for a table, as they were read: by the name of a column a cell for each row. */
export interface NewRows {
  readonly length: number;
  readonly cells: Readonly<Record<string, readonly Cell[]>>;
}

/** What the rows have for a column. */
export function cellsFor(
  { name }: Table['columns'][number],
  { cells }: NewRows,
): readonly Cell[] | undefined {
  return Object.hasOwn(cells, name) ? cells[name] : undefined;
}

/** A name as it is compared: capitals and blanks make no other item. */
export function folded(cell: Cell): string {
  return `${cell}`.trim().toLowerCase().replace(/\s+/g, ' ');
}
