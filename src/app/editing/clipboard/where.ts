/** Where rows go in a table: in place of all that are there, behind them, or over those from a row on (from 0). */
export type Where =
  | { readonly kind: 'replace' }
  | { readonly kind: 'behind' }
  | { readonly kind: 'from'; readonly row: number };

/** The row, from 0, whose place the first of them takes. */
export function firstRowOf(where: Where): number {
  return where.kind === 'from' ? where.row : 0;
}
