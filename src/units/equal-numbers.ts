/**
 * Two numbers this close, relative to the larger, are equal: in a comparison, as keys, at the end of a permitted range, in
 * both engines. The rounding of a computation leaves a few parts in 1e16; a digit a person wrote is never as small.
 */
export const EQUALITY = 1e-12;

/** Whether two numbers are equal but for what the rounding of a computation leaves. */
export function areEqual(a: number, b: number): boolean {
  return Math.abs(a - b) <= EQUALITY * Math.max(Math.abs(a), Math.abs(b));
}

/** So many digits at most has a number that people would write down; a longer one is left as it is. */
const WRITTEN_DIGITS = 10;

/** The short decimal that a number is equal to, 65 for 64.99999999999999; the number itself where there is none. */
export function withoutDust(x: number): number {
  const short = Number(x.toPrecision(WRITTEN_DIGITS));
  return areEqual(short, x) ? short : x;
}
