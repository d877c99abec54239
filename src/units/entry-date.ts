import { type Outcome, problem, succeed } from '../diagnostics/index.ts';
import { dateToSI, writeDate } from './calendar.ts';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:[ T]+(\d{2}):(\d{2})(?::(\d{2}))?)?$/;
const THREE_NUMBERS = /^(\d{1,4})([./-])(\d{1,2})\2(\d{1,4})$/;
const DAY_MONTH_YEAR = /^(\d{1,2})(?:st|nd|rd|th)?[ .-]*([a-z]{3,9})\.?[ ,.-]*(\d{4}|\d{2})$/i;
const MONTH_DAY_YEAR = /^([a-z]{3,9})\.? *(\d{1,2})(?:st|nd|rd|th)?(?:,| |, )*(\d{4})$/i;

/**
 * Reads an ISO date, with a time of day or without, as SI seconds. Undefined if the text does not look like a date at all; a problem if it is a
 * date in another order (offering the ISO form of each reading), or one that does not exist.
 */
export function readDate(text: string, from: number): Outcome<number> | undefined {
  const span = { from, to: from + text.length };
  const iso = ISO.exec(text);
  if (iso !== null) {
    const si = dateToSI({ year: Number(iso[1]), month: Number(iso[2]), day: Number(iso[3]) });
    const [hours, minutes, seconds] = iso.slice(4).map((part) => Number(part ?? 0));
    const time = secondsOf(hours, minutes, seconds);
    if (si !== undefined && time !== undefined) return succeed(si + time);
    return { ok: false, problems: [problem('entry-date-impossible', span, { written: text })] };
  }
  const readings = otherOrders(text);
  if (readings === undefined) return undefined;
  const fixes = readings.map((insert) => ({ label: insert, ...span, insert }));
  return { ok: false, problems: [problem('entry-date-order', span, { written: text, readings }, fixes)] };
}

/** The seconds from the start of a day to a time of it; undefined if there is no such time. */
function secondsOf(hours = 0, minutes = 0, seconds = 0): number | undefined {
  return hours < 24 && minutes < 60 && seconds < 60 ? hours * 3600 + minutes * 60 + seconds : undefined;
}

/** The ISO forms a date in another order may mean; undefined if it is no date. */
function otherOrders(text: string): string[] | undefined {
  const numbers = THREE_NUMBERS.exec(text);
  if (numbers !== null) {
    const [, first = '', mark = '', second = '', third = ''] = numbers;
    const yearFirst = first.length === 4;
    if (!yearFirst && third.length !== 4 && !(mark === '/' && first.length <= 2 && third.length === 2))
      return undefined;
    const [a, b, c] = [Number(first), Number(second), Number(third)];
    if (yearFirst) return isoForms([[a, b, c]]);
    const year = third.length === 2 ? 2000 + c : c;
    return isoForms([
      [year, a, b],
      [year, b, a],
    ]);
  }
  const named = DAY_MONTH_YEAR.exec(text);
  if (named !== null) return namedForm(named[3], named[2], named[1]);
  const american = MONTH_DAY_YEAR.exec(text);
  return american === null ? undefined : namedForm(american[3], american[1], american[2]);
}

function namedForm(year = '', month = '', day = ''): string[] | undefined {
  const index = MONTHS.indexOf(month.slice(0, 3).toLowerCase());
  if (index === -1) return undefined;
  return isoForms([[year.length === 2 ? 2000 + Number(year) : Number(year), index + 1, Number(day)]]);
}

function isoForms(dates: readonly (readonly [number, number, number])[]): string[] {
  const forms = dates
    .map(([year, month, day]) => ({ year, month, day }))
    .filter((date) => dateToSI(date) !== undefined)
    .map(writeDate);
  return [...new Set(forms)];
}
