import { dateFromSI, dateToSI } from '../../units/index.ts';
import { type PointType, plainType } from '../type.ts';
import { day, daysIn, isWorkday, weekday } from './calendar.ts';
import type { FunctionEntry } from './entry.ts';
import { column, date, each, plain } from './parameter.ts';

const dateType: PointType = { kind: 'point', of: 'date', axes: [] };
const ownCalendar = 'the recheck counts dates by its own calendar';
const holidaysOf = (values: Float64Array | undefined) => new Set(Array.from(values ?? [], daysIn));
/** A schedule longer than this has a slip in it. */
const longest = 200_000;

function part(name: 'YEAR' | 'MONTH' | 'DAY', key: 'year' | 'month' | 'day', value: number): FunctionEntry {
  return {
    name,
    group: 'dates',
    parameters: [each('date', date)],
    gives: () => plainType,
    evaluate: { kind: 'each', of: (seconds) => dateFromSI(seconds)?.[key] ?? Number.NaN },
    noRecheck: ownCalendar,
    help: `The ${key} of a date.`,
    example: { formula: `${name}(DATE(2026; 11; 25))`, value },
  };
}

export const dates: readonly FunctionEntry[] = [
  {
    name: 'DATE',
    group: 'dates',
    parameters: [each('year', plain), each('month', plain), each('day', plain)],
    gives: () => dateType,
    evaluate: {
      kind: 'each',
      of: (year, month, dayOfMonth) => dateToSI({ year, month, day: dayOfMonth }) ?? Number.NaN,
      refuse: ([y, m, d]) => ({ words: `there is no day ${d} of month ${m} in the year ${y}` }),
    },
    noRecheck: ownCalendar,
    help: 'A date from year, month and day.',
    example: { formula: 'DATE(2026; 11; 25) + 7 d', unit: 'date', value: '2026-12-02' },
  },
  part('YEAR', 'year', 2026),
  part('MONTH', 'month', 11),
  part('DAY', 'day', 25),
  {
    name: 'WEEKDAY',
    group: 'dates',
    parameters: [each('date', date)],
    gives: () => plainType,
    evaluate: { kind: 'each', of: (seconds) => weekday(daysIn(seconds)) },
    noRecheck: ownCalendar,
    help: 'The day of the week, 1 for Monday to 7 for Sunday.',
    example: { formula: 'WEEKDAY(DATE(2026; 11; 25))', value: 3 },
  },
  {
    name: 'WORKDAY',
    group: 'dates',
    parameters: [each('start', date), each('days', plain), column('holidays', date, { optional: true })],
    gives: () => dateType,
    evaluate: {
      kind: 'gather',
      of: ([holidays], [start = Number.NaN, days = Number.NaN]) => {
        if (!Number.isInteger(days) || Math.abs(days) > longest) return Number.NaN;
        const free = holidaysOf(holidays);
        const step = days < 0 ? -1 : 1;
        let at = daysIn(start);
        for (let left = Math.abs(days); left > 0; ) {
          at += step;
          if (isWorkday(at, free)) left -= 1;
        }
        return at * day;
      },
      refuse: () => ({ words: `the days must be a whole number up to ${longest}`, argument: 1 }),
    },
    noRecheck: ownCalendar,
    help: 'The date so many working days (Monday to Friday, no holidays) after a date.',
    example: {
      formula: 'WORKDAY(DATE(2026; 11; 25); 3; free.off)',
      given: { 'free.off': ['2026-11-26', '2026-12-25'] },
      unit: 'date',
      value: '2026-12-01',
    },
  },
  {
    name: 'NETWORKDAYS',
    group: 'dates',
    parameters: [each('start', date), each('end', date), column('holidays', date, { optional: true })],
    gives: () => plainType,
    evaluate: {
      kind: 'gather',
      of: ([holidays], [start = Number.NaN, end = Number.NaN]) => {
        const free = holidaysOf(holidays);
        const [from, to] = [daysIn(Math.min(start, end)), daysIn(Math.max(start, end))];
        if (to - from > longest) return Number.NaN;
        let count = 0;
        for (let at = from; at <= to; at += 1) if (isWorkday(at, free)) count += 1;
        return end < start ? -count : count;
      },
      refuse: () => ({ words: `the dates lie more than ${longest} days apart` }),
    },
    noRecheck: ownCalendar,
    help: 'The working days from one date to another, both counted.',
    example: {
      formula: 'NETWORKDAYS(DATE(2026; 11; 23); DATE(2026; 11; 29); free.off)',
      given: { 'free.off': ['2026-11-26', '2026-12-25'] },
      value: 4,
    },
  },
];
