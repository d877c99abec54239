import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findFunction } from '../../src/language/index.ts';
import { writeDecimals, writeNumber } from '../../src/units/index.ts';
import { SEED } from './seed.ts';

test.each([
  [18.495, 2, '18.50'],
  [28.575, 2, '28.58'],
  [1.005, 2, '1.01'],
  [-1.005, 2, '-1.01'],
  [0.5, 0, '1'],
  [-0.5, 0, '-1'],
  [2.5, 0, '3'],
  [-0.4, 0, '0'],
  [-0.004, 2, '0.00'],
  [0, 2, '0.00'],
  [8.005, 2, '8.01'],
  [3 * 6.165, 2, '18.50'],
  [18.494_999_999_999_997, 2, '18.50'],
  [18.494_99, 2, '18.49'],
  [999.995, 2, '1000.00'],
  [1e15 + 0.5, 0, '1000000000000001'],
  [9.5e21, 2, '9500000000000000000000.00'],
  [1e-30, 2, '0.00'],
])('%d with %d decimals is %s', (x, decimals, text) => {
  expect(writeDecimals(x, decimals)).toBe(text);
});

test.each([
  [18.495, '18.50'],
  [28.575, '28.58'],
  [-28.575, '-28.58'],
  [0.6115, '0.612'],
  [99.995, '100.0'],
  [9.9995, '10.00'],
  [999.95, '1000'],
  [1234.5, '1235'],
  [0.099_95, '0.100'],
  [1.2345e-7, '1.23e-7'],
  [1.2355e-7, '1.24e-7'],
  [1.2345e12, '1.235e12'],
])('a value of %d is shown %s', (x, text) => {
  expect(writeNumber(x)).toBe(text);
});

/** A decimal number of `digits` with its last `places` behind the point, rounded in whole numbers alone. */
function roundedByHand(digits: bigint, places: number, decimals: number): string {
  const size = digits < 0n ? -digits : digits;
  const cut = 10n ** BigInt(Math.max(0, places - decimals));
  const scaled = size * 10n ** BigInt(Math.max(0, decimals - places));
  const steps = (2n * scaled + cut) / (2n * cut);
  const text = steps.toString().padStart(decimals + 1, '0');
  const whole = text.slice(0, text.length - decimals);
  return `${digits < 0n && steps > 0n ? '-' : ''}${whole}${decimals === 0 ? '' : `.${text.slice(-decimals)}`}`;
}

const decimal = fc.record({
  digits: fc.bigInt({ min: -(10n ** 14n), max: 10n ** 14n }),
  places: fc.integer({ min: 0, max: 9 }),
  decimals: fc.integer({ min: 0, max: 8 }),
  half: fc.boolean(),
});

test(`decimals are rounded as on paper, halves away from zero (seed ${SEED})`, () => {
  fc.assert(
    fc.property(decimal, ({ digits, places, decimals, half }) => {
      // A number that ends in a 5 right behind the last decimal kept is where rules differ.
      const [number, behind] = half ? [digits - (digits % 10n) + 5n, decimals + 1] : [digits, places];
      const x = Number(`${number}e-${behind}`);
      // A distance from the half that a computation's rounding can make is the half by agreement.
      fc.pre(behind - decimals <= 3 && x.toString().replace(/\D/g, '').length <= 15);
      expect(writeDecimals(x, decimals)).toBe(roundedByHand(number, behind, decimals));
    }),
    { seed: SEED, numRuns: 5000 },
  );
});

test(`what is shown is what ROUND gives, also a few last places beside a half (seed ${SEED})`, () => {
  const evaluate = findFunction('ROUND')?.evaluate;
  if (evaluate?.kind !== 'each') throw new Error('ROUND is computed in another way');
  const steps = fc.integer({ min: -4, max: 4 });
  fc.assert(
    fc.property(
      fc.integer({ min: -1_000_000, max: 1_000_000 }),
      fc.integer({ min: 0, max: 4 }),
      steps,
      (n, decimals, off) => {
        const half = (n + 0.5) / 10 ** decimals;
        const x = half * (1 + off * Number.EPSILON);
        expect(Number(writeDecimals(x, decimals))).toBeCloseTo(evaluate.of(x, decimals), 9);
      },
    ),
    { seed: SEED, numRuns: 3000 },
  );
});
