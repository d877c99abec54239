import type { GridPlace } from '../grid.ts';

/**
 * Why two engines in order may differ: a quotient to be rounded that lies on the edge where its last digit settles
 * which way, or a chance so far out in the tail that the quantile of the second engine is not exact.
 */
export type Hazard = 'tie' | 'tail';

/** A cell to look at before a value is compared: a line's, a row's of a column, or (`row` absent) all of its rows. */
export interface WatchedCell {
  readonly id: string;
  readonly row?: number;
  readonly hazard: Hazard;
  readonly place: GridPlace;
}
