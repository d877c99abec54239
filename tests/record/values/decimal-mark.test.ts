import { expect, test } from 'vitest';
import { behindNumbers } from '../../../src/record/values/decimal-mark.ts';

test.each([
  [
    ['12', '3.25'],
    ['.00', ''],
  ],
  [
    ['12.5', '3.25', '−0.125'],
    ['00', '0', ''],
  ],
  [
    ['1440', '956'],
    ['', ''],
  ],
  [
    ['12.', '3.5'],
    ['0', ''],
  ],
  // What is no plain number is left out, and counts for nothing.
  [
    ['3 1/2', '12', '0.5'],
    ['', '.0', ''],
  ],
  [
    ['14.33\u202f×\u202f10⁹', '7'],
    ['', ''],
  ],
  // Where one would get too wide for its column, each stands as it is.
  [
    ['211\u202f644', '0.611'],
    ['', ''],
  ],
  [[], []],
])('behind %j stands %j', (numbers, behind) => {
  expect(behindNumbers(numbers)).toEqual(behind);
});
