import betaOracle from '@stdlib/stats-base-dists-beta-quantile';
import lognormalOracle from '@stdlib/stats-base-dists-lognormal-quantile';
import normalOracle from '@stdlib/stats-base-dists-normal-quantile';
import triangularOracle from '@stdlib/stats-base-dists-triangular-quantile';
import { describe, expect, test } from 'vitest';
import { findFunction } from '../../src/language/index.ts';

/** The evaluator of an elementwise function of the table. */
function of(name: string): (...args: number[]) => number {
  const evaluate = findFunction(name)?.evaluate;
  if (evaluate?.kind !== 'each') throw new Error(`${name} is not elementwise`);
  return evaluate.of;
}

// The library's normal quantile is off by 1e-12 at 1e-6 and by 4e-7 at 1e-12, so the far tails have a test of their own.
const chances = [0.001, 0.025, 0.1, 0.3, 0.5, 0.64, 0.8, 0.9, 0.975, 0.999, 0.999999];

function near(found: number, oracle: number, relative: number): void {
  expect(Math.abs(found - oracle)).toBeLessThanOrEqual(relative * Math.max(Math.abs(oracle), 1e-3));
}

describe('quantiles against an independent library', () => {
  test.each(chances)('normal, lognormal, triangular at %f', (p) => {
    near(of('NORMSINV')(p), normalOracle(p, 0, 1), 1e-12);
    near(of('NORMINV')(p, 5, 2), normalOracle(p, 5, 2), 1e-12);
    near(of('LOGINV')(p, 0.2, 0.5), lognormalOracle(p, 0.2, 0.5), 1e-12);
    near(of('TRIANGINV')(p, 80, 100, 150), triangularOracle(p, 80, 150, 100), 1e-12);
  });

  test.each(
    chances.flatMap(
      (p) =>
        [
          [p, 2, 3],
          [p, 0.5, 0.5],
          [p, 10, 1.5],
          [p, 40, 60],
        ] as const,
    ),
  )('beta at %f of alpha %f, beta %f', (p, a, b) => {
    near(of('BETAINV')(p, a, b, 0, 1), betaOracle(p, a, b), 1e-10);
  });
});

describe('quantiles as published', () => {
  test('normal 0.975', () => {
    // Abramowitz and Stegun, Table 26.5, from memory: 1.95996 39845.
    expect(of('NORMSINV')(0.975)).toBeCloseTo(1.959963984540054, 13);
  });

  test.each([1e-12, 1e-6, 1e-3])('normal in the far tail: the chance comes back at %f', (p) => {
    const x = of('NORMSINV')(p);
    expect(Math.abs(of('ERFC')(-x / Math.SQRT2) / 2 / p - 1)).toBeLessThan(1e-13);
  });

  test('normal at one in a million', () => {
    // R, qnorm(1e-6), from memory: -4.753424308822899.
    near(of('NORMSINV')(1e-6), -4.753424308822899, 1e-14);
  });

  test('nothing below no chance and above certainty', () => {
    for (const p of [0, 1, -0.1, 1.1]) expect(of('NORMSINV')(p)).toBeNaN();
  });
});
