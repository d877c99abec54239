/** Whole numbers from 0 to below n, the same sequence in every run: a linear congruential generator. */
export function drawsFrom(seed: number): (n: number) => number {
  let state = seed >>> 0;
  return (n) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * n);
  };
}
