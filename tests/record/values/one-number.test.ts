import { expect, test } from 'vitest';
import { isOneNumber } from '../../../src/record/values/one-number.ts';

test.each([
  ['12', true],
  ['2 1/2', true],
  ['1,200.5', true],
  ['1.5e3', true],
  ['1.5E-3', true],
  ['El. +12', true],
  ['3 ft 6', false],
  ['1 ft 2 1/2', false],
  ["3' 6", false],
  ['2 h 30', false],
])('%s before a unit holds no other unit: %s', (text, holds) => {
  expect(isOneNumber(text)).toBe(holds);
});
