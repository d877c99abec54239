import { expect, test } from 'vitest';
import { openNotebook, shareOf } from '../../src/notebook/index.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf } from '../make-book.ts';

/** The utilisation a check shows, of a table whose second and third rows have one mark. */
function shareShown(formula: string): number | undefined {
  const check = { id: 'c', kind: 'check', name: 'c', formula } as const;
  const notebook = openNotebook(
    bookOf({
      s: [
        blockOf(
          'b',
          given('n_given', '1', '-'),
          calc('n_two', 'COUNTIF(t.mark = 2)'),
          calc('n_all', 'COUNT(t.mark)'),
          calc('n_flag', 'IF(n_all > 2; 1; 0)'),
          calc('n_more', 'n_two + n_flag'),
          calc('r', 'n_two / n_all'),
          calc('a', 'b + 1'),
          calc('b', 'a - 1'),
          check,
        ),
        tableOf('t', 3, numbers('mark', '-', [1, 2, 2]), calcColumn('n_same', 'COUNTIF(t.mark = mark)')),
      ],
    }),
  );
  const verdict = notebook.verdict('s.c');
  return verdict && shareOf(verdict);
}

test.each([
  // A count, or a flag, against none or one says yes or no.
  ['MAX(t.n_same) <= 1', undefined],
  ['n_two <= 1', undefined],
  ['n_two >= 1', undefined],
  ['1 <= n_two', undefined],
  ['n_flag >= 1', undefined],
  ['n_more <= 1', undefined],
  ['COUNTIF(t.mark > 1) <= 1', undefined],
  // A count against a number that may be used up, a share, and what was entered have a utilisation.
  ['n_two <= 8', 0.25],
  ['n_two <= n_all', 2 / 3],
  ['r <= 1', 2 / 3],
  ['n_given <= 1', 1],
  ['1 <= 2', 0.5],
])('of %s, %s', (formula, share) => {
  expect(shareShown(formula)).toBe(share);
});

test('lines that lead back to themselves are no counts, and are not followed for ever', () => {
  expect(shareShown('a <= 1')).toBeUndefined();
});
