import type { ComparisonOperator } from '../../language/index.ts';
import type { Constants } from './constants.ts';

/** Numbers this close, relative to the larger, are equal. */
export const TOLERANCE = 1e-12;

/**
 * A comparison of numbers to the language's tolerance as one plain comparison: a <= b is a - b <= T·max(|a|, |b|),
 * with T in a cell, and the others alike.
 */
export function lowerComparison(
  op: ComparisonOperator,
  left: string,
  right: string,
  constants: Constants,
): string {
  const wide = `(${constants.number(TOLERANCE)}*MAX(ABS(${left}),ABS(${right})))`;
  switch (op) {
    case '=':
      return `(ABS(${left}-${right})<=${wide})`;
    case '<>':
      return `(ABS(${left}-${right})>${wide})`;
    case '<=':
      return `((${left}-${right})<=${wide})`;
    case '>=':
      return `((${right}-${left})<=${wide})`;
    case '<':
      return `((${right}-${left})>${wide})`;
    case '>':
      return `((${left}-${right})>${wide})`;
  }
}
