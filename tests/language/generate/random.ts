/** A stream of chance that depends on its seed alone. */
export interface Random {
  /** At least 0, below 1. */
  readonly next: () => number;
  /** A whole number from 0 to `below` less one. */
  readonly below: (below: number) => number;
  /** True with this chance. */
  readonly chance: (p: number) => boolean;
  readonly pick: <T>(choices: readonly T[]) => T;
}

/** Mulberry32: 32 bits of state, good enough to choose among formulas. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const below = (count: number): number => Math.floor(next() * count);
  return {
    next,
    below,
    chance: (p) => next() < p,
    pick: (choices) => {
      if (choices.length === 0) throw new Error('nothing to pick from');
      return choices[below(choices.length)] as (typeof choices)[number];
    },
  };
}
