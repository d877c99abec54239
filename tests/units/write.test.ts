import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  fromSI,
  numberInPrint,
  quantityInPrint,
  readEntry,
  standardUnits,
  toSI,
  unitInPrint,
  writeIn,
  writeNumber,
  writeQuantity,
} from '../../src/units/index.ts';
import { anyNumber, anySingleUnit, anyUnit, unitOf } from './arbitrary.ts';
import { PATIENCE, SEED } from './seed.ts';

test.each([
  [0.6109, '0.611'],
  [1440.2, '1440'],
  [211_643.77, '211\u202f644'],
  [0, '0'],
  [-0, '0'],
  [1, '1'],
  [12.3456, '12.35'],
  [123.456, '123.5'],
  [999.96, '1000'],
  [9999.4, '9999'],
  [9999.5, '10\u202f000'],
  [29_000, '29\u202f000'],
  [1_234_567.8, '1\u202f234\u202f568'],
  [0.5, '0.5'],
  [0.125, '0.125'],
  [0.8125, '0.813'],
  [0.0123456, '0.0123'],
  [0.000123456, '0.000123'],
  [0.0000065, '6.5e-6'],
  [0.1 + 0.2, '0.3'],
  [-3.24159, '-3.242'],
  [99_999_999, '99\u202f999\u202f999'],
  [14_333_660_904, '14.33e9'],
  [-123_456_789, '-123.5e6'],
  [1e8, '100e6'],
  [1e11, '100e9'],
  [999_960_000, '1.000e9'],
  [210e9, '210e9'],
  [1.2346e12, '1.235e12'],
  [0.000012, '1.2e-5'],
  [1e12, '1e12'],
  [0.0001, '0.0001'],
  [0.00009999, '0.000100'],
  [13.398, '13.40'],
  [13.4, '13.4'],
  [13.4 + 1e-12, '13.4'],
  [59.998, '60.00'],
  [0.49999, '0.500'],
  [1200.04, '1200'],
  [2.0003e-7, '2.00e-7'],
  [6.02214e23, '602.2e21'],
  [-5e-324, '-5e-324'],
  [Number.NaN, 'no value'],
  [-Infinity, 'no value'],
])('%d is written %s', (x, text) => {
  expect(writeNumber(x)).toBe(text);
});

test.each([
  [{ decimals: 2 }, 1234.5, '1234.50'],
  [{ decimals: 2 }, 12_345.678, '12\u202f345.68'],
  [{ decimals: 0 }, 0.4, '0'],
  [{ decimals: 1 }, -0.04, '0.0'],
  [{ decimals: 2 }, 0, '0.00'],
  [{ decimals: 2 }, 1.5e15, '1.5e15'],
  [{ digits: 'working' }, 13.398, '13.398'],
  [{ digits: 'working' }, 99_999_999, '99\u202f999\u202f999'],
  [{ digits: 'working' }, 14_333_660_904, '14.334e9'],
  [{ digits: 'working' }, -14_333_660_904, '-14.334e9'],
  [{ digits: 'working' }, 2e11, '200e9'],
  [{ digits: 'working' }, 1e9, '1e9'],
  [{ digits: 'working' }, 999_999_700, '1.0000e9'],
  [{ digits: 'working' }, 123_456_789, '123.46e6'],
  [{ digits: 'working' }, 0.53814, '0.53814'],
  [{ digits: 'working' }, 0.5, '0.5'],
  [{ digits: 'working' }, 69.7114, '69.711'],
  [{ digits: 'working' }, 1765.44, '1765.4'],
  [{ digits: 'working' }, 883_170.4, '883\u202f170'],
  [{ digits: 'working' }, 12.00001, '12.000'],
  [{ digits: 6 }, 12.3456789, '12.3457'],
  [{ digits: 2 }, 1234, '1200'],
  [{ digits: 'full' }, 211_643.7716974825, '211\u202f643.7716974825'],
  [{ digits: 'full' }, 0.1 + 0.2, '0.30000000000000004'],
  [{ digits: 'full' }, 1.5e-7, '1.5e-7'],
  [{ grouping: 'none' }, 211_643.77, '211644'],
] as const)('in the style %j, %d is written %s', (style, x, text) => {
  expect(writeNumber(x, style)).toBe(text);
});

