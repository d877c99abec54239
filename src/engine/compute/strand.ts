/** Computes one number: the value of a scalar, or of one element where the cursors of the tables stand. */
export type Thunk = () => number;

/**
 * A stream of numbers along a space, made block by block. After `run(from, count)` the element `from + i` is
 * `data[offset + i * stride]` for i < count, until the strand or one using the same scratch register runs again.
 */
export interface Strand {
  data: Float64Array;
  offset: number;
  /** 0 for a value that is the same all along. */
  readonly stride: 0 | 1;
  readonly run: (from: number, count: number) => void;
  /** How many scratch registers the result occupies: 1 if it stands in one, 0 if it is read where it is. */
  readonly holds: 0 | 1;
}

/** A strand with what must be done once before it runs over its space. */
export interface Program {
  readonly steps: readonly (() => void)[];
  readonly strand: Strand;
}

/** How many elements a strand makes at a time: few enough for a handful of registers to stay in the fast cache. */
export const BLOCK = 1024;

/** Does what must be done before a program runs. */
export function prepare(program: Program): void {
  for (const step of program.steps) step();
}

/** A strand over a value that never changes. */
export function constantStrand(value: number): Strand {
  return { data: Float64Array.of(value), offset: 0, stride: 0, run: nothing, holds: 0 };
}

/** For strands that have nothing to do. */
export function nothing(): void {}
