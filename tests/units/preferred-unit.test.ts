import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  baseDimension,
  type Dimension,
  extendUnits,
  PLAIN,
  powerDimension,
  preferredUnit,
  quantityName,
  rational,
  readUnit,
  standardUnits,
  suggestUnits,
  timesDimension,
  type UnitRegistry,
} from '../../src/units/index.ts';
import { QUANTITY_TABLE } from '../../src/units/quantity-table.ts';
import { unitOf } from './arbitrary.ts';
import { PATIENCE, SEED } from './seed.ts';

const book = bookUnits();

test.each([
  // What is measured, in SI, in US customary.
  ['mm', 'm', 'ft'],
  ['in^2', 'm^2', 'ft^2'],
  ['cy', 'm^3', 'ft^3'],
  ['in^4', 'mm^4', 'in^4'],
  ['kg', 'kg', 'lbm'],
  ['N', 'kN', 'kip'],
  ['N·m', 'kN·m', 'kip·ft'],
  ['N/m', 'kN/m', 'kip/ft'],
  ['Pa', 'kPa', 'psi'],
  ['pcf', 'kN/m^3', 'pcf'],
  ['lbm/ft^3', 'kg/m^3', 'lbm/ft^3'],
  ['kn', 'm/s', 'ft/s'],
  ['m/s^2', 'm/s^2', 'ft/s^2'],
  ['hp', 'kW', 'hp'],
  ['kip·in^2', 'kN·m^2', 'kip·ft^2'],
  ['K', 'K', 'ΔdegF'],
  ['1/K', '1/K', '1/degF'],
  ['h', 's', 's'],
  ['gal/min', 'm^3/h', 'cy/h'],
  ['%', '', ''],
  ['rad', 'deg', 'deg'],
  ['$', 'EUR', 'EUR'],
  ['$/cy', 'EUR/m^3', 'EUR/cy'],
  ['$/m', 'EUR/m', 'EUR/lf'],
  ['$/m^2', 'EUR/m^2', 'EUR/sf'],
  ['$/t', 'EUR/t', 'EUR/ST'],
  ['$/d', 'EUR/h', 'EUR/h'],
  ['$/bcy', 'EUR/bcy', 'EUR/bcy'],
  ['lcy/bcy', 'lcy/bcy', 'lcy/bcy'],
  ['bcy/min', 'bcy/h', 'bcy/h'],
  ['kN/m^4', 'kN/m^4', 'kip/ft^4'],
  ['kg·m^2', 'kg·m^2', 'lbm·ft^2'],
  ['psi^(1/2)', 'kN^(1/2)/m', 'kip^(1/2)/ft'],
] as const)('%s is written in %s or %s', (text, si, us) => {
  const unit = readUnit(text, book);
  if (!unit.ok) throw new Error(`no unit ${text}`);
  const { dimension, angle } = unit.value;
  expect(preferredUnit(dimension, angle, 'SI', book).text).toBe(si);
  expect(preferredUnit(dimension, angle, 'US', book).text).toBe(us);
});

test('every unit of the table of quantities reads, and has the dimension of its row', () => {
  for (const row of QUANTITY_TABLE) {
    for (const text of [row.SI, row.US, ...(row.also ?? []), ...(row.per ? [row.per.SI, row.per.US] : [])]) {
      expect(unitOf(text).dimension.key, text).toBe(row.dimension);
      expect(unitOf(text).angle, text).toBe(row.angle ?? false);
    }
  }
  expect(new Set(QUANTITY_TABLE.map((row) => row.name)).size).toBe(QUANTITY_TABLE.length);
});

test(
  'the preferred unit of any dimension has that dimension, and is no point',
  () => {
    const anyPower = fc
      .tuple(fc.integer({ min: -99, max: 99 }), fc.constantFrom(1, 1, 1, 2, 3))
      .map(([n, d]) => rational(n, d));
    const small = fc.integer({ min: -3, max: 3 }).map((n) => rational(n));
    const anyDimension = fc
      .array(
        fc.tuple(fc.constantFrom('L', 'M', 'T', 'Θ', 'USD', 'bcy', 'lcy'), fc.oneof(small, small, anyPower)),
        { maxLength: 5 },
      )
      .map((powers) => new Map(powers))
      .map((powers) =>
        [...powers].reduce<Dimension>(
          (d, [base, p]) => timesDimension(d, powerDimension(baseDimension(base), p)),
          PLAIN,
        ),
      );
    fc.assert(
      fc.property(anyDimension, fc.constantFrom('SI' as const, 'US' as const), (dimension, system) => {
        const unit = preferredUnit(dimension, false, system, book);
        expect(unit.dimension.key).toBe(dimension.key);
        expect(unit.point).toBeUndefined();
        expect(unit.factor > 0 && Number.isFinite(unit.factor)).toBe(true);
        const suggested = suggestUnits(dimension, false, book);
        expect(suggested.every((one) => one.dimension.key === dimension.key)).toBe(true);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  },
  PATIENCE,
);

test('suggestions start with the preferred units and repeat none', () => {
  const texts = suggestUnits(unitOf('ft').dimension, false, standardUnits).map((unit) => unit.text);
  expect(texts.slice(0, 2)).toEqual(['m', 'ft']);
  expect(texts).toContain('nmi');
  expect(new Set(texts).size).toBe(texts.length);
  expect(suggestUnits(PLAIN, true, standardUnits).map((unit) => unit.text)).toEqual(['deg', 'rad']);
});

test('a suggestion list has the units of the book', () => {
  const bcy = readUnit('bcy', book);
  if (!bcy.ok) throw new Error('no bcy');
  expect(suggestUnits(bcy.value.dimension, false, book).map((unit) => unit.text)).toEqual(['bcy']);
});

test.each([
  ['kip', 'a force'],
  ['%', 'a plain number'],
  ['deg', 'an angle'],
  ['USD', 'an amount of money in USD'],
  ['USD/cy', 'a price or rate in USD'],
  ['USD^2', 'a quantity'],
  ['m^7', 'a quantity'],
])('%s measures %s', (text, name) => {
  const { dimension, angle } = unitOf(text);
  expect(quantityName(dimension, angle)).toBe(name);
});

function bookUnits(): UnitRegistry {
  const registry = extendUnits(standardUnits, {
    units: [
      { symbol: 'bcy', definition: 'base' },
      { symbol: 'lcy', definition: 'base' },
    ],
    currency: 'EUR',
  });
  if (!registry.ok) throw new Error('no registry');
  return registry.value;
}
