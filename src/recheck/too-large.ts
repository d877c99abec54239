/**
 * The most values a book may have to be laid out as a grid. Measured: one takes 8 µs to lay out and compare, and 0.3 kB,
 * so that this many take 4 s and 0.15 GB beside what formulas take, and the page as much again for the book itself.
 */
const MOST_VALUES = 500_000;

/** What is known of a book before any of it is laid out: its lines, and its tables with their rows and columns. */
export interface BookSize {
  readonly lines: number;
  readonly tables: readonly { readonly rows: number; readonly columns: number }[];
}

/** Why a book is not rechecked at all; undefined for one that is. */
export function tooLarge({ lines, tables }: BookSize): string | undefined {
  const values = tables.reduce((sum, { rows, columns }) => sum + rows * columns, lines);
  return values <= MOST_VALUES
    ? undefined
    : `too large: ${values} values, and at most ${MOST_VALUES} are computed a second time`;
}
