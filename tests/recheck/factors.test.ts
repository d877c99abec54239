import { expect, test } from 'vitest';
import { factorReader } from '../../src/recheck/unit-factor.ts';
import { extendUnits, readUnit, standardUnits, type UnitRegistry } from '../../src/units/index.ts';
import { randomFrom } from './random.ts';
import { factorsSource } from './ucum-factors.ts';

const SEED = 20_261_125;
const definitions = [
  { symbol: 'shift', definition: '10 h' },
  { symbol: 'wd', definition: '1 shift' },
  { symbol: 'bag', definition: '94 lbm' },
  { symbol: 'bcy', definition: 'base' },
];

function extended(): UnitRegistry {
  const found = extendUnits(standardUnits, { units: definitions, datums: ['QUAY'] });
  if (!found.ok) throw new Error(found.problems.map(({ message }) => message).join('; '));
  return found.value;
}

const registry = extended();
const factorOf = factorReader(definitions);

/** Expects the independent factor of a unit text to be the registry's. */
function expectSame(text: string): void {
  const unit = readUnit(text, registry);
  if (!unit.ok) throw new Error(`no unit ${text}: ${unit.problems[0]?.message}`);
  const found = factorOf(unit.value);
  expect(found, text).toBeDefined();
  expect(Math.abs((found?.factor ?? 0) / unit.value.factor - 1), text).toBeLessThan(1e-14);
  expect(Math.abs((found?.offset ?? 0) - unit.value.offset), text).toBeLessThan(1e-12);
}

test('the table of factors is what UCUM gives today', async () => {
  await expect(factorsSource()).toMatchFileSnapshot('../../src/recheck/factors.ts');
});

test('every symbol of the registry, and every unit of the book, has the same factor from UCUM', () => {
  const symbols = [...registry.units.keys()];
  expect(symbols.length).toBeGreaterThan(200);
  for (const symbol of symbols) expectSame(symbol);
});

test.each([
  'kN·m',
  'kip-ft',
  'lbf/ft^2',
  'm²',
  '1/s',
  'kN/(m·s)',
  'm^(1/2)',
  'kg/m³',
  'ft⁻¹',
  'USD/cy',
  '$/bcy',
  'W/(m^2·K)',
  'ft MLLW',
  'El. ft',
  'm QUAY',
  'date',
  '',
  '-',
  'bag/cy',
  'lbf·s^2/ft^4',
])('the compound "%s" has the same factor by both readers', expectSame);

test('random compounds have the same factor by both readers', () => {
  console.log(`recheck: random units start from seed ${SEED}`);
  const { pick, below, oneIn } = randomFrom(SEED);
  const symbols = [...registry.units.keys()].filter((symbol) => !/^[°Δ℃℉%]|deg[CF]|\.$/u.test(symbol));
  const factor = (): string => pick(symbols) + (oneIn(2) ? '' : pick(['^2', '²', '^-1', '^3', '^(1/2)']));
  let read = 0;
  for (let trial = 0; trial < 2000; trial += 1) {
    const above = Array.from({ length: 1 + below(2) }, factor).join(pick(['·', '-', ' ', '*']));
    const beneath = oneIn(2) ? '' : oneIn(2) ? `/${factor()}` : `/(${factor()}·${factor()})`;
    const unit = readUnit(above + beneath, registry);
    if (!unit.ok || unit.value.point !== undefined) continue;
    read += 1;
    expectSame(above + beneath);
  }
  expect(read).toBeGreaterThan(1000);
});

test('a unit of symbols nobody knows here has no factor', () => {
  const foot = readUnit('ft', registry);
  if (!foot.ok) throw new Error('no unit ft');
  expect(factorOf({ ...foot.value, text: 'furlong' })).toBeUndefined();
  expect(factorOf({ ...foot.value, text: 'kN/furlong' })).toBeUndefined();
});
