import { withPowerSigns } from './bare-powers.ts';
import { groupThousands } from './write-number.ts';

/** The sign between a number and its power of ten. */
const TIMES = '\u202f×\u202f';

const RAISED: Readonly<Record<string, string>> = {
  '-': '⁻',
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
};

const raised = (digits: string): string => [...digits].map((digit) => RAISED[digit] ?? digit).join('');

/** A unit as it is set in print: powers raised, products with a dot, degrees by their sign, nothing for plain numbers. */
export function unitInPrint(unit: string): string {
  if (unit === '-') return '';
  if (unit === 'deg') return '°';
  if (unit === 'degC' || unit === 'degF') return `°${unit.slice(3)}`;
  return withPowerSigns(unit)
    .replace(/\^(?:\((-?\d+)\)|(-?\d+))/g, (_, bound?: string, bare?: string) => raised(bound ?? bare ?? ''))
    .replaceAll('*', '·')
    .replace(/(?<=[A-Za-z²³])-(?=[A-Za-z])/g, '·');
}

/** A written number as it is set in print, with a true minus sign and a power of ten: −12.5, 6.5 × 10⁻⁶. */
export function numberInPrint(written: string): string {
  return written
    .replace(/^-(?=\d)/, '−')
    .replace(/^(−?[\d.]+)e(-?\d+)$/, (_, digits: string, power: string) =>
      /^−?1$/.test(digits)
        ? `${digits.slice(0, -1)}10${raised(power)}`
        : `${digits}${TIMES}10${raised(power)}`,
    );
}

/** A written quantity with a true minus sign in front of its digits: −12.5 kN, El. −3 ft; the dashes of a date stay. */
export function withTrueMinus(written: string): string {
  return written.replace(/(?<![\d\p{L}])-(?=[\d\p{Sc}])/u, '−');
}

/** A number that stands at the beginning of an entry: its sign, its digits with their groups, its decimals, a power of ten. */
const ENTERED =
  /^([+−-]?)(\d{1,3}(?:,\d{3})+|\d{1,3}(?:[ \u00a0\u2009\u202f]\d{3})+|\d+)(\.\d*)?(?:[eE]([+−-]?\d+)| ?[·x*×] ?10(?:\^\(?([+−-]?\d+)\)?|([⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)))?(?=$|[ \u00a0]?[^\d\s.,/^'"′″⁰¹²³⁴⁵⁶⁷⁸⁹-])/;

/**
 * An entry as it is set in print: the digits of its number as they were typed, grouped as all others are, with a true minus
 * sign and a power of ten. What is no plain number in front, as 3 1/2 or a date, stays as it is.
 */
export function entryInPrint(entry: string): string {
  return entry.replace(
    ENTERED,
    (_, sign: string, whole: string, decimals = '', short?: string, long?: string, high?: string) => {
      const digits = groupThousands(whole.replace(/\D/g, '')) + decimals;
      const power = (short ?? long)?.replace('−', '-').replace('+', '');
      const ten = high ?? (power === undefined ? undefined : raised(power));
      return `${sign.replace('-', '−')}${digits}${ten === undefined ? '' : `${TIMES}10${ten}`}`;
    },
  );
}

/** A number and its unit, both in print, as one: the degree sign touches its number, any other unit keeps off it. */
export function quantityInPrint(number: string, unit: string): string {
  if (unit === '') return number;
  return unit === '°' ? `${number}°` : `${number}\u00a0${unit}`;
}
