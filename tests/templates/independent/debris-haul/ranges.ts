import type { Drawn } from '../program.ts';
import { part, rowsOf, sum, text } from './arithmetic.ts';

/** Three-point ranges of the parts of a direct cost, each a triangular distribution. */
export interface Ranges {
  readonly likely: readonly number[];
  readonly least: readonly number[];
  readonly greatest: readonly number[];
  readonly means: readonly number[];
  readonly quantiles: readonly number[];
  /** Mean and standard deviation of a sum of independent parts, and the amount not passed with the chance wanted. */
  readonly mean: number;
  readonly deviation: number;
  readonly enough: number;
}

/** Mean (a + m + b)/3, variance (a² + m² + b² − am − ab − mb)/18 and quantile of triangular distributions, and of their sum. */
export function workRanges(drawn: Drawn, amounts: Readonly<Record<string, number>>): Ranges {
  const chance = part(drawn.lines['cost.p_k']);
  const rows = rowsOf(drawn, 'cost.ranges').map((row) => {
    const m = amounts[text(row.part)] ?? Number.NaN;
    const ends = [m * part(row.lo, 1), m * part(row.hi, 1)];
    const [a, b] = [Math.min(...ends), Math.max(...ends)];
    const variance = a === b ? 0 * m : (a ** 2 + m ** 2 + b ** 2 - a * m - a * b - m * b) / 18;
    return { m, a, b, mean: (a + m + b) / 3, deviation: Math.sqrt(variance), q: quantile(chance, a, m, b) };
  });
  const mean = sum(rows.map((row) => row.mean));
  const deviation = Math.sqrt(sum(rows.map((row) => row.deviation ** 2)));
  const together = drawn.lines['cost.k_by'] === 'ranges together';
  return {
    likely: rows.map((row) => row.m),
    least: rows.map((row) => row.a),
    greatest: rows.map((row) => row.b),
    means: rows.map((row) => row.mean),
    quantiles: rows.map((row) => row.q),
    mean,
    deviation,
    enough: together ? sum(rows.map((row) => row.q)) : mean + standardNormal(chance) * deviation,
  };
}

function quantile(chance: number, a: number, m: number, b: number): number {
  if (a === b) return m === a ? m : Number.NaN;
  return chance < (m - a) / (b - a)
    ? a + Math.sqrt(chance * (b - a) * (m - a))
    : b - Math.sqrt((1 - chance) * (b - a) * (b - m));
}

/** The value a standard normal variable stays below with a chance, by halving an interval of its distribution function. */
function standardNormal(chance: number): number {
  if (!(chance > 0 && chance < 1)) return Number.NaN;
  let [low, high] = [-9, 9];
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    if (below(middle) < chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Φ(z) = 1/2 + φ(z)·(z + z³/3 + z⁵/(3·5) + …). */
function below(z: number): number {
  let [term, total] = [z, 0];
  for (let odd = 3; Math.abs(term) > 1e-18 * Math.abs(total) && odd < 800; odd += 2) {
    total += term;
    term *= z ** 2 / odd;
  }
  return 0.5 + (total * Math.exp(-(z ** 2) / 2)) / Math.sqrt(2 * Math.PI);
}
