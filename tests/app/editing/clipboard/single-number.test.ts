import { expect, test } from 'vitest';
import { isSingleNumber } from '../../../../src/app/editing/clipboard/single-number.ts';

test.each([
  '7,5',
  '7.5',
  '1,250',
  '1.250,5',
  '1 250,5',
  "1'250.5",
  '-3,25',
  '7,5 in',
  '1,250 cu. yd.',
  '12,385\n',
])('“%s” is one number', (text) => {
  expect(isSingleNumber(text)).toBe(true);
});

test.each([
  '1,2,3',
  '1,250,5',
  '7;5',
  '7,5\n8,5',
  'slab, 7',
  '7, 5',
  '7,5 in, 8 in',
  '7,5\t8',
  '',
  'slab',
  '1,250,50',
])('“%s” is not', (text) => {
  expect(isSingleNumber(text)).toBe(false);
});