test.each([
  ['kN', 12_300, '12.3 kN'],
  ['', 0.6109, '0.611'],
  ['%', 0.125, '12.5 %'],
  ['°', Math.PI / 6, '30°'],
  ['deg', Math.PI / 6, '30 deg'],
  ['degC', 293.15, '20 degC'],
  ['°F', 293.15, '68 °F'],
  ['ft MLLW', 3.81, 'El. +12.5 ft MLLW'],
  ['m NAVD88', -3, 'El. -3 m NAVD88'],
  ['El. ft', 0, 'El. +0 ft'],
  ['date', 20_782 * 86_400, '2026-11-25'],
  ['date', 20_782 * 86_400 + 43_200, '2026-11-25 12:00'],
  ['date', 20_782 * 86_400 + 86_399, '2026-11-25 23:59:59'],
  ['date', 20_782 * 86_400 + 86_399.99, '2026-11-26'],
  ['date', 20_782 * 86_400 + 86_399.9, '2026-11-25 23:59:59'],
  ['date', -43_200, '1969-12-31 12:00'],
  ['date', 1e20, 'no value'],
  ['$', 12.5, '$12.50'],
  ['$', -12.5, '-$12.50'],
  ['$', 1200.5, '$1201'],
  ['$', 999.996, '$1000'],
  ['$', 1_234_567, '$1\u202f234\u202f567'],
  ['$', 123_456_789.4, '$123\u202f456\u202f789'],
  ['$/cy', 12.5 / 0.764554857984, '$12.50/cy'],
  ['USD/cy', 12.5 / 0.764554857984, '12.50 USD/cy'],
  ['USD', 0.00123, '0.00123 USD'],
  ['USD', 0.5, '0.50 USD'],
  ['USD', 1 / 3, '0.333 USD'],
  ['USD', 0, '0.00 USD'],
  ['ea', 4, '4 ea'],
  ['kN', Number.NaN, 'no value'],
] as const)('in %s, %d is written %s', (unit, si, text) => {
  expect(writeQuantity(si, unitOf(unit))).toBe(text);
});

test('a number alone has the digits it has with its unit', () => {
  expect(writeIn(12.5 / 0.764554857984, unitOf('$/cy'))).toBe('12.50');
  expect(writeIn(3.81, unitOf('ft MLLW'))).toBe('12.5');
  expect(writeIn(0, unitOf('date'))).toBe('1970-01-01');
});

test(
  'with all digits, writing and reading give the same SI number',
  () => {
    fc.assert(
      fc.property(anyNumber, anyUnit, (x, unit) => {
        const si = toSI(x, unit);
        fc.pre(Number.isFinite(si) && (si !== 0 || x === 0) && Number.isFinite(fromSI(si, unit)));
        const text = writeQuantity(si, unit, { digits: 'full' });
        const entry = readEntry(text, standardUnits, unit);
        if (!entry.ok) throw new Error(`${text}: ${entry.problems[0]?.message}`);
        if (entry.value.kind !== 'number' && entry.value.kind !== 'point')
          throw new Error(`${text}: ${entry.value.kind}`);
        // A point near its zero loses what its offset swallows; there is nothing smaller to write.
        const lost = unit.offset === 0 ? 0 : unit.offset * 2e-16;
        expect(Math.abs(entry.value.si - si), text).toBeLessThanOrEqual(lost);
      }),
      { seed: SEED, numRuns: 5000 },
    );
  },
  PATIENCE,
);

test(
  'with all digits, any SI number comes back within a unit in the last place or two',
  () => {
    fc.assert(
      fc.property(anyNumber, anySingleUnit, (si, unit) => {
        fc.pre(unit.offset === 0);
        const entry = readEntry(writeQuantity(si, unit, { digits: 'full' }), standardUnits, unit);
        const back = entry.ok && entry.value.kind === 'number' ? entry.value.si : Number.NaN;
        expect(Math.abs(back - si)).toBeLessThanOrEqual(Math.abs(si) * 4.5e-16);
      }),
      { seed: SEED, numRuns: 5000 },
    );
  },
  PATIENCE,
);

