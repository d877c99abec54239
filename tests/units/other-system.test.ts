import { expect, test } from 'vitest';
import { extendUnits, readUnit, standardUnits, unitInSystem } from '../../src/units/index.ts';

function shown(text: string, system: 'SI' | 'US', registry = standardUnits): string {
  const unit = readUnit(text, registry);
  if (!unit.ok) throw new Error(`${text} is no unit`);
  return unitInSystem(unit.value, system, registry).text;
}

// Common practice, no source: what drawings, steel tables and price lists of either system are written in.
test.each([
  ['mm', 'in'],
  ['m', 'ft'],
  ['mm^3', 'in^3'],
  ['cm^4', 'in^4'],
  ['m^2', 'ft^2'],
  ['Pa', 'psf'],
  ['kPa', 'ksf'],
  ['MPa', 'ksi'],
  ['GPa', 'ksi'],
  ['N/mm^2', 'ksi'],
  ['t', 'ST'],
  ['kN', 'kip'],
  ['N', 'lbf'],
  ['km', 'mi'],
  ['km/h', 'mph'],
  ['m^3/h', 'cy/h'],
  ['m^2/h', 'sf/h'],
  ['USD/m^2', 'USD/sf'],
  ['USD/t', 'USD/ST'],
])('%s is read in %s in US units', (si, us) => {
  expect(shown(si, 'US')).toBe(us);
});

test.each([
  ['in', 'mm'],
  ['ft', 'm'],
  ['in^3', 'mm^3'],
  ['psi', 'MPa'],
  ['ksi', 'MPa'],
  ['ST', 't'],
  ['LT', 't'],
  ['kip', 'kN'],
  ['cy', 'm^3'],
  ['mi', 'km'],
  ['mph', 'km/h'],
  ['cy/h', 'm^3/h'],
  ['h/cy', 'h/m^3'],
  ['sf/h', 'm^2/h'],
  ['USD/sf', 'USD/m^2'],
  ['USD/ST', 'USD/t'],
  ['USD/mi', 'USD/km'],
])('%s is read in %s in SI', (us, si) => {
  expect(shown(us, 'SI')).toBe(si);
});

test.each([
  ['mm', 'SI'],
  ['kN·m', 'SI'],
  ['MPa', 'SI'],
  ['t', 'SI'],
  ['in^3', 'US'],
  ['kip-ft', 'US'],
  ['deg', 'US'],
  ['%', 'SI'],
  ['h', 'US'],
  ['USD/h', 'SI'],
] as const)('%s stays in %s', (text, system) => {
  expect(shown(text, system)).toBe(text);
});

test('units of a book go with those of the other system that it has', () => {
  const extended = extendUnits(standardUnits, {
    units: [
      { symbol: 'lcy', definition: 'base', system: 'US' },
      { symbol: 'bcy', definition: 'base', system: 'US' },
      { symbol: 'lcm', definition: '1.3079506193143922 lcy', system: 'SI' },
      { symbol: 'shift', definition: '8 h' },
    ],
  });
  if (!extended.ok) throw new Error('the units do not read');
  const pairs = [
    ['lcy', 'lcm'],
    ['lcy/h', 'lcm/h'],
    ['USD/lcy', 'USD/lcm'],
    ['lbm/lcy', 'kg/lcm'],
    ['ST/lcy', 't/lcm'],
    ['lcy/shift', 'lcm/shift'],
  ] as const;
  for (const [us, si] of pairs) {
    expect(shown(us, 'SI', extended.value)).toBe(si);
    expect(shown(us, 'US', extended.value)).toBe(us);
    expect(shown(si, 'SI', extended.value)).toBe(si);
  }
  expect(shown('lcm/h', 'US', extended.value)).toBe('lcy/h');
  // Bank yards have no counterpart in this book.
  expect(shown('bcy/h', 'SI', extended.value)).toBe('bcy/h');
});

test('the dimension never changes, in either system', () => {
  for (const { symbol } of standardUnits.infos.values()) {
    const unit = readUnit(symbol, standardUnits);
    if (!unit.ok || unit.value.point !== undefined) continue;
    for (const system of ['SI', 'US'] as const)
      expect(unitInSystem(unit.value, system, standardUnits).dimension.key, symbol).toBe(
        unit.value.dimension.key,
      );
  }
});

test('an elevation is read in the other system over its own datum, a temperature as one, a date as it is', () => {
  const extended = extendUnits(standardUnits, { datums: ['MLLW'] });
  if (!extended.ok) throw new Error('the datum is refused');
  const point = (text: string, system: 'SI' | 'US') => shown(text, system, extended.value);
  expect([point('ft MLLW', 'SI'), point('El. ft', 'SI'), point('in MLLW', 'SI')]).toEqual([
    'm MLLW',
    'El. m',
    'mm MLLW',
  ]);
  expect([point('m MLLW', 'US'), point('m MLLW', 'SI'), point('ft MLLW', 'US')]).toEqual([
    'ft MLLW',
    'm MLLW',
    'ft MLLW',
  ]);
  expect([point('degF', 'SI'), point('degC', 'US'), point('degC', 'SI')]).toEqual(['degC', 'degF', 'degC']);
  expect([point('date', 'SI'), point('date', 'US')]).toEqual(['date', 'date']);
});
