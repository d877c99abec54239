import { expect, test } from 'vitest';
import { describeInsertion, insertionLabel } from '../../../../src/app/editing/lines/describe-insertion.ts';

test.each([
  [insertionLabel('paste', 5000), '5000 rows pasted'],
  [insertionLabel('paste', 1), '1 row pasted'],
  [insertionLabel('paste', 5, { fresh: 2 }), '5 rows (2 of them new) pasted'],
  [insertionLabel('paste', 2, { fresh: 2 }), '2 rows pasted'],
  [
    insertionLabel('paste', 5, { fresh: 2, kept: 3 }),
    '5 rows (2 of them new) pasted; 3 other columns keep what was there',
  ],
  [insertionLabel('paste', 1, { kept: 1 }), '1 row pasted; 1 other column keeps what was there'],
  [insertionLabel('take', 3), '3 rows taken'],
  [insertionLabel('add', 3), '3 rows added'],
  ['paste a cell', undefined],
  [insertionLabel('paste', 3, { account: '6 cells: 6 taken' }), '3 rows pasted; 6 cells: 6 taken'],
  [insertionLabel('paste', 3, { what: 'line' }), '3 lines pasted'],
  ['paste 3 lines', '3 lines pasted'],
  ['insert rows', undefined],
])('of “%s” is told: %s', (label, words) => {
  expect(describeInsertion({ label, patches: [] })).toBe(words);
});
