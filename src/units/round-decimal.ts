import { roundingMargin } from './rounding-margin.ts';

/** A finite number by its shortest decimal digits: `digits` with the point after the first, times ten to `exponent`. */
function decimalOf(x: number): { readonly digits: string; readonly exponent: number } {
  const [mantissa = '0', exponent = '0'] = Math.abs(x).toExponential().split('e');
  return { digits: mantissa.replace('.', ''), exponent: Number(exponent) };
}

/** So many digits, or more, are asked for where a number is carried elsewhere, not where it is read. */
const ALL_DIGITS = 14;

/** The size of a number in steps of a power of ten, rounded to a whole one, halves up. */
function stepsOf(x: number, decimals: number): bigint {
  const { digits, exponent } = decimalOf(x);
  const kept = exponent + 1 + decimals;
  if (kept >= digits.length) return BigInt(digits) * 10n ** BigInt(kept - digits.length);
  const whole = kept > 0 ? BigInt(digits.slice(0, kept)) : 0n;
  const rest = Number(`0.${'0'.repeat(Math.max(0, -kept))}${digits.slice(Math.max(0, kept))}`);
  // Of as many digits as a number has, the last is told by those behind it alone.
  const margin = kept >= ALL_DIGITS ? 0 : roundingMargin(Number(whole));
  const up = rest >= 0.5 || (rest > margin && rest >= 0.5 - margin);
  return up ? whole + 1n : whole;
}

/**
 * A number with exactly so many decimals. The rule is that of ROUND: by the decimal digits of the number, halves go away
 * from zero, and what misses a half by the rounding of a computation alone counts as the half: 18.495 and 3 · 6.165 with
 * two decimals are 18.50.
 */
export function writeDecimals(x: number, decimals: number): string {
  const steps = stepsOf(x, decimals)
    .toString()
    .padStart(decimals + 1, '0');
  const sign = x < 0 && /[1-9]/.test(steps) ? '-' : '';
  const point = steps.length - decimals;
  return sign + (decimals === 0 ? steps : `${steps.slice(0, point)}.${steps.slice(point)}`);
}

/** A number with so many significant digits, by the same rule, as `toExponential` writes it: 1.850e+1. */
export function writeSignificant(x: number, count: number): string {
  if (x === 0) return `0${count > 1 ? `.${'0'.repeat(count - 1)}` : ''}e+0`;
  const { exponent } = decimalOf(x);
  const steps = stepsOf(x, count - 1 - exponent).toString();
  const digits = steps.slice(0, count);
  const power = exponent + steps.length - count;
  const mantissa = count === 1 ? digits : `${digits.slice(0, 1)}.${digits.slice(1)}`;
  return `${x < 0 ? '-' : ''}${mantissa}e${power < 0 ? '-' : '+'}${Math.abs(power)}`;
}
