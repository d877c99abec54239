/** The sum with the low-order parts kept (Neumaier, "Rundungsfehleranalyse einiger Verfahren", 1974, from memory). */
export function compensatedSum(values: Float64Array): number {
  let sum = 0;
  let lost = 0;
  for (let at = 0; at < values.length; at += 1) {
    const value = values[at] as number;
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

/** The compensated sums of the first k values, for every k from 0 to all. */
export function sumsOfBeginnings(values: Float64Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  let sum = 0;
  let lost = 0;
  for (let at = 0; at < values.length; at += 1) {
    const value = values[at] as number;
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
    sums[at + 1] = sum + lost;
  }
  return sums;
}

/** The sum of squared differences from the mean, in two passes. */
export function squaredDeviations(values: Float64Array): number {
  const mean = compensatedSum(values) / values.length;
  return compensatedSum(values.map((value) => (value - mean) ** 2));
}

export function leastOf(values: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < values.length; at += 1)
    if ((values[at] as number) < least) least = values[at] as number;
  return least;
}

export function greatestOf(values: Float64Array): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < values.length; at += 1)
    if ((values[at] as number) > most) most = values[at] as number;
  return most;
}

/** The value at a fraction of the way through the sorted sample, between two values linearly (the inclusive rule). */
export function percentileOf(values: Float64Array, fraction: number): number {
  return percentileOfSorted(values.slice().sort(), fraction);
}

/** The same of a sample that is sorted already. */
export function percentileOfSorted(sorted: Float64Array, fraction: number): number {
  const place = fraction * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below];
  const high = sorted[Math.min(below + 1, sorted.length - 1)];
  if (low === undefined || high === undefined) return Number.NaN;
  return low + (place - below) * (high - low);
}
