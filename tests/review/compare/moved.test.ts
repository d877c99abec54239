import fc from 'fast-check';
import { expect, test } from 'vitest';
import { movedAmong, type Standing } from '../../../src/review/compare/moved.ts';

const SEED = 20_261_130;

/** The fewest things that must be taken out for the rest to be in order, by trying all choices. */
function fewest(order: readonly number[]): number {
  let best = order.length;
  for (let choice = 0; choice < 2 ** order.length; choice += 1) {
    const kept = order.filter((_, at) => (choice >> at) & 1);
    if (kept.every((one, at) => at === 0 || (kept[at - 1] as number) < one))
      best = Math.min(best, order.length - kept.length);
  }
  return best;
}

test('the fewest are moved, the rest is in order, and the other way round they are the same', () => {
  const orders = fc
    .integer({ min: 0, max: 9 })
    .chain((size) => fc.shuffledSubarray([...Array(size).keys()], { minLength: size, maxLength: size }));
  fc.assert(
    fc.property(orders, (order) => {
      const standings = order.map((after, before): Standing => ({ before, after, label: `thing ${after}` }));
      const moved = movedAmong(standings);
      expect(moved.size).toBe(fewest(order));
      const kept = order.filter((_, at) => !moved.has(at));
      expect(kept).toEqual(kept.toSorted((a, b) => a - b));
      const turned = movedAmong(
        standings.map(({ before, after, label }) => ({ before: after, after: before, label })),
      );
      expect(turned).toEqual(moved);
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test('a line of many taken to the end is the only one that moved', () => {
  const size = 100_000;
  const standings = Array.from({ length: size }, (_, before) => ({
    before,
    after: before === 0 ? size - 1 : before - 1,
    label: String(before),
  }));
  expect([...movedAmong(standings)]).toEqual([0]);
});
