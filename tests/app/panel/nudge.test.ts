import { expect, test } from 'vitest';
import { nudgedEntry } from '../../../src/app/panel/nudge.ts';

test.each([
  ['13.4 ft', 1, '13.5 ft'],
  ['0.10 m/s', -1, '0.09 m/s'],
  ['96 000 t', 1, '97000 t'],
  ['20 ST', -1, '19 ST'],
  ['10', 1, '11'],
  ['100', 1, '110'],
  ['300 mm', -2, '280 mm'],
  ['7 d', 1, '8 d'],
])('%s by %i is %s', (entry, steps, next) => {
  expect(nudgedEntry(entry, steps)).toBe(next);
});

test('what is not one number has no step', () => {
  for (const entry of ['12\'-6"', '', 'sea', '1e5 N']) expect(nudgedEntry(entry, 1)).toBeUndefined();
});
