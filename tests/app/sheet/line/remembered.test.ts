import { expect, test } from 'vitest';
import { marginReference } from '../../../../src/app/sheet/line/remembered.ts';

const kind = 'from memory';

test.each([
  ['from memory', { words: '', kind }],
  ['common practice, from memory', { words: 'common practice', kind }],
  ['An invented handbook, table 2; from memory', { words: 'An invented handbook, table 2', kind }],
  ['An invented handbook, clause 4.2.1 (From memory)', { words: 'An invented handbook, clause 4.2.1', kind }],
  [
    'An invented handbook, from memory: loose, medium, dense',
    { words: 'An invented handbook, from memory: loose, medium, dense', kind },
  ],
  ['code 7 and code 8 (both from memory)', { words: 'code 7 and code 8 (both from memory)', kind }],
  ['doubtful: invented code 7', { words: 'doubtful: invented code 7', kind }],
  ['An invented handbook, clause 4.2.1', { words: 'An invented handbook, clause 4.2.1' }],
  ['common practice, no source', { words: 'common practice, no source' }],
  ['', { words: '' }],
])('the reference “%s” stands in the margin as %j', (reference, shown) => {
  expect(marginReference(reference)).toEqual(shown);
});
