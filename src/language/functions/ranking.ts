import type { Lower, LoweredColumn, LoweringTools } from './entry.ts';

/**
 * The order of a sample in plain formulas: the value at a place (from 1, in a cell) of the sorted sample is the
 * greatest of those that fewer values than the place are less than.
 */
function lowerSorted(
  columns: readonly LoweredColumn[],
  tools: LoweringTools,
): { readonly count: number; readonly at: (place: string) => string } {
  const cells = columns.flatMap((part) => Array.from({ length: part.count }, (_, at) => part.cell(at)));
  const count = cells.length;
  const [one, zero] = [tools.constant(1), tools.constant(0)];
  const less = tools.column(count, (at) => {
    const isLess = tools.column(count, (other) => `IF(${cells[other]}<${cells[at]},${one},${zero})`);
    return `SUM(${isLess.range})`;
  });
  return {
    count,
    at: (place) => {
      const upTo = tools.column(count, (at) => `IF(${less.cell(at)}<${place},${cells[at]},"")`);
      return `MAX(${upTo.range})`;
    },
  };
}

function isEmpty(columns: readonly LoweredColumn[]): boolean {
  return columns.every((part) => part.count === 0);
}

/** The middle value, or the mean of the two in the middle. */
export const lowerMedian: Lower = (_, columns, __, tools) => {
  if (isEmpty(columns)) return tools.refused;
  const { count, at } = lowerSorted(columns, tools);
  const [low, high] = [Math.floor((count + 1) / 2), Math.ceil((count + 1) / 2)];
  return `(${at(tools.constant(low))}+${at(tools.constant(high))})/${tools.constant(2)}`;
};

/** Between the two values around a fraction of the way through. */
export const lowerPercentile: Lower = ([fraction], columns, _, tools) => {
  if (isEmpty(columns)) return tools.refused;
  const { count, at } = lowerSorted(columns, tools);
  const [one, most] = [tools.constant(1), tools.constant(count)];
  const place = tools.helper(`${fraction}*${tools.constant(count - 1)}`);
  const below = tools.helper(`INT(${place})`);
  const low = tools.helper(at(tools.helper(`${below}+${one}`)));
  const high = at(tools.helper(`MIN(${most},${below}+${tools.constant(2)})`));
  const inside = `${fraction}*(${one}-${fraction})>=${tools.constant(0)}`;
  return `IF(${inside},${low}+(${place}-${below})*(${high}-${low}),${tools.refused})`;
};

/** The value at a whole rank from 1, from the least or from the greatest. */
export const lowerRank =
  (from: 'least' | 'greatest'): Lower =>
  ([rank], columns, _, tools) => {
    if (isEmpty(columns)) return tools.refused;
    const { count, at } = lowerSorted(columns, tools);
    const [one, most] = [tools.constant(1), tools.constant(count)];
    const place = tools.helper(from === 'least' ? `(${rank})` : `${tools.constant(count + 1)}-${rank}`);
    const inside = `MIN(${rank}-${one},${most}-${rank})>=${tools.constant(0)}`;
    return `IF(${rank}=INT(${rank}),IF(${inside},${at(place)},${tools.refused}),${tools.refused})`;
  };
