import { describe, expect, test } from 'vitest';
import { runFormula } from '../../src/cli/pages/run-formula.ts';
import { functionTable } from '../../src/language/index.ts';
import { expectValue } from './expect-value.ts';

/** The values are worked out by hand in the function table; the engine must find them. */
describe('the example of a function gives what it says', () => {
  for (const { name, example } of functionTable)
    test(`${name}: ${example.formula}`, () => {
      expect(example.formula).toMatch(new RegExp(`\\b${name}\\(`));
      const { value, problems } = runFormula(example);
      expect(problems).toEqual([]);
      expectValue(value, example.value, 1e-12);
    });
});
