import type { ComparisonOperator } from '../../language/index.ts';
import { EQUALITY, type Rational } from '../../units/index.ts';

/** The number itself, NaN for an infinite one. Branchless: ∞ - ∞ is NaN. Turns -0 into 0. */
export function finite(x: number): number {
  return x + (x - x);
}

/** -1, 0 or 1 as a is below, equal to (within a relative 1e-12) or above b; NaN if either is. */
export function order(a: number, b: number): number {
  const difference = a - b;
  if (Math.abs(difference) <= EQUALITY * Math.max(Math.abs(a), Math.abs(b))) return 0;
  return difference < 0 ? -1 : difference > 0 ? 1 : Number.NaN;
}

/** What a comparison gives when the left side is below, equal to and above the right. */
export interface Verdicts {
  readonly below: number;
  readonly equal: number;
  readonly above: number;
}

export const verdictsOf: Readonly<Record<ComparisonOperator, Verdicts>> = {
  '=': { below: 0, equal: 1, above: 0 },
  '<>': { below: 1, equal: 0, above: 1 },
  '<': { below: 1, equal: 0, above: 0 },
  '<=': { below: 1, equal: 1, above: 0 },
  '>': { below: 0, equal: 0, above: 1 },
  '>=': { below: 0, equal: 1, above: 1 },
};

/** The verdict for an order; NaN for NaN. */
export function verdict(of: Verdicts, order: number): number {
  return order === 0 ? of.equal : order < 0 ? of.below : order > 0 ? of.above : Number.NaN;
}

/** A number to the power of another; a negative number has only whole powers. */
export function power(base: number, exponent: number): number {
  // Math.pow takes NaN to the power 0 as 1; without a base there is no power.
  return Number.isNaN(base) || Number.isNaN(exponent) ? Number.NaN : finite(base ** exponent);
}

/** The power with a constant fraction as exponent: of a square or cube root, the root itself is taken. */
export function powerOf({ n, d }: Rational): (base: number) => number {
  if (d === 1 && n === 2) return (base) => finite(base * base);
  if (d === 2) return (base) => power(Math.sqrt(base), n);
  if (d === 3) return (base) => (base < 0 ? Number.NaN : power(Math.cbrt(base), n));
  const exponent = n / d;
  return (base) => power(base, exponent);
}
