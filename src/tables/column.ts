/**
 * What a table text needs to know of a column: how headers may call it, whether its cells are numbers, and the unit of
 * plain numbers in it. `type` absent means number; only `given` columns take values.
 */
export interface TableColumn {
  readonly name: string;
  readonly label?: string;
  readonly kind: 'given' | 'calc' | 'series';
  readonly type?: 'number' | 'text' | 'truth' | 'date';
  readonly unit?: string;
  /** The texts that it takes, absent where it takes any. */
  readonly options?: readonly string[];
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

/** Whether a cell is one of the texts that a column takes, in whatever letters. */
export function isOption(cell: string, options: readonly string[] = []): boolean {
  const written = cell.trim().toLowerCase();
  return options.some((option) => option.trim().toLowerCase() === written);
}

/** The letters spreadsheets give a column by its position, counted from 0: A, B … Z, AA. */
export function columnLetters(position: number): string {
  const before = Math.floor(position / 26);
  return `${before > 0 ? columnLetters(before - 1) : ''}${String.fromCharCode(65 + (position % 26))}`;
}
