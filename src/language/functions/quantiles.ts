import { erfc } from './error-function.ts';

/** The chance that a standard normal variable stays below x. */
function normalBelow(x: number): number {
  return erfc(-x / Math.SQRT2) / 2;
}

/**
 * The value a standard normal variable stays below with chance p (0 < p < 1): a first guess good to 4.5e-4
 * (Abramowitz and Stegun, 26.2.23, from memory), then steps of Halley's rule down to rounding.
 */
export function normalQuantile(p: number): number {
  if (p > 0.5) return -normalQuantile(1 - p);
  // The steps would leave a rounding error, which has a sign.
  if (p === 0.5) return 0;
  const t = Math.sqrt(-2 * Math.log(p));
  let x =
    (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let step = 0; step < 4; step += 1) {
    const off = (normalBelow(x) - p) * Math.sqrt(2 * Math.PI) * Math.exp((x * x) / 2);
    x -= off / (1 + (x * off) / 2);
  }
  return x;
}

/** The value a triangular variable stays below with chance p (0 to 1). */
export function triangularQuantile(p: number, low: number, mode: number, high: number): number {
  const below = (mode - low) / (high - low);
  return p <= below
    ? low + Math.sqrt(p * (high - low) * (mode - low))
    : high - Math.sqrt((1 - p) * (high - low) * (high - mode));
}

/** Lanczos's series for the logarithm of the gamma function of x > 0 (g = 7, from memory), to about 1e-14. */
function logGamma(x: number): number {
  const series = [
    676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
    -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ].reduce((sum, coefficient, k) => sum + coefficient / (x + k), 0.99999999999980993);
  const t = x + 6.5;
  return Math.log(2 * Math.PI) / 2 + (x - 0.5) * Math.log(t) - t + Math.log(series);
}

/** The continued fraction of the incomplete beta function (Abramowitz and Stegun, 26.5.8), by Lentz's rule. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const away = (value: number): number => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m <= 500; m += 1) {
    const terms = [
      (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)),
      (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)),
    ];
    let change = 1;
    for (const term of terms) {
      d = 1 / away(1 + term * d);
      c = away(1 + term / c);
      change = c * d;
      value *= change;
    }
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return value;
}

/** The chance that a beta variable stays below x (0 to 1). */
function betaBelow(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(x, a, b)) / a
    : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/** The value from 0 to 1 a beta variable stays below with chance p (0 < p < 1), by halving down to rounding. */
export function betaQuantile(p: number, a: number, b: number): number {
  let [low, high] = [0, 1];
  for (let step = 0; step < 1100 && low < high; step += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (betaBelow(middle, a, b) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
