import { expect, test } from 'vitest';
import { hiddenKind } from '../../../../src/app/sheet/line/hidden-kind.ts';

test.each([
  ['from memory', undefined],
  ['common practice, from memory', undefined],
  ['An invented handbook, 3rd edition, clause 4.2.1 (from memory)', 'from memory'],
  ['An invented handbook, table 7: loose, medium, dense (From memory)', 'from memory'],
  ['doubtful: invented code 7', 'from memory'],
  ['An invented handbook, 3rd edition, clause 4.2.1', undefined],
  ['common practice, no source', undefined],
  ['', undefined],
])('beside “%s” the margin says %s', (reference, said) => {
  expect(hiddenKind(reference)).toBe(said);
});
