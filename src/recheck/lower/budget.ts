import { giveUp } from './obstacle.ts';

/**
 * The most cells with formulas a grid may have. Measured with HyperFormula 3.5: a cell takes 40 to 80 µs of a core, by
 * what else the machine does, and 3.0 to 3.6 kB, so that this many take 8 to 16 s and 0.7 GB. More memory a tab of a
 * browser is not sure to get, and after more time the report would be of a book that has moved on.
 */
const MOST_CELLS = 200_000;
/**
 * The most helper cells one formula may take: a quarter, so that one that compares every row with every row (220 with
 * 220) leaves room for others. A search takes four a row, and so goes to some 12,000 rows.
 */
const MOST_HELPERS = MOST_CELLS / 4;

/** Counts the cells with formulas of a grid. */
export interface Budget {
  /** Takes cells that formulas have in common; they stay taken. */
  readonly share: (count: number) => void;
  /** Takes cells for a formula, or gives it up; what a formula given up had taken is free again. */
  readonly spend: (count: number) => void;
  /** Begins a formula (or an entered column) that has `values` values of its own. */
  readonly begin: (values: number) => void;
  /** Frees what the formula begun last has taken. */
  readonly undo: () => void;
}

const tooMany = `too large: the book would take more than ${MOST_CELLS} cells`;

export function createBudget(): Budget {
  let total = 0;
  let own = 0;
  let values = 0;
  const spend = (count: number): void => {
    total += count;
    own += count;
    if (own - values > MOST_HELPERS)
      giveUp(`too large: it would take more than ${MOST_HELPERS} helper cells`);
    if (total > MOST_CELLS) giveUp(tooMany);
  };
  return {
    spend,
    share: (count) => {
      if (total + count > MOST_CELLS) giveUp(tooMany);
      total += count;
    },
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
