import { writeDecimals, writeSignificant } from './round-decimal.ts';

/** How a number is written. */
export interface NumberStyle {
  /**
   * `sensible` (the default): about four significant digits, three below 1, no decimals from 1000 on; from 100 million
   * on with a power of ten, a thousand's: 14.33e9. A zero at the end says that more digits follow: 13.398 is 13.40, and
   * 13.4 is 13.4. `working`: the same with five significant digits, for numbers that are worked with by hand.
   * `full`: every digit needed to read the same number again. `carried`: of a quantity the same, but without the last
   * digits that a computation leaves: 65 ft for 64.99999999999999 ft. A number: that many significant digits, of a
   * quantity without such digits too.
   */
  readonly digits?: 'sensible' | 'working' | 'full' | 'carried' | number;
  /** Exactly so many decimals, in place of `digits`. */
  readonly decimals?: number;
  /** `thin` (the default): thousands apart by a narrow no-break space, from 10 000 on. */
  readonly grouping?: 'thin' | 'none';
}

/** The narrow no-break space between groups of three digits. */
const THIN_SPACE = '\u202f';

const SMALLEST_PLAIN = 1e-4;
const LARGEST_PLAIN = 1e12;
/** Nobody counts the digits of a larger number: it has a power of ten. */
const LARGEST_COUNTED = 1e8;
const MOST_DECIMALS = 20;
/** A number no further than this from its rounded self, as a part of it, is that number. */
const EXACT = 1e-9;

/**
 * Writes a number as an engineer's page has it: 0.611, 12.35, 1440, 211 644, 14.33e9, 6.5e-6. What it writes, `readEntry` reads.
 * Trailing zeros of an exact number are dropped, except with `decimals`. What is no finite number is "no value".
 */
export function writeNumber(x: number, style: NumberStyle = {}): string {
  if (!Number.isFinite(x)) return 'no value';
  if (x === 0) return writeDecimals(0, boundedDecimals(style.decimals ?? 0));
  const size = Math.abs(x);
  const grouping = style.grouping ?? 'thin';
  if (style.decimals !== undefined && size < LARGEST_PLAIN) {
    return group(writeDecimals(x, boundedDecimals(style.decimals)), grouping);
  }
  const digits = style.digits === 'carried' ? 'full' : (style.digits ?? 'sensible');
  if ((digits === 'sensible' || digits === 'working') && size >= LARGEST_COUNTED)
    return inThousands(x, significant(size, digits));
  const text = digits === 'full' ? String(x) : roundTo(x, digits);
  const rounded = Number(text);
  const goesOn = typeof digits === 'string' && digits !== 'full' && Math.abs(rounded - x) > EXACT * size;
  const shown = Math.abs(rounded);
  if (shown < SMALLEST_PLAIN || shown >= LARGEST_PLAIN)
    return exponential(goesOn ? writeSignificant(x, significant(size, digits)) : rounded.toExponential());
  return group(goesOn ? text : plainDecimal(rounded), grouping);
}

/** A large number as one below 1000, with so many digits, and a power of a thousand. */
function inThousands(x: number, digits: number): string {
  const rounded = Number(x.toPrecision(digits));
  const [ones = '', exponent = '0'] = rounded.toExponential().split('e');
  const power = Math.floor(Number(exponent) / 3) * 3;
  const mantissa = Number(`${ones}e${Number(exponent) - power}`);
  const goesOn = Math.abs(rounded - x) > EXACT * Math.abs(x);
  return `${goesOn ? plainDigits(writeSignificant(mantissa, digits)) : mantissa}e${power}`;
}

function roundTo(x: number, digits: 'sensible' | 'working' | number): string {
  if (typeof digits === 'number') return writeSignificant(x, Math.min(Math.max(Math.round(digits), 1), 17));
  const size = Math.abs(x);
  if (size >= 1000) return writeDecimals(x, digits === 'working' && size < 10_000 ? 1 : 0);
  const rounded = writeSignificant(x, significant(size, digits));
  return Math.abs(Number(rounded)) < SMALLEST_PLAIN ? rounded : plainDigits(rounded);
}

/** Digits with a power of ten, 1.850e+1, written out: 18.50. */
function plainDigits(text: string): string {
  const [mantissa = '', exponent = '0'] = text.split('e');
  const decimals = (mantissa.split('.')[1]?.length ?? 0) - Number(exponent);
  return writeDecimals(Number(text), Math.max(decimals, 0));
}

/** So many digits a number of a size is written with, where it has no more before its point. */
function significant(size: number, digits: 'sensible' | 'working'): number {
  if (digits === 'working') return 5;
  return size < 1 ? 3 : 4;
}

/** The shortest decimal that reads as the same number, without an exponent. */
function plainDecimal(x: number): string {
  const shortest = String(x);
  if (!shortest.includes('e')) return shortest;
  const [mantissa = '', exponent = '0'] = shortest.split('e');
  const decimals = (mantissa.split('.')[1]?.length ?? 0) - Number(exponent);
  return writeDecimals(x, Math.max(decimals, 0));
}

function exponential(text: string): string {
  return text.replace('e+', 'e');
}

function boundedDecimals(decimals: number): number {
  return Math.min(Math.max(Math.round(decimals), 0), MOST_DECIMALS);
}

function group(text: string, grouping: 'thin' | 'none'): string {
  if (grouping === 'none') return text;
  const [, sign = '', whole = '', decimals = ''] = /^(-?)(\d+)(.*)$/.exec(text) ?? [];
  return sign + groupThousands(whole) + decimals;
}

/** Digits before the point in groups of three, from 10 000 on. */
export function groupThousands(whole: string): string {
  return whole.length < 5 ? whole : whole.replace(/\B(?=(?:\d{3})+$)/g, THIN_SPACE);
}
