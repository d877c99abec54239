import { expect, test } from 'vitest';
import { stateWords } from '../../../src/record/findings/sheet-states.ts';

test.each([
  [{ problems: 0, failing: 0, open: 0, beyond: 0, byStated: 0, checks: 0 }, '', false],
  [{ problems: 0, failing: 0, open: 0, beyond: 0, byStated: 0, checks: 3 }, 'holds', false],
  [{ problems: 0, failing: 0, open: 1, beyond: 0, byStated: 0, checks: 3 }, 'no verdict', false],
  [{ problems: 0, failing: 0, open: 0, beyond: 1, byStated: 0, checks: 3 }, 'holds, beyond range', false],
  [{ problems: 0, failing: 0, open: 0, beyond: 0, byStated: 2, checks: 3 }, 'holds by stated values', false],
  [{ problems: 0, failing: 1, open: 0, beyond: 1, byStated: 0, checks: 3 }, '1 check fails', true],
  [{ problems: 0, failing: 1, open: 1, beyond: 0, byStated: 0, checks: 3 }, '1 check fails', true],
  [{ problems: 2, failing: 0, open: 0, beyond: 0, byStated: 0, checks: 3 }, '2 problems', true],
  // A problem does not hide the checks that fail.
  [{ problems: 1, failing: 2, open: 0, beyond: 0, byStated: 0, checks: 3 }, '2 checks fail, 1 problem', true],
])('%o is told as “%s”', (state, words, bad) => {
  expect(stateWords(state, undefined)).toEqual({ words, bad });
});

test('while work is left over no verdict is said to be missing, and what fails already is told', () => {
  const open = { problems: 0, failing: 0, open: 1, beyond: 0, byStated: 0, checks: 3 };
  expect(stateWords(open, { cells: 1, isStopped: false }).words).toBe('computing');
  expect(stateWords(open, { cells: 1, isStopped: true }).words).toBe('not computed yet');
  expect(stateWords({ ...open, failing: 1 }, { cells: 1, isStopped: false }).words).toBe('1 check fails');
});
