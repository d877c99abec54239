import { expect, test } from 'vitest';
import { readUnit, standardUnits, unitInSystem } from '../../src/units/index.ts';

function shown(text: string, system: 'SI' | 'US'): string {
  const unit = readUnit(text, standardUnits);
  if (!unit.ok) throw new Error(`${text} is no unit`);
  return unitInSystem(unit.value, system, standardUnits).text;
}

// Common practice, no source: what drawings, steel tables and price lists of either system are written in.
test.each([
  ['mm', 'in'],
  ['m', 'ft'],
  ['mm^3', 'in^3'],
  ['cm^4', 'in^4'],
  ['m^2', 'ft^2'],
  ['MPa', 'ksi'],
  ['GPa', 'ksi'],
  ['N/mm^2', 'ksi'],
  ['t', 'ST'],
  ['kN', 'kip'],
  ['N', 'lbf'],
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
