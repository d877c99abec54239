import type { Random } from './program.ts';

/** Numbers drawn from a seed, the same each time; any whole number is a seed. */
export function randomFrom(seed: number): Random {
  let state = seed | 0;
  // Mulberry32: 32 bits of state, enough for inputs.
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (first: number, last: number): number => first + Math.floor(next() * (last - first + 1));
  return {
    between: (least, most) => least + next() * (most - least),
    over: (least, most) => least * (most / least) ** next(),
    whole,
    of: (list) => {
      const drawn = list[whole(0, list.length - 1)];
      if (drawn === undefined) throw new Error('there is nothing to draw from an empty list');
      return drawn;
    },
    chance: (part) => next() < part,
  };
}
