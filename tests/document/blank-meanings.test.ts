import { expect, test } from 'vitest';
import { blankMeanings, type GivenColumn } from '../../src/document/index.ts';

const column = (name: string, more: Partial<GivenColumn>): GivenColumn => ({
  id: name,
  kind: 'given',
  name,
  chunks: [],
  ...more,
});

test('what blank cells come to is told with the unit of their column', () => {
  expect(
    blankMeanings([
      column('w', { unit: '%', default: 0 }),
      column('s_by', { type: 'text', default: 'mass' }),
      column('n', { unit: '-', default: 1 }),
      column('thick', { unit: 'in' }),
    ]),
  ).toEqual(['w 0 %', 's_by mass', 'n 1']);
});
