import { expect, test } from 'vitest';
import { readUnit, standardUnits, toSI, type Unit } from '../../src/units/index.ts';
import { UNIT_TABLE } from '../../src/units/unit-table.ts';
import { NIST_SP_811 } from './nist-sp811.ts';

// The longest figures of the reference have 15 digits, and a factor is at most three roundings from exact.
const FULL_TOLERANCE = 5e-15;

test.each(NIST_SP_811)('$unit is NIST SP 811, App. B.8', ({ unit, full, printed }) => {
  const { factor } = unitOf(unit);
  expect(Math.abs(factor - full) / full).toBeLessThanOrEqual(FULL_TOLERANCE);
  if (printed === undefined) return;
  const digits = printed
    .replace(/e.*/, '')
    .replace(/^0\.0*/, '')
    .replace('.', '').length;
  expect(Number(factor.toPrecision(Math.min(digits, 7)))).toBe(Number(printed));
});

test('every unit of the registry is in the table of factors', () => {
  const listed = new Set(NIST_SP_811.map(({ unit }) => unit));
  const missing = UNIT_TABLE.filter((row) => row.point === undefined && !listed.has(row.symbol));
  expect(missing.map((row) => row.symbol)).toEqual([]);
});

test('the acre is the international one, 4.0 parts in 10^6 below the survey acre App. B.8 prints', () => {
  const survey = 4046.872609874252;
  expect(survey / unitOf('ac').factor - 1).toBeCloseTo(4.0e-6, 7);
  expect(Number(unitOf('ac').factor.toPrecision(7))).not.toBe(4046.873);
});

test.each([
  // NIST SP 811, App. B.8: T/K = (t/°F + 459.67)/1.8 and t/°C + 273.15.
  { text: 'degF', x: 32, kelvin: 273.15 },
  { text: 'degF', x: 212, kelvin: 373.15 },
  { text: 'degF', x: -459.67, kelvin: 0 },
  { text: 'degF', x: -40, kelvin: 233.15 },
  { text: 'degC', x: -40, kelvin: 233.15 },
  { text: 'degC', x: 0, kelvin: 273.15 },
])('$x $text is $kelvin K', ({ text, x, kelvin }) => {
  expect(toSI(x, unitOf(text))).toBeCloseTo(kelvin, 10);
});

test('an alias is the same unit under another name', () => {
  for (const row of UNIT_TABLE) {
    for (const alias of row.aliases ?? [])
      expect({ ...unitOf(alias), text: row.symbol }).toEqual(unitOf(row.symbol));
  }
});

test('no symbol stands twice, and none is both known and refused', () => {
  const symbols = UNIT_TABLE.flatMap((row) => [row.symbol, ...(row.aliases ?? [])]);
  expect(new Set(symbols).size).toBe(symbols.length);
  expect([...standardUnits.units.keys()].filter((symbol) => standardUnits.refused.has(symbol))).toEqual([]);
});

test('a mass and its counterpart differ by standard gravity', () => {
  const masses = UNIT_TABLE.filter((row) => row.dimension === 'M' && row.counterpart !== undefined);
  expect(masses.length).toBeGreaterThanOrEqual(5);
  for (const { symbol, counterpart = '' } of masses) {
    expect(unitOf(counterpart).factor / unitOf(symbol).factor).toBeCloseTo(9.80665, 12);
    expect(standardUnits.infos.get(counterpart)?.counterpart).toBe(symbol);
  }
});

function unitOf(text: string): Unit {
  const unit = readUnit(text, standardUnits);
  if (!unit.ok) throw new Error(`no unit ${text}`);
  return unit.value;
}
