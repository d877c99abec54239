import type { Entries } from './entries.ts';
import type { Curve } from './published.ts';

/** A curve of a table that was drawn, or undefined where the published table stays. */
export function tabulated({ rows }: Entries, table: string, key: string, column: string): Curve | undefined {
  return rows(table)?.map((row) => [row.number(key), row.number(column)] as const);
}
