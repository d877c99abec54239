import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { type FormulaToRun, type RunValue, runFormula } from '../../src/cli/pages/run-formula.ts';
import { readProjectFile } from '../architecture/project-files.ts';
import { expectValue } from './expect-value.ts';

/**
 * A case: a formula over givens (a list of entries is a column) gives `value` in `unit`, or is refused, on reading,
 * checking or computing. `within` names the table whose column the formula is; its value is then a list, `null` where
 * a row has no value. `by` works the value out in plain numbers, for mathjs to compute.
 */
type CaseValue = Exclude<RunValue, undefined> | null;

interface Case extends Omit<FormulaToRun, 'unit'> {
  readonly unit: string | null;
  readonly value?: CaseValue | readonly CaseValue[];
  readonly by?: string;
  readonly tolerance?: number;
  readonly refused?: boolean;
  /** The code of the first problem of a refused case. */
  readonly code?: string;
  readonly note?: string;
}

function readCases(file: string): readonly Case[] {
  return JSON.parse(readProjectFile(`tests/language/${file}`)) as Case[];
}

for (const file of ['acceptance.json', 'acceptance-own.json'])
  describe(file, () => {
    for (const [
      at,
      { unit, value, tolerance = 1e-9, refused = false, code, by, note, ...formula },
    ] of readCases(file).entries())
      test(`${at + 1}: ${formula.formula}${note === undefined ? '' : ` (${note})`}`, () => {
        const run = runFormula({ ...formula, ...(unit !== null && { unit }) });
        if (refused) {
          const errors = run.problems.filter((found) => found.severity === 'error');
          expect(errors).not.toEqual([]);
          if (code !== undefined) expect(errors[0]?.code).toBe(code);
          expect([run.value].flat().filter((found) => found !== undefined)).toEqual([]);
          return;
        }
        expect(value, 'a case without an expectation').toBeDefined();
        if (![value].flat().includes(null)) expect(run.problems).toEqual([]);
        if (by !== undefined) expectValue(evaluate(by), value, 1e-12);
        expectValue(run.value, value, tolerance);
      });
  });
