/** Thrown inside the lowering and caught at its door: why one formula is not rechecked. */
export class Obstacle extends Error {}

/** Gives up lowering a formula; the reason finishes "not rechecked: …". */
export function giveUp(reason: string): never {
  throw new Obstacle(reason);
}
