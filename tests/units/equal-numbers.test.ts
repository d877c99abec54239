import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  areEqual,
  readEntry,
  readUnit,
  standardUnits,
  toSI,
  withoutDust,
  writeIn,
} from '../../src/units/index.ts';
import { SEED } from './seed.ts';

const unit = (text: string) => {
  const read = readUnit(text, standardUnits);
  if (!read.ok) throw new Error(`no unit ${text}`);
  return read.value;
};

test.each([
  [64.99999999999999, 65],
  [0.30000000000000004, 0.3],
  [3.3000000000000003, 3.3],
  [-2.2000000000000006, -2.2],
  [12345.600000000002, 12345.6],
  // Of more than ten digits nothing is dust.
  [1234567.89012, 1234567.89012],
  [Math.PI, Math.PI],
  [64.9999999999, 64.9999999999],
  [0, 0],
])('%d without what a computation leaves is %d', (x, short) => {
  expect(withoutDust(x)).toBe(short);
});

test('no number is changed by more than numbers are equal by, and a short one never', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (x) => areEqual(withoutDust(x), x)),
    { seed: SEED },
  );
  fc.assert(
    fc.property(
      fc.integer({ min: -999_999_999, max: 999_999_999 }),
      fc.integer({ min: -9, max: 9 }),
      (n, e) => {
        const x = Number(`${n}e${e}`);
        return withoutDust(x) === x;
      },
    ),
    { seed: SEED },
  );
});

test('a quantity is carried elsewhere as it would be written down', () => {
  const ft = unit('ft');
  const si = toSI(65, ft) - 8e-15;
  expect(writeIn(si, ft, { digits: 'full' })).toMatch(/^64\.9999|^65\.0000/);
  expect(writeIn(si, ft, { digits: 'carried' })).toBe('65');
  expect(writeIn(si, ft, { digits: 14, grouping: 'none' })).toBe('65');
  const long = writeIn(Math.PI, unit('m'), { digits: 'carried' });
  const read = readEntry(long, standardUnits, unit('m'));
  expect(read.ok && 'si' in read.value && read.value.si).toBe(Math.PI);
});
