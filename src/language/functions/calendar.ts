/** The seconds of a day: a date is held as the seconds from 1970-01-01 to its start. */
export const day = 86_400;

/** The whole days from 1970-01-01 to a date held in seconds; differences come back through floating point. */
export function daysIn(seconds: number): number {
  return Math.floor(seconds / day + 5e-7);
}

/** The day of the week of a count of days, 1 for Monday to 7 for Sunday (ISO 8601). */
export function weekday(days: number): number {
  // 1970-01-01 was a Thursday.
  return ((((days + 3) % 7) + 7) % 7) + 1;
}

/** Whether a day is worked: Monday to Friday and no holiday. */
export function isWorkday(days: number, holidays: ReadonlySet<number>): boolean {
  return weekday(days) <= 5 && !holidays.has(days);
}
