import { expect, test } from 'vitest';
import { extendUnits, readEntry, readUnit, standardUnits, type UnitRegistry } from '../../src/units/index.ts';
import { BAD_EXTENSIONS } from './bad-extensions.ts';

test('a book defines units of known ones, of its own, and base units', () => {
  const book = extend({
    units: [
      { symbol: 'shift', definition: '10 h' },
      { symbol: 'wd', definition: '1 shift' },
      { symbol: 'bcy', definition: 'base' },
      { symbol: 'lcy', definition: 'base' },
      { symbol: 'load', definition: '12 1/2 cy' },
      { symbol: 'turn', definition: '360 deg' },
      { symbol: 'dozen', definition: '12 ea' },
    ],
  });
  expect(unitIn('shift', book)).toMatchObject({ factor: 36_000, dimension: { key: 'T' }, angle: false });
  expect(unitIn('wd', book)).toMatchObject({ factor: 36_000, dimension: { key: 'T' } });
  expect(unitIn('lcy/bcy', book).dimension.key).toBe('bcy^-1 lcy');
  expect(unitIn('load', book).factor).toBeCloseTo(12.5 * 0.764554857984, 14);
  expect(unitIn('turn', book)).toMatchObject({ angle: true, factor: 2 * Math.PI });
  expect(unitIn('dozen', book)).toMatchObject({ factor: 12, dimension: { key: '' } });
  expect(book.infos.get('shift')?.name).toBe('shift = 10 h');
});

test('a factor between two base units is a quantity of its own', () => {
  const book = extend({
    units: [
      { symbol: 'bcy', definition: 'base' },
      { symbol: 'lcy', definition: 'base' },
    ],
  });
  const swell = readEntry('1.25 lcy/bcy', book, unitIn('lcy/bcy', book));
  expect(swell.ok && swell.value).toMatchObject({ kind: 'number', si: 1.25 });
  const wrong = readEntry('100 bcy', book, unitIn('lcy', book));
  expect(wrong.ok ? [] : wrong.problems.map((p) => p.code)).toEqual(['entry-unit-mismatch']);
});

test('a book has datums and a currency of its own', () => {
  const book = extend({ datums: ['PD', 'MLLW'], currency: 'EUR' });
  expect(unitIn('m PD', book).point).toBe('elevation:PD');
  expect(unitIn('$/m', book).dimension.key).toBe('L^-1 EUR');
  expect(book.currency).toBe('EUR');
  expect(unitIn('USD', book).dimension.key).toBe('USD');
});

test('an extension can be extended, and the registry it came from is as it was', () => {
  const before = standardUnits.units.size;
  const first = extend({ units: [{ symbol: 'shift', definition: '10 h' }], currency: 'EUR' });
  const second = extendUnits(first, { units: [{ symbol: 'wd', definition: '2 shift' }] });
  expect(second.ok && second.value.currency).toBe('EUR');
  expect(second.ok && unitIn('wd', second.value).factor).toBe(72_000);
  expect(first.units.has('wd')).toBe(false);
  expect(standardUnits.units.size).toBe(before);
  expect(readUnit('shift', standardUnits).ok).toBe(false);
  expect(unitIn('$', standardUnits).dimension.key).toBe('USD');
});

test.each(BAD_EXTENSIONS)('$says is refused', ({ extension, codes }) => {
  const registry = extendUnits(standardUnits, extension);
  expect(registry.ok ? [] : registry.problems.map((p) => p.code)).toEqual(codes);
});

test('all problems are found at once', () => {
  const registry = extendUnits(standardUnits, {
    units: [
      { symbol: 'ft', definition: '1 m' },
      { symbol: 'good', definition: '1 m' },
      { symbol: 'bad', definition: 'none' },
    ],
    datums: ['a b'],
    currency: 'usd',
  });
  expect(registry.ok ? [] : registry.problems.map((p) => p.code)).toEqual([
    'define-currency',
    'define-datum',
    'define-taken',
    'define-size',
  ]);
});

function extend(extension: Parameters<typeof extendUnits>[1]): UnitRegistry {
  const registry = extendUnits(standardUnits, extension);
  if (!registry.ok) throw new Error(registry.problems.map((p) => p.message).join('; '));
  return registry.value;
}

function unitIn(text: string, registry: UnitRegistry) {
  const unit = readUnit(text, registry);
  if (!unit.ok) throw new Error(`no unit ${text}`);
  return unit.value;
}

test('a volume in a state that the book has a unit for is offered in that unit', () => {
  const book = extendUnits(standardUnits, { units: [{ symbol: 'bcy', definition: 'base' }] });
  if (!book.ok) throw new Error('the unit is none');
  const read = readUnit('BCY', book.value);
  expect(read.ok ? [] : read.problems[0]).toMatchObject({
    hints: ['did you mean “bcy”?'],
    fixes: [{ insert: 'bcy' }],
  });
});
