/** Random choices from a seed, the same on every machine. */
export interface Random {
  /** A whole number from 0 to below n. */
  readonly below: (n: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  /** Whether a chance of one in n came up. */
  readonly oneIn: (n: number) => boolean;
}

/** The generator "mulberry32" of public domain, from memory. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const below = (n: number): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * n);
  };
  return {
    below,
    pick: (from) => {
      const found = from[below(from.length)];
      if (found === undefined) throw new Error('there is nothing to pick from');
      return found;
    },
    oneIn: (n) => below(n) === 0,
  };
}