test(
  'what is written sensibly reads back, without a unit of the line too, and within half a unit of the third digit',
  () => {
    fc.assert(
      fc.property(anyNumber, anyUnit, (x, unit) => {
        const si = toSI(x, unit);
        fc.pre(Number.isFinite(si) && (si !== 0 || x === 0));
        const text = writeQuantity(si, unit);
        for (const row of [unit, undefined]) {
          const entry = readEntry(text, standardUnits, row);
          if (!entry.ok) throw new Error(`${text}: ${entry.problems[0]?.message}`);
          if (entry.value.kind !== 'number' && entry.value.kind !== 'point')
            throw new Error(`${text}: ${entry.value.kind}`);
          expect(entry.value.unit.dimension.key).toBe(unit.dimension.key);
          expect(entry.value.unit.point).toBe(unit.point);
          const error = Math.abs(fromSI(entry.value.si, unit) - x);
          // Points with an offset carry the rounding of the offset as well.
          expect(error, text).toBeLessThanOrEqual(Math.abs(x) * 5.001e-3 + (unit.offset === 0 ? 0 : 1e-12));
        }
      }),
      { seed: SEED, numRuns: 5000 },
    );
  },
  PATIENCE,
);

test(
  'to SI and back is the same number to a unit in the last place or two',
  () => {
    fc.assert(
      fc.property(anyNumber, anySingleUnit, (x, unit) => {
        const back = fromSI(toSI(x, unit), unit);
        const offset = unit.offset === 0 ? 0 : unit.offset * 1e-15;
        expect(Math.abs(back - x)).toBeLessThanOrEqual(Math.abs(x) * 5e-16 + offset);
      }),
      { seed: SEED, numRuns: 5000 },
    );
  },
  PATIENCE,
);

test(
  'dates go there and back',
  () => {
    fc.assert(
      fc.property(fc.integer({ min: -700_000, max: 2_900_000 }), (days) => {
        const entry = readEntry(writeQuantity(days * 86_400, unitOf('date')), standardUnits, unitOf('date'));
        expect(entry.ok && entry.value.kind === 'point' && entry.value.si).toBe(days * 86_400);
      }),
      { seed: SEED },
    );
    fc.assert(
      fc.property(fc.integer({ min: -700_000 * 86_400, max: 2_900_000 * 86_400 }), (seconds) => {
        const text = writeQuantity(seconds, unitOf('date'));
        const entry = readEntry(text, standardUnits, unitOf('date'));
        expect(entry.ok && entry.value.kind === 'point' && entry.value.si).toBe(seconds);
      }),
      { seed: SEED },
    );
  },
  PATIENCE,
);

/** Half a unit of the last digit of a number as it is printed. */
function halfOfLastDigit(printed: string): number {
  const [, whole = '', decimals = '', power = '0'] =
    /^−?([\d\u202f]+)(?:\.(\d+))?(?:\u202f×\u202f10(.+))?$/.exec(printed) ?? [];
  const exponent = Number(
    power.replace('⁻', '-').replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, (d) => `${'⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(d)}`),
  );
  return whole === '' ? 0 : 0.5 * 10 ** (exponent - decimals.length);
}

test(
  'what is printed can be typed back: its value is the number within half of the last digit shown, and never zero for what is not',
  () => {
    fc.assert(
      fc.property(anyNumber, anySingleUnit, (x, unit) => {
        fc.pre(unit.offset === 0 && unit.point === undefined);
        const si = toSI(x, unit);
        fc.pre(Number.isFinite(si) && (si !== 0 || x === 0));
        const printed = numberInPrint(writeIn(si, unit));
        for (const text of [printed, quantityInPrint(printed, unitInPrint(unit.text))]) {
          const entry = readEntry(text, standardUnits, unit);
          if (!entry.ok || entry.value.kind !== 'number')
            throw new Error(`${text} does not read as a number`);
          const back = fromSI(entry.value.si, unit);
          // Whatever 10⁻⁶ and 10⁹ stand for is their value to the last bit or two.
          const most = halfOfLastDigit(printed) + Math.abs(x) * 1e-9;
          expect(Math.abs(back - x), text).toBeLessThanOrEqual(most);
          expect(back === 0, text).toBe(x === 0);
        }
      }),
      { seed: SEED, numRuns: 5000 },
    );
  },
  PATIENCE,
);
