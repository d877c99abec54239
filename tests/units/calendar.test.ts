import fc from 'fast-check';
import { expect, test } from 'vitest';
import { daysInMonth } from '../../src/units/calendar.ts';
import { dateFromSI, dateToSI, writeDate } from '../../src/units/index.ts';
import { PATIENCE, SEED } from './seed.ts';

/** The runtime's calendar, as an independent one. */
function utcSeconds(year: number, month: number, day: number): number {
  return new Date(0).setUTCFullYear(year, month - 1, day) / 1000;
}

test.each([
  { date: '1970-01-01', si: 0 },
  { date: '2000-02-29', si: 951_782_400 },
  { date: '2026-11-25', si: 20_782 * 86_400 },
  { date: '1969-12-31', si: -86_400 },
])('$date is $si s', ({ date, si }) => {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  expect(dateToSI({ year, month, day })).toBe(si);
  expect(dateFromSI(si)).toEqual({ year, month, day });
});

test(
  'every day from 1890 to 2110 agrees with the calendar of the runtime',
  () => {
    for (let si = utcSeconds(1890, 1, 1); si <= utcSeconds(2110, 12, 31); si += 86_400) {
      const iso = new Date(si * 1000).toISOString().slice(0, 10);
      const date = dateFromSI(si);
      if (date === undefined || writeDate(date) !== iso || dateToSI(date) !== si)
        throw new Error(`${iso}: ${si}`);
    }
  },
  PATIENCE,
);

test(
  'dates of any year agree with the calendar of the runtime, and go there and back',
  () => {
    const anyDate = fc.record({
      year: fc.integer({ min: 1, max: 9999 }),
      month: fc.integer({ min: 1, max: 12 }),
      day: fc.integer({ min: 1, max: 28 }),
    });
    fc.assert(
      fc.property(anyDate, ({ year, month, day }) => {
        const si = dateToSI({ year, month, day });
        expect(si).toBe(utcSeconds(year, month, day));
        expect(dateFromSI(si ?? Number.NaN)).toEqual({ year, month, day });
      }),
      { seed: SEED },
    );
  },
  PATIENCE,
);

test.each([
  { year: 2026, month: 2, day: 29 },
  { year: 2100, month: 2, day: 29 },
  { year: 2026, month: 4, day: 31 },
  { year: 2026, month: 13, day: 1 },
  { year: 2026, month: 0, day: 1 },
  { year: 2026, month: 1, day: 0 },
  { year: 0, month: 1, day: 1 },
  { year: 10_000, month: 1, day: 1 },
  { year: 2026.5, month: 1, day: 1 },
  { year: 2026, month: 1, day: 1.5 },
])('$year-$month-$day does not exist', (date) => {
  expect(dateToSI(date)).toBeUndefined();
});

test('beyond the calendar there is no date', () => {
  for (const si of [Number.NaN, Infinity, -1e15, 1e15]) expect(dateFromSI(si)).toBeUndefined();
});

test('a date that lost a little in floating point is still that day', () => {
  expect(dateFromSI(20_782 * 86_400 - 1e-6)).toEqual({ year: 2026, month: 11, day: 25 });
});

test('February has its days', () => {
  expect([1900, 2000, 2024, 2026].map((year) => daysInMonth(year, 2))).toEqual([28, 29, 29, 28]);
});
