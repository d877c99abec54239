import { dateFromSI, dateToSI, type Unit, writeIn } from '../../units/index.ts';

const DAY = 86_400;
const DAYS = [1, 2, 7, 14];
const MONTHS = [1, 2, 3, 6, 12, 24, 60, 120, 240, 600, 1200];

/** A day to mark on an axis: seconds since 1970-01-01, and how it is written. */
interface DayMark {
  readonly si: number;
  readonly text: string;
}

/** Days to mark from one day to another, at most about `most`: every few days, or the first days of months or years. */
export function dayMarks(from: number, to: number, unit: Unit, most: number): readonly DayMark[] {
  const mark = (si: number): DayMark => ({ si, text: writeIn(si, unit) });
  const span = Math.max(0, to - from) / DAY;
  const days = DAYS.find((step) => span / step < most);
  if (days !== undefined) {
    const first = Math.ceil(from / DAY / days) * days;
    const count = Math.max(0, Math.floor((to / DAY - first) / days) + 1);
    return Array.from({ length: count }, (_, at) => mark((first + at * days) * DAY));
  }
  const start = dateFromSI(from);
  const months = MONTHS.find((step) => span / 30.44 / step < most);
  if (!start || months === undefined) return [mark(from), mark(to)];
  const marks: DayMark[] = [];
  const firstMonth = Math.ceil((start.year * 12 + start.month - 1) / months) * months;
  for (let month = firstMonth; ; month += months) {
    const si = dateToSI({ year: Math.floor(month / 12), month: (month % 12) + 1, day: 1 });
    if (si === undefined || si > to) return marks;
    if (si >= from) marks.push(mark(si));
  }
}
