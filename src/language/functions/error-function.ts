/** The error function by its power series, which converges fast below about 3. */
function series(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > Math.abs(sum) * 1e-17; n += 1) {
    term *= (-x * x) / n;
    sum += term / (2 * n + 1);
    if (n > 200) break;
  }
  return (2 / Math.sqrt(Math.PI)) * sum;
}

/** One less the error function by its continued fraction, for x of 2 and more (Abramowitz and Stegun, 7.1.14). */
function fraction(x: number): number {
  let value = 0;
  for (let k = 120; k >= 1; k -= 1) value = k / 2 / (x + value);
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / (x + value);
}

/** The error function of any real number, to about 1e-15. */
export function erf(x: number): number {
  if (x < 0) return -erf(-x);
  return x < 2 ? series(x) : 1 - fraction(x);
}

/** One less the error function, to about 1e-13 of itself. */
export function erfc(x: number): number {
  return x < 2 ? 1 - erf(x) : fraction(x);
}
