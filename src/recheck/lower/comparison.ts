import type { ComparisonOperator } from '../../language/index.ts';
import { EQUALITY } from '../../units/index.ts';
import type { Constants } from './constants.ts';

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
  const wide = `(${constants.number(EQUALITY)}*MAX(ABS(${left}),ABS(${right})))`;
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
