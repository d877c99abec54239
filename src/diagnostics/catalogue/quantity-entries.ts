import { entry, type NoFacts } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** What to do about what stands in place of a number, by why it is none. */
const NO_NUMBER: Readonly<Record<string, string>> = {
  about: 'write the number alone, and say in words beside it that it is about so much',
  error: 'it is the error of a spreadsheet: mend it there, or leave it blank',
  later: 'leave it blank while the number is not known',
  text: 'take the apostrophe away that marks it as text, if it is a number',
  digits: 'write the number in the digits 0 to 9',
};

/** A number or quantity in an entry that does not read. */
const numbers = {
  'entry-not-a-number': entry<{ written: string; wanted: string; why: string }>({
    title: 'An entry that is not a number',
    explain: 'The line has a unit, so it takes a number, with a unit of the same kind or none.',
    words: ({ written, wanted, why }) => ({
      message: `${quoted(written)} is not a number, and this line takes ${wanted}`,
      hint: NO_NUMBER[why] ?? 'write a number, or leave it blank while there is none',
    }),
  }),
  'entry-number-broken': entry<{ written: string; found: string }>({
    title: 'A number that does not read',
    explain:
      'The entry starts like a number and then goes on in a way no number or unit does. One value belongs in an entry, such as 12.3 kN, 1,200 psf, 3 1/2 in or 1.2e6 psi.',
    words: ({ written, found }) => ({
      message:
        found === '' || found === written
          ? `${quoted(written)} does not read as a number`
          : `${quoted(written)} does not read as a number: ${quoted(found)} does not fit`,
      hint:
        found === '-'
          ? `write ${quoted(`-${written.replace(/\s*[-−–]$/, '')}`)} for a number below 0, or leave the dash out`
          : 'write one number, then its unit',
    }),
  }),
  'entry-digit-groups': entry<{ written: string; readings: readonly string[] }>({
    title: 'Commas or points that can be read two ways',
    explain:
      'A comma between digits groups thousands, always three digits at a time, and a point starts the decimals. What does not fit that pattern may come from a country where they mean the reverse, so it is refused.',
    words: ({ written, readings }) => ({
      message:
        readings.length === 1
          ? `${quoted(written)} has commas or points otherwise than between thousands and in front of decimals`
          : `${quoted(written)} has commas or points where they can be read two ways`,
      ...(readings.length > 0 && { hint: `write ${listed(readings)}` }),
    }),
  }),
  'entry-parentheses': entry<{ written: string; negative: string }>({
    title: 'A number in parentheses',
    explain:
      'In accounts parentheses make a number negative, elsewhere they do nothing, so they are refused.',
    words: ({ written, negative }) => ({
      message: `${quoted(written)} is in parentheses, which may mean a negative number`,
      hint: `write ${negative}, or leave the parentheses out`,
    }),
  }),
  'entry-not-finite': entry<{ written: string }>({
    title: 'Infinity or "not a number" as an entry',
    explain: 'Every value is a finite number. What is not known yet is left blank.',
    words: ({ written }) => ({
      message: `${quoted(written)} is not a finite number`,
      hint: 'leave the entry blank if the value is not known',
    }),
  }),
  'entry-out-of-range': entry<{ written: string }>({
    title: 'A number too large or too small to hold',
    explain: 'Values are held as 64-bit floating point numbers, from about 1e-308 to about 1e308.',
    words: ({ written }) => ({ message: `${quoted(written)} is beyond the numbers that can be held` }),
  }),
  'entry-fraction-zero': entry<{ written: string }>({
    title: 'A fraction over zero',
    explain: 'The lower number of a fraction cannot be zero.',
    words: ({ written }) => ({ message: `${quoted(written)} is a fraction over zero` }),
  }),
  'entry-feet-inches': entry<{ written: string; trouble: string; example: string }>({
    title: 'Feet and inches that do not read',
    explain:
      'Feet and inches are written 12\'-6 1/2" or 12 ft 6 1/2 in: whole feet, then inches from 0 to less than 12, each with its mark.',
    words: ({ written, trouble, example }) => ({
      message: `${quoted(written)} does not read as feet and inches: ${trouble}`,
      hint: `write it like ${example}`,
    }),
  }),
  'entry-degrees-minutes': entry<{ written: string }>({
    title: 'Degrees, minutes and seconds that do not read',
    explain:
      'An angle is written 30.5° or 30° 15\' 20": minutes and seconds are below 60 and have their marks.',
    words: ({ written }) => ({
      message: `${quoted(written)} does not read as degrees, minutes and seconds`,
      hint: 'write it like 30° 15\' 20"',
    }),
  }),
  'entry-money': entry<{ written: string; example: string }>({
    title: 'An amount of money that does not read',
    explain:
      'An amount is a currency and a number, then a slash and a unit if it is a price: $1,200.50 or $12.50/cy.',
    words: ({ written, example }) => ({
      message: `${quoted(written)} does not read as an amount of money`,
      hint: `write it like ${example}`,
    }),
  }),
};

