import { expect, test } from 'vitest';
import { describeInsertion, insertionLabel } from '../../../../src/app/editing/lines/describe-insertion.ts';

test.each([
  [insertionLabel('paste', 5000), '5000 rows pasted'],
  [insertionLabel('paste', 1), '1 row pasted'],
  [insertionLabel('paste', 5, { fresh: 2 }), '5 rows (2 of them new) pasted'],
  [insertionLabel('paste', 2, { fresh: 2 }), '2 rows pasted'],
  [
    insertionLabel('paste', 5, { fresh: 2, kept: ['rate', 'waste', 'crew'] }),
    '5 rows (2 of them new) pasted; “rate”, “waste” and “crew” keep what was there',
  ],
  [insertionLabel('paste', 1, { kept: ['rate'] }), '1 row pasted; “rate” keeps what was there'],
  [
    insertionLabel('paste', 1, { kept: ['a', 'b', 'c', 'd', 'e', 'f'] }),
    '1 row pasted; “a”, “b”, “c”, “d” and 2 more keep what was there',
  ],
  [insertionLabel('paste', 3, { below: ['a', 'b'] }), '3 rows pasted; 2 rows below stay'],
  [
    insertionLabel('paste', 3, { kept: ['rate'], below: ['a'] }),
    '3 rows pasted; “rate” keeps what was there; 1 row below stays',
  ],
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
