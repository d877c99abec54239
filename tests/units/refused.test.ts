import { describe, expect, test } from 'vitest';
import { readEntry, readUnit, standardUnits } from '../../src/units/index.ts';
import { REFUSED_TABLE } from '../../src/units/refused-table.ts';

/** Symbols that must be refused, with the choices that must be offered. */
const ASKED: readonly (readonly [string, ...string[]])[] = [
  ['lb', 'lbm', 'lbf'],
  ['lbs', 'lbm', 'lbf'],
  ['ton', 't', 'ST', 'LT'],
  ['tons', 't', 'ST', 'LT'],
  ['tonf', 'tf', 'STf', 'LTf'],
  ['mPa', 'MPa'],
  ['mN', 'MN'],
  ['Mm', 'mm'],
  ['KN', 'kN', 'kn'],
  ['Kip', 'kip'],
  ['KIPS', 'kip'],
  ['KPa', 'kPa'],
  ['kpa', 'kPa'],
  ['PSI', 'psi'],
  ['FT', 'ft'],
];

test.each(ASKED)('%s is refused with its choices', (symbol, ...choices) => {
  expect(standardUnits.refused.get(symbol)?.choices).toEqual(choices);
});

describe.each(REFUSED_TABLE)('$symbol', ({ symbol, choices, because }) => {
  const code = because === undefined ? 'unit-slip' : 'unit-ambiguous';

  test('is refused on its own, naming the choices', () => {
    const unit = readUnit(symbol, standardUnits);
    if (unit.ok) throw new Error('was read');
    const [only, ...others] = unit.problems;
    expect(others).toEqual([]);
    expect(only).toMatchObject({ code, from: 0, to: symbol.length });
    expect(only?.message).toContain(symbol);
    for (const choice of choices) expect(only?.hints[0]).toContain(choice);
    expect(only?.fixes.map((fix) => fix.insert)).toEqual(choices);
  });

  test('is refused behind a number', () => {
    const entry = readEntry(`12 ${symbol}`, standardUnits);
    expect(entry.ok ? [] : entry.problems.map((p) => p.code)).toEqual([code]);
  });

  test('has choices that read', () => {
    expect(choices.length).toBeGreaterThan(0);
    for (const choice of choices) {
      if (choice !== '/') expect(readUnit(choice, standardUnits).ok, choice).toBe(true);
    }
  });
});

test.each(REFUSED_TABLE.filter(({ symbol }) => /^\p{L}+$/u.test(symbol)))(
  '$symbol is refused in a compound',
  ({ symbol }) => {
    const unit = readUnit(`${symbol}/m`, standardUnits);
    expect(unit.ok ? [] : unit.problems.map((p) => [p.data.symbol, p.from, p.to])).toEqual([
      [symbol, 0, symbol.length],
    ]);
  },
);

test('no symbol is refused twice', () => {
  expect(new Set(REFUSED_TABLE.map((row) => row.symbol)).size).toBe(REFUSED_TABLE.length);
});
