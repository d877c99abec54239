import { giveUp } from './obstacle.ts';

/** The most helper cells one formula may take: some four seconds and 150 MB. */
const MOST_HELPERS = 50_000;
/** The most cells with formulas a grid may have: some five seconds and 400 MB. */
const MOST_CELLS = 200_000;

/** Counts the cells with formulas of a grid. */
export interface Budget {
  /** Takes cells for a formula, or gives it up; what a formula given up had taken is free again. */
  readonly spend: (count: number) => void;
  /** Begins a formula (or an entered column) that has `values` values of its own. */
  readonly begin: (values: number) => void;
  /** Frees what the formula begun last has taken. */
  readonly undo: () => void;
}

export function createBudget(): Budget {
  let total = 0;
  let own = 0;
  let values = 0;
  const spend = (count: number): void => {
    total += count;
    own += count;
    if (own - values > MOST_HELPERS)
      giveUp(`too large: it would take more than ${MOST_HELPERS} helper cells`);
    if (total > MOST_CELLS) giveUp(`too large: the book would take more than ${MOST_CELLS} cells`);
  };
  return {
    spend,
    begin: (count) => {
      own = 0;
      values = count;
      spend(count);
    },
    undo: () => {
      total -= own;
      own = 0;
    },
  };
}