/** An entry of the wrong kind for its line. */
const kinds = {
  'entry-unit-mismatch': entry<{ written: string; isA: string; wants: string; unit: string; meant: string }>({
    title: 'An entry of another kind than its line',
    explain:
      'The unit written with the entry measures another kind of quantity than the unit of the line. A unit of the same kind is converted; one of another kind cannot be.',
    words: ({ written, isA, wants, unit, meant }) => ({
      message: `${quoted(written)} is ${isA}, and this line takes ${wants}`,
      hint: mismatchHint(unit, meant),
    }),
  }),
  'entry-currency': entry<{ written: string; isA: string; wants: string; from: string; to: string }>({
    title: 'An entry in another currency than its line',
    explain:
      'Currencies have no fixed rate to one another, so money of one is never read as money of another. Give the rate as a line of its own, and convert by a formula.',
    words: ({ written, isA, wants, from, to }) => ({
      message: `${quoted(written)} is ${isA}, and this line takes ${wants}: the currencies differ, ${from} and ${to}`,
      hint: `give the rate of exchange as a line in ${to}/${from}, and convert by a formula`,
    }),
  }),
  'entry-mass-force': entry<{ written: string; isA: string; wants: string; instead: string }>({
    title: 'A mass where a force is needed, or the reverse',
    explain:
      'A mass of 1 kg weighs 9.80665 N in standard gravity; the two are different kinds of quantity and are never exchanged silently. Write the unit of the kind the line takes (1 lbm weighs 1 lbf, 1 t weighs 1 tf), or convert in a formula with g = 9.80665 m/s^2.',
    words: ({ written, isA, wants, instead }) => ({
      message: `${quoted(written)} is ${isA}, and this line takes ${wants}: mass and force differ by the factor g = 9.80665 m/s^2`,
      ...(instead !== '' && { hint: `write ${quoted(instead)} if that is what is meant` }),
    }),
  }),
  'entry-angle': entry<{ written: string; wantsAngle: boolean }>({
    title: 'An angle where a plain number is needed, or the reverse',
    explain:
      'An angle is a plain number by dimension, but one that is never meant otherwise: a line in degrees takes an angle, and a line in plain numbers does not.',
    words: ({ written, wantsAngle }) => ({
      message: wantsAngle
        ? `${quoted(written)} is not an angle, and this line takes one`
        : `${quoted(written)} is an angle, and this line takes a plain number`,
      hint: `write ${wantsAngle ? 'it with' : 'the number without'} “deg” or “rad”`,
    }),
  }),
  'entry-difference': entry<{ written: string; wants: string; example: string }>({
    title: 'A difference where a point is needed',
    explain:
      'A temperature in degC or degF, an elevation and a date are points on a scale. K, and a date less a date, are differences, which have no place on the scale.',
    words: ({ written, wants, example }) => ({
      message: `${quoted(written)} is a difference, and this line takes ${wants}`,
      hint: `write it like ${example}`,
    }),
  }),
  'entry-point': entry<{ written: string; isA: string; wants: string; example: string }>({
    title: 'A point where a difference is needed',
    explain:
      'The entry is a point on a scale (a temperature, an elevation or a date) and the line takes an amount. 20 °C is a temperature; a rise of 20 degrees is 20 K.',
    words: ({ written, isA, wants, example }) => ({
      message: `${quoted(written)} is ${isA}, and this line takes ${wants}`,
      hint: `write it like ${example}`,
    }),
  }),
  'entry-datum': entry<{ written: string; datum: string; wants: string }>({
    title: 'An elevation to another datum',
    explain:
      'Elevations to different datums are different points, and the height between the datums is not known here. Convert the elevation first, or change the unit of the line.',
    words: ({ written, datum, wants }) => ({
      message: `${quoted(written)} is an elevation to ${datum}, and this line takes one to ${wants}`,
    }),
  }),
  'entry-elevation-unit': entry<{ written: string }>({
    title: 'An elevation without a unit',
    explain: 'Where the line has no unit, an elevation needs one of its own.',
    words: ({ written }) => ({
      message: `the elevation ${quoted(written)} has no unit`,
      hint: 'write it like El. +12.5 ft',
    }),
  }),
  'entry-truth': entry<{ written: string; wants: string }>({
    title: 'TRUE or FALSE where a number is needed',
    explain: 'The line has a unit, so it takes a number; a truth value has none.',
    words: ({ written, wants }) => ({
      message: `${quoted(written)} is a truth value, and this line takes ${wants}`,
    }),
  }),
};

