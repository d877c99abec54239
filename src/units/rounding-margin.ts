/** The parts of the margin: least, as a part of the quotient, most, and what a few roundings of the quotient come to. */
export const MARGIN = { least: 1e-9, part: 1e-12, most: 1e-4, noise: 2 ** -50, mostNoise: 0.25 } as const;

/**
 * How near a whole number or a half, in steps, counts as it, for a quotient of so many steps: 1e-9, of large quotients
 * 1e-12 of themselves, yet no more than 1e-4, so that no digit a person wrote is lost in it. Where a number can no longer
 * hold that (from 1e11 steps on) it is four units in the last place, which the rounding of a computation can make; a decimal
 * of 15 digits differs by more.
 */
export function roundingMargin(steps: number): number {
  const size = Math.abs(steps);
  const agreed = Math.min(Math.max(MARGIN.least, MARGIN.part * size), MARGIN.most);
  return Math.max(agreed, Math.min(MARGIN.noise * size, MARGIN.mostNoise));
}
