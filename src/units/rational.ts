/** An exact fraction in lowest terms, `d` positive. */
export interface Rational {
  readonly n: number;
  readonly d: number;
}

/** 1, the exponent of a base on its own. */
export const ONE: Rational = { n: 1, d: 1 };

/** `n/d` in lowest terms. Both integers, `d` not zero; exact while the numbers stay below 2^53. */
export function rational(n: number, d = 1): Rational {
  const divisor = greatestCommonDivisor(Math.abs(n), Math.abs(d)) * Math.sign(d);
  // `+ 0` turns -0 into 0.
  return { n: n / divisor + 0, d: d / divisor };
}

/** a + b. */
export function addRational(a: Rational, b: Rational): Rational {
  return a.d === 1 && b.d === 1 ? { n: a.n + b.n, d: 1 } : rational(a.n * b.d + b.n * a.d, a.d * b.d);
}

/** a · b. */
export function timesRational(a: Rational, b: Rational): Rational {
  return rational(a.n * b.n, a.d * b.d);
}

/** "2", "-1" or "1/2". */
export function writeRational({ n, d }: Rational): string {
  return d === 1 ? String(n) : `${n}/${d}`;
}

function greatestCommonDivisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x === 0 ? 1 : x;
}
