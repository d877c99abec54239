import { expect, test } from 'vitest';
import { putIn, putInLabel } from '../../../src/app/editing/put-in.ts';

test.each([
  [putInLabel('paste', 5000), '5000 rows pasted'],
  [putInLabel('paste', 1), '1 row pasted'],
  [putInLabel('paste', 5, { fresh: 2 }), '5 rows (2 of them new) pasted'],
  [putInLabel('paste', 2, { fresh: 2 }), '2 rows pasted'],
  [
    putInLabel('paste', 5, { fresh: 2, kept: 3 }),
    '5 rows (2 of them new) pasted; 3 other columns keep what was there',
  ],
  [putInLabel('paste', 1, { kept: 1 }), '1 row pasted; 1 other column keeps what was there'],
  [putInLabel('take', 3), '3 rows taken'],
  [putInLabel('add', 3), '3 rows added'],
  ['paste a cell', undefined],
  [putInLabel('paste', 3, { account: '6 cells: 6 taken' }), '3 rows pasted; 6 cells: 6 taken'],
  [putInLabel('paste', 3, { what: 'line' }), '3 lines pasted'],
  ['paste 3 lines', '3 lines pasted'],
  ['insert rows', undefined],
])('of “%s” is told: %s', (label, words) => {
  expect(putIn({ label, patches: [] })).toBe(words);
});
