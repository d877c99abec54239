import { withPowerSigns } from './bare-powers.ts';

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
        : `${digits}\u202f×\u202f10${raised(power)}`,
    );
}

/** A number and its unit, both in print, as one: the degree sign touches its number, any other unit keeps off it. */
export function quantityInPrint(number: string, unit: string): string {
  if (unit === '') return number;
  return unit === '°' ? `${number}°` : `${number}\u00a0${unit}`;
}
