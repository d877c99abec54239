import type { Copied } from '../../document/index.ts';

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
