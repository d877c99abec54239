import type { Copied, Edit } from '../../../document/index.ts';

/**
 * A block of cells as they are typed, row by row; where known the units of numbers that stand there without one, the
 * columns that were calculated, and the reasons of values that were stated.
 */
export type Block = Pick<Copied, 'cells' | 'units' | 'calculated' | 'stated'>;

/** How many rows and columns of cells are selected. */
export interface Extent {
  readonly rows: number;
  readonly columns: number;
}

/** A text that was pasted into a table, and the extent of the cells that were selected. */
export interface PastedOver {
  readonly text: string;
  readonly over: Extent;
  /** Makes the table that the text is for, where there is none yet: it comes with the rows, or not at all. */
  readonly newTable?: Edit;
}
