import { expect, test } from 'vitest';
import { checkWords, linkCounts } from '../../../src/app/shell/status-words.ts';
import { problem } from '../../../src/diagnostics/index.ts';
import type { FoundCheck } from '../../../src/record/findings/findings.ts';

const facts = { on: ['s.t'], sheet: 's' };
const outOfRange = { ...problem('rests-out-of-range', { from: 0, to: 0 }, facts), data: facts };

/** Checks that hold (`h`), hold with a value beyond its range (`b`), fail (`f`), have no value (`-`), or do not apply (`n`). */
const checks = (text: string): readonly FoundCheck[] =>
  [...text].map((one) => ({
    item: {} as FoundCheck['item'],
    verdict:
      one === '-' || one === 'n'
        ? undefined
        : { holds: one === 'h' || one === 'b', ...(one === 'b' && { outOfRange }) },
    ...(one === 'n' && {
      inapplicable: problem('check-inapplicable', { from: 0, to: 0 }, { condition: 'U > 0 kN' }),
    }),
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
  ['n', '1 check does not apply'],
  ['nn', '2 checks do not apply'],
  ['hn', '1 check holds, 1 does not apply'],
  ['hfnn', '1 of 2 checks fail, 2 do not apply'],
  ['h-n', '1 of 2 checks hold, 1 without a value, 1 does not apply'],
  ['hf-', '1 of 3 checks fail, 1 without a value'],
  ['b', '0 of 1 check holds, 1 beyond a permitted range'],
  ['hb', '1 of 2 checks hold, 1 beyond a permitted range'],
  ['hbb-n', '1 of 4 checks hold, 2 beyond a permitted range, 1 without a value, 1 does not apply'],
  ['hfb', '1 of 3 checks fail, 1 holds beyond a permitted range'],
  ['hfbb', '1 of 4 checks fail, 2 hold beyond a permitted range'],
])('%s: %s', (stand, words) => {
  expect(checkWords(checks(stand))).toBe(words);
});

test.each([
  ['hh', 1, '1 of 2 checks hold, 1 only by stated values'],
  ['hhhbn', 2, '1 of 4 checks hold, 1 beyond a permitted range, 2 only by stated values, 1 does not apply'],
  ['hhf', 1, '1 of 3 checks fail, 1 holds only by stated values'],
  ['hhff', 2, '2 of 4 checks fail, 2 hold only by stated values'],
])('%s, %i of them only by stated values: %s', (stand, byStated, words) => {
  expect(checkWords(checks(stand), 'done', byStated)).toBe(words);
});

test.each([
  ['--', '2 checks not computed yet'],
  ['-n', '1 check not computed yet, 1 does not apply'],
  ['h-', '1 of 2 checks hold, 1 not computed yet'],
  ['f-', '1 of 2 checks fail, 1 not computed yet'],
  ['hh', '2 checks hold'],
])('while work is left over, %s: %s', (stand, words) => {
  expect(checkWords(checks(stand), 'left over')).toBe(words);
});

test.each([
  [0, 0, 0, ''],
  [0, 0, 3, '3 linked'],
  [0, 7, 3, '7 to be linked'],
  [2, 0, 3, '2 broken links, wrong'],
  [1, 7, 3, '1 broken link, wrong; 7 to be linked'],
])('%i broken, %i open, %i linked: %s', (broken, open, linked, words) => {
  const counts = linkCounts({ broken, open, linked });
  expect(counts.map(({ words, isBad }) => `${words}${isBad ? ', wrong' : ''}`).join('; ')).toBe(words);
});