/** Dates, text and the entry as a whole. */
const texts = {
  'entry-date-order': entry<{ written: string; readings: readonly string[] }>({
    title: 'A date that is not written year-month-day',
    explain:
      'Dates are written as ISO 8601 has them, year-month-day with all digits: 2026-11-25. Other orders are read differently in different countries.',
    words: ({ written, readings }) => ({
      message: `${quoted(written)} looks like a date, and dates are written year-month-day`,
      hint: `write ${readings.length > 0 ? listed(readings) : 'it like 2026-11-25'}`,
    }),
  }),
  'entry-date-impossible': entry<{ written: string }>({
    title: 'A date that does not exist',
    explain: 'The month is not from 1 to 12, the day is not in that month, or the time is none of that day.',
    words: ({ written }) => ({ message: `there is no date ${quoted(written)}` }),
  }),
  'entry-date-wanted': entry<{ written: string }>({
    title: 'A line that takes a date',
    explain: 'The unit of the line is date, so it takes a calendar date written year-month-day.',
    words: ({ written }) => ({
      message: `${quoted(written)} is not a date, and this line takes one`,
      hint: 'write it like 2026-11-25',
    }),
  }),
  'entry-quote': entry<{ written: string }>({
    title: 'A quotation mark without its partner',
    explain: 'Text in an entry may stand in quotation marks, one at each end.',
    words: ({ written }) => ({
      message: `${quoted(written)} has a quotation mark at one end only`,
      hint: 'put one at each end, or none',
    }),
  }),
  'entry-formula': entry<NoFacts>({
    title: 'A formula in an entry',
    explain: 'An entry holds a value as it is known. What is computed belongs in a calculated line.',
    words: () => ({
      message: 'this entry takes a value, not a formula',
      hint: 'put the formula in a calculated line',
    }),
  }),
  'entry-arithmetic': entry<{ written: string; insert: string }>({
    title: 'Arithmetic in an entry',
    explain:
      'An entry holds a value as it is known, so arithmetic of bare numbers, and a product of them with a unit behind, is not kept; its value is offered. What is to be kept as it is computed belongs in a calculated line.',
    words: ({ written, insert }) => ({
      message: `${quoted(written)} is a calculation, and this entry takes a value`,
      hint: `write ${insert}, or put the formula in a calculated line`,
    }),
  }),
  'entry-too-long': entry<{ longest: number }>({
    title: 'An entry that is too long',
    explain: 'The entry is longer than any value needs; something else was pasted here.',
    words: ({ longest }) => ({ message: `the entry is longer than ${longest} characters` }),
  }),
};

function mismatchHint(unit: string, meant: string): string {
  if (meant !== '') return `did you mean ${quoted(meant)}?`;
  return unit === ''
    ? 'write the number without a unit'
    : `give it in ${quoted(unit)} or a unit of the same kind`;
}

/** Problems of an entry: what a person typed as a value. */
export const entries = { ...numbers, ...kinds, ...texts };
