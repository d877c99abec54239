import { expect, test } from 'vitest';
import type { FoundCheck } from '../../../src/app/findings/findings.ts';
import { checkWords } from '../../../src/app/shell/status-words.ts';

/** Checks that hold (`h`), fail (`f`), or have no value (`-`). */
const checks = (text: string): readonly FoundCheck[] =>
  [...text].map((one) => ({
    item: {} as FoundCheck['item'],
    verdict: one === '-' ? undefined : { holds: one === 'h' },
  }));

test.each([
  ['', 'no checks'],
  ['h', '1 check holds'],
  ['hh', '2 checks hold'],
  ['hf', '1 of 2 checks fail'],
  ['ff', '2 of 2 checks fail'],
  ['h-', '1 of 2 checks hold, 1 without a value'],
  ['f', '1 of 1 check fails'],
  ['-', '0 of 1 check holds, 1 without a value'],
  ['--', '0 of 2 checks hold, 2 without a value'],
  ['hf-', '1 of 3 checks fail, 1 without a value'],
])('%s: %s', (stand, words) => {
  expect(checkWords(checks(stand))).toBe(words);
});
