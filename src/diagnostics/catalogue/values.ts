import { entry } from './entry.ts';

/** Problems found while computing: domains, division by zero, missing values. */
export const values = {
  'division-by-zero': entry<{ divisor: string }>({
    title: 'Division by zero',
    explain: 'The divisor is zero for the values entered, so the result has no value.',
    words: ({ divisor }) => ({ message: `${divisor} is zero, and something is divided by it` }),
  }),
};
