import type { LoweringTools } from './entry.ts';

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

/** Beyond this the error function is one to the last digit. */
const FAR = 6;

/**
 * The error function as A1 formulas, by its series of positive terms (Abramowitz and Stegun, 7.1.6, from memory) from
 * the last term inwards, one cell each.
 */
export function lowerErf(x: string, tools: LoweringTools): string {
  const [one, two, far] = [tools.constant(1), tools.constant(2), tools.constant(FAR)];
  const near = tools.helper(`MAX(-${far},MIN(${far},${x}))`);
  const twice = tools.helper(`${two}*${near}*${near}`);
  let sum = one;
  for (let n = 110; n >= 1; n -= 1) sum = tools.helper(`${one}+${twice}/${tools.constant(2 * n + 1)}*${sum}`);
  const value = `${two}/${lowerRootOfPi(tools)}*EXP(-(${near}*${near}))*${near}*${sum}`;
  return tools.helper(`IF(ABS(${x})>=${far},SIGN(${x}),${value})`);
}

/** One less the error function as A1 formulas; from 2 on by the continued fraction, one cell a step. */
export function lowerErfc(x: string, tools: LoweringTools): string {
  const [one, two] = [tools.constant(1), tools.constant(2)];
  const large = tools.helper(`MAX(${two},${x})`);
  let value = tools.constant(0);
  for (let k = 60; k >= 1; k -= 1) value = tools.helper(`${tools.constant(k / 2)}/(${large}+${value})`);
  const tail = `EXP(-(${large}*${large}))/${lowerRootOfPi(tools)}/(${large}+${value})`;
  return `IF(${x}<${two},${one}-${lowerErf(x, tools)},${tail})`;
}

function lowerRootOfPi(tools: LoweringTools): string {
  return tools.helper(`SQRT(${tools.constant(4)}*ATAN(${tools.constant(1)}))`);
}
