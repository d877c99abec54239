/** Computes one number: the value of a scalar, or of one element where the cursors of the tables stand. */
export type Thunk = () => number;

/**
 * A stream of numbers along a space, made block by block. After `run(from, count)` the element `from + i` is
 * `data[offset + (i & mask)]` for i < count, until the stream or one using the same scratch register runs again.
 */
export interface Stream {
  data: Float64Array;
  offset: number;
  /** -1, or 0 for a value that is the same all along. */
  readonly mask: 0 | -1;
  run: (from: number, count: number) => void;
  /** Makes a block anywhere else, if the stream makes one at all; at most a block's length. */
  readonly fill: Fill | undefined;
  /** How many scratch registers the result occupies: 1 if it stands in one, 0 if it is read where it is. */
  readonly holds: 0 | 1;
}

/** Writes the elements from `from` on into the first `count` places. */
export type Fill = (out: Float64Array, from: number, count: number) => void;

/** A stream with what must be done once before it runs over its space. */
export interface Program {
  readonly steps: readonly (() => void)[];
  readonly stream: Stream;
}

/** How many elements a stream makes at a time: few enough for a handful of registers to stay in the fast cache. */
export const BLOCK = 1024;

/** Does what must be done before a program runs. */
export function prepare(program: Program): void {
  for (const step of program.steps) step();
}

/** A stream over a value that is the same all along; who made it may put another number into `data[0]`. */
export function constantStream(value: number): Stream {
  return made(Float64Array.of(value), 0, 0, undefined);
}

/** A stream whose blocks `fill` writes into a scratch register. */
export function registerStream(register: Float64Array, fill: Fill): Stream {
  const stream = made(register, -1, 1, fill);
  stream.run = (from, count) => fill(register, from, count);
  return stream;
}

/** A stream that reads an array of all its elements where it is. */
export function arrayStream(array: () => Float64Array): Stream {
  const stream = made(NO_ELEMENTS, -1, 0, undefined);
  stream.run = (from) => {
    stream.data = array();
    stream.offset = from;
  };
  return stream;
}

const NO_ELEMENTS = new Float64Array(0);

// All streams are made here, alike, so that the loops over them meet objects of one shape only.
function made(data: Float64Array, mask: 0 | -1, holds: 0 | 1, fill: Fill | undefined): Stream {
  return { data, offset: 0, mask, run: nothing, holds, fill };
}

function nothing(): void {}

/**
 * Runs a prepared program over the elements from `from` to before `to` and writes them to `out` from place `at` on.
 * Nothing that the program reads may be in `out`.
 */
export function runInto(stream: Stream, from: number, to: number, out: Float64Array, at: number): void {
  const { fill } = stream;
  for (let start = from; start < to; start += BLOCK) {
    const count = Math.min(BLOCK, to - start);
    const place = at + start - from;
    // A view costs as much as copying some dozens of elements.
    if (fill && count > WORTH_A_VIEW) {
      fill(out.subarray(place, place + count), start, count);
      continue;
    }
    stream.run(start, count);
    const { data, offset, mask } = stream;
    for (let i = 0; i < count; i += 1) out[place + i] = data[offset + (i & mask)] as number;
  }
}

const WORTH_A_VIEW = 64;
