import { expect, test } from 'vitest';
import { entryInPrint, numberInPrint, quantityInPrint, unitInPrint } from '../../src/units/index.ts';

test.each([
  ['kip-ft', 'kip·ft'],
  ['kN*m', 'kN·m'],
  ['lbf/ft^2', 'lbf/ft²'],
  ['m^-1', 'm⁻¹'],
  ['kN/m3', 'kN/m³'],
  ['in.2', 'in.²'],
  ['kJ/(m2·s)', 'kJ/(m²·s)'],
  ['m^12', 'm¹²'],
  ['kN^2/m', 'kN²/m'],
  ['kN^(-2)/m^4', 'kN⁻²/m⁴'],
  ['kN^5/(m^7*s)', 'kN⁵/(m⁷·s)'],
  ['m^(1/2)', 'm^(1/2)'],
  ['deg', '°'],
  ['degF', '°F'],
  ['%', '%'],
  ['-', ''],
])('the unit %s is printed %s', (written, printed) => {
  expect(unitInPrint(written)).toBe(printed);
});

test.each([
  ['-43.28', '−43.28'],
  ['6.5e-6', '6.5\u202f×\u202f10⁻⁶'],
  ['-2.1e12', '−2.1\u202f×\u202f10¹²'],
  ['1e-6', '10⁻⁶'],
  ['-1e-6', '−10⁻⁶'],
  ['2026-11-25', '2026-11-25'],
  ['no value', 'no value'],
])('the number %s is printed %s', (written, printed) => {
  expect(numberInPrint(written)).toBe(printed);
});

test('a degree sign touches its number, and no other unit is parted from its number by a line end', () => {
  expect(quantityInPrint('84', '°')).toBe('84°');
  expect(quantityInPrint('20', '°C')).toBe('20\u00a0°C');
  expect(quantityInPrint('5', '%')).toBe('5\u00a0%');
  expect(quantityInPrint('5', '')).toBe('5');
});

test.each([
  ['12000', '12\u202f000'],
  ['9999', '9999'],
  ['1,200', '1200'],
  ['12,000.50', '12\u202f000.50'],
  ['12 000', '12\u202f000'],
  ['-0.250', '−0.250'],
  ['+3', '+3'],
  ['1.5e3', '1.5\u202f×\u202f10³'],
  ['1.50E-6 K^-1', '1.50\u202f×\u202f10⁻⁶ K^-1'],
  ['14.33*10^9 mm^4', '14.33\u202f×\u202f10⁹ mm^4'],
  ['14.33 × 10⁹', '14.33\u202f×\u202f10⁹'],
  ['12000 lbf/ft2', '12\u202f000 lbf/ft2'],
  ['100,000 t', '100\u202f000 t'],
  ['29000ksi', '29\u202f000ksi'],
  // Whatever is no plain number in front stays as it was typed.
  ['2026-11-25', '2026-11-25'],
  ['12345/16', '12345/16'],
  ['12345 1/2', '12345 1/2'],
  ["12'-6", "12'-6"],
  ['12000 ft 6 in', '12\u202f000 ft 6 in'],
  ['12,5', '12,5'],
  ['1,2345', '1,2345'],
  ['PZ-12000', 'PZ-12000'],
  ['El. +12', 'El. +12'],
  ['', ''],
])('the entry %s is printed %s', (entry, printed) => {
  expect(entryInPrint(entry)).toBe(printed);
});
