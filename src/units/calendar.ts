/** A calendar date of the Gregorian calendar; `month` and `day` count from 1. */
export interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** The seconds of a day: dates are held in seconds since 1970-01-01. */
const DAY = 86_400;
/** Half a microday, in seconds: differences of dates come back through floating point. */
const MARGIN = 5e-7 * DAY;

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** A date as SI (seconds since 1970-01-01), or undefined if there is no such date from year 1 to 9999. */
export function dateToSI({ year, month, day }: CalendarDate): number | undefined {
  if (!Number.isInteger(year) || year < 1 || year > 9999) return undefined;
  const days = daysInMonth(year, month);
  if (days === undefined || !Number.isInteger(day) || day < 1 || day > days) return undefined;
  return dayNumber({ year, month, day }) * DAY;
}

/** The date an SI value falls on (any time of the day), or undefined beyond years 1 to 9999. */
export function dateFromSI(si: number): CalendarDate | undefined {
  const days = Math.floor((si + MARGIN) / DAY);
  if (
    !(
      days >= dayNumber({ year: 1, month: 1, day: 1 }) &&
      days <= dayNumber({ year: 9999, month: 12, day: 31 })
    )
  ) {
    return undefined;
  }
  // Eras of 400 years have 146 097 days each; years start in March so that the leap day comes last.
  const shifted = days + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

/** A date as ISO 8601 writes it: 2026-11-25. */
export function writeDate({ year, month, day }: CalendarDate): string {
  const pad = (n: number, width: number) => String(n).padStart(width, '0');
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}`;
}

/**
 * The time of day of an SI value as ISO 8601 writes it, `06:30` or `06:30:15`, or '' at the very start of its date: what
 * `dateFromSI` leaves out, cut to whole seconds.
 */
export function timeOfDay(si: number): string {
  const seconds = Math.floor(si + MARGIN);
  const rest = ((seconds % DAY) + DAY) % DAY;
  if (rest === 0) return '';
  const two = (n: number) => String(n).padStart(2, '0');
  const [hours, minutes] = [Math.floor(rest / 3600), Math.floor(rest / 60) % 60];
  return `${two(hours)}:${two(minutes)}${rest % 60 === 0 ? '' : `:${two(rest % 60)}`}`;
}

/** The days of a month, or undefined if there is no such month. */
export function daysInMonth(year: number, month: number): number | undefined {
  const leap = month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = MONTH_DAYS[month - 1];
  return days === undefined ? undefined : days + (leap ? 1 : 0);
}

/** Days since 1970-01-01. */
function dayNumber({ year, month, day }: CalendarDate): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}
