/**
 * What a table text needs to know of a column: how headers may call it, and whether its cells are numbers. `type`
 * absent means number; only `given` columns take values.
 */
export interface TableColumn {
  readonly name: string;
  readonly label?: string;
  readonly kind: 'given' | 'calc' | 'series';
  readonly type?: 'number' | 'text' | 'truth' | 'date';
}

/** One cell: a number in the column's unit, an entry as typed, or `null` where it is blank. */
export type TableCell = number | string | null;

/** A column as a person finds it on the page: its symbol, and its heading if that is another. */
export function columnWords({ name, label = '' }: Pick<TableColumn, 'name' | 'label'>): string {
  const heading = label.trim();
  return heading === '' || heading === name ? name : `${name} “${heading}”`;
}

/** Whether the cells of a column are numbers. */
export function isNumeric(column: TableColumn): boolean {
  return (column.type ?? 'number') === 'number';
}
