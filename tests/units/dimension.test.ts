import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseDimension } from '../../src/units/dimension.ts';
import {
  baseDimension,
  type Dimension,
  describeDimension,
  isTameDimension,
  overDimension,
  PLAIN,
  powerDimension,
  type Rational,
  rational,
  sameDimension,
  timesDimension,
} from '../../src/units/index.ts';
import { writeRational } from '../../src/units/rational.ts';
import { PATIENCE, SEED } from './seed.ts';

const anyRational: fc.Arbitrary<Rational> = fc
  .tuple(fc.integer({ min: -6, max: 6 }), fc.integer({ min: 1, max: 4 }))
  .map(([n, d]) => rational(n, d));
const anyDimension: fc.Arbitrary<Dimension> = fc
  .array(fc.tuple(fc.constantFrom('L', 'M', 'T', 'Θ', 'USD', 'EUR', 'bcy', 'lcy'), anyRational), {
    maxLength: 6,
  })
  .map((powers) =>
    powers.reduce((d, [base, power]) => timesDimension(d, powerDimension(baseDimension(base), power)), PLAIN),
  );

const settings = { seed: SEED, numRuns: 500 };

test(
  'products commute and associate, and plain is the unit of multiplication',
  () => {
    fc.assert(
      fc.property(anyDimension, anyDimension, anyDimension, (a, b, c) => {
        expect(timesDimension(a, b).key).toBe(timesDimension(b, a).key);
        expect(timesDimension(timesDimension(a, b), c).key).toBe(timesDimension(a, timesDimension(b, c)).key);
        expect(timesDimension(a, PLAIN).key).toBe(a.key);
        expect(timesDimension(PLAIN, a).key).toBe(a.key);
      }),
      settings,
    );
  },
  PATIENCE,
);

test(
  'a quotient undoes a product',
  () => {
    fc.assert(
      fc.property(anyDimension, anyDimension, (a, b) => {
        expect(overDimension(timesDimension(a, b), b).key).toBe(a.key);
        expect(overDimension(a, a).key).toBe('');
      }),
      settings,
    );
  },
  PATIENCE,
);

test(
  'powers distribute over products and multiply in a row',
  () => {
    fc.assert(
      fc.property(anyDimension, anyDimension, anyRational, anyRational, (a, b, p, q) => {
        expect(powerDimension(timesDimension(a, b), p).key).toBe(
          timesDimension(powerDimension(a, p), powerDimension(b, p)).key,
        );
        expect(powerDimension(powerDimension(a, p), q).key).toBe(
          powerDimension(a, rational(p.n * q.n, p.d * q.d)).key,
        );
        expect(timesDimension(powerDimension(a, p), powerDimension(a, q)).key).toBe(
          powerDimension(a, rational(p.n * q.d + q.n * p.d, p.d * q.d)).key,
        );
      }),
      settings,
    );
  },
  PATIENCE,
);

test(
  'the key says what the powers say, and reads back',
  () => {
    fc.assert(
      fc.property(anyDimension, (a) => {
        expect(parseDimension(a.key)).toEqual(a);
        expect(a.powers.every(([, power]) => power.n !== 0 && power.d > 0)).toBe(true);
        expect(a.key === '').toBe(a.powers.length === 0);
      }),
      settings,
    );
  },
  PATIENCE,
);

test.each([
  { text: 'T^-2 M L', key: 'L M T^-2' },
  { text: 'bcy^-1 USD L^1/2', key: 'L^1/2 USD bcy^-1' },
  { text: 'L L^-1', key: '' },
  { text: 'L^2 L^3', key: 'L^5' },
  { text: 'L^2/4', key: 'L^1/2' },
])('$text is written $key', ({ text, key }) => {
  expect(parseDimension(text).key).toBe(key);
});

test('what is no dimension is not read as one', () => {
  expect(() => parseDimension('L^x')).toThrow('not a dimension');
});

test('a person reads "plain" for none', () => {
  expect(describeDimension(PLAIN)).toBe('plain');
  expect(describeDimension(parseDimension('L M T^-2'))).toBe('L M T^-2');
});

test('equal keys are equal dimensions', () => {
  expect(sameDimension(parseDimension('L M'), parseDimension('M L'))).toBe(true);
  expect(sameDimension(parseDimension('L M'), parseDimension('L M^2'))).toBe(false);
});

test('an exponent beyond 99 is not tame', () => {
  expect(isTameDimension(parseDimension('L^99 M^-1/99'))).toBe(true);
  expect(isTameDimension(parseDimension('L^100'))).toBe(false);
  expect(isTameDimension(parseDimension('L^-100'))).toBe(false);
  expect(isTameDimension(parseDimension('L^1/100'))).toBe(false);
});

test('fractions are in lowest terms with a positive denominator', () => {
  expect(rational(2, -4)).toEqual({ n: -1, d: 2 });
  expect(rational(0, -3)).toEqual({ n: 0, d: 1 });
  expect([rational(-3, 2), rational(4, 2)].map(writeRational)).toEqual(['-3/2', '2']);
});
