import { expect, test } from 'vitest';
import { checkFormula, parseFormula } from '../../src/language/index.ts';
import { formulaMath } from '../../src/record/index.ts';
import { extendUnits, preferredUnit, readEntry, readUnit, standardUnits } from '../../src/units/index.ts';
import { fixtureScope } from './fixture-scope.ts';

/** What every object has by inheritance: no table may find it under these names. */
const inherited = ['toString', 'constructor', '__proto__', 'hasOwnProperty', 'valueOf', 'isPrototypeOf'];

test.each(inherited)('%s is no sign, no function, no unit and no name', (word) => {
  const scope = fixtureScope({ b: 'ft' });
  for (const formula of [
    `5 m ${word} 2 m`,
    `5 ${word}`,
    `${word}(3)`,
    `${word} + b`,
    `b ${word} b`,
    `b.${word}`,
    `${word}.b`,
    `ROUND(2; ${word})`,
  ]) {
    const parsed = parseFormula(formula);
    const { problems } = checkFormula(parsed, scope);
    expect([...parsed.problems, ...problems].length, formula).toBeGreaterThan(0);
    expect(() => formulaMath(parsed.syntax)).not.toThrow();
  }
  expect(readUnit(word, standardUnits).ok).toBe(false);
  expect(readEntry(`5 ${word}`, standardUnits).ok).toBe(false);
});

test.each(['toString', 'constructor', 'valueOf'])('a book may call its own unit %s', (word) => {
  const registry = extendUnits(standardUnits, { units: [{ symbol: word, definition: 'base' }] });
  if (!registry.ok) throw new Error(registry.problems[0]?.message);
  const unit = readUnit(word, registry.value);
  if (!unit.ok) throw new Error(unit.problems[0]?.message);
  for (const system of ['SI', 'US'] as const)
    expect(preferredUnit(unit.value.dimension, false, system, registry.value)?.text).toBe(word);
});
