import { expect, test } from 'vitest';
import { functionTable } from '../../src/language/index.ts';
import { sizesOfCalls } from '../../src/recheck/sizes-of-calls.ts';

/**
 * The functions whose value says its own size: they give counts, truth, texts and dates, round, choose, or are nowhere
 * steeper than they are large, so that what is left of a balance does not grow in them.
 */
const sizeOfValue = [
  'SIGN PRODUCT ROUND ROUNDUP ROUNDDOWN TRUNC INT CEILING FLOOR MROUND QUOTIENT POWER PI COSH ERFC LOGINV',
  'IF IFS SWITCH CHOOSE AND OR XOR NOT ISBLANK COUNT COUNTIF MATCH ABOVE ROW SERIES KNOWN',
].join(' ');

test('each function that the second engine computes has a size, or is known for one whose value says it', () => {
  const lowered = functionTable.filter((fn) => fn.noRecheck === undefined).map(({ name }) => name);
  const known = [...Object.keys(sizesOfCalls), ...sizeOfValue.split(' ')];
  expect(lowered.filter((name) => !known.includes(name))).toEqual([]);
  expect(known.filter((name) => !lowered.includes(name))).toEqual([]);
});
