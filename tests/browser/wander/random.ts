/** Chance that a seed repeats: numbers from 0 up to 1, and choices made with them. */
export interface Chance {
  readonly number: () => number;
  /** A whole number from 0 up to, not including, `below`. */
  readonly whole: (below: number) => number;
  /** One of a list; undefined if it is empty. */
  readonly one: <Item>(list: readonly Item[]) => Item | undefined;
}

/** Numbers that follow from a seed alone (a 32-bit counter whose bits are mixed). */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  const number = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (below: number): number => Math.floor(number() * below);
  return { number, whole, one: (list) => list[whole(list.length)] };
}
