import { BLOCK, type Fill, type Stream } from './stream.ts';

/** An arm of a branch over a space. */
export interface Arm {
  readonly when: Stream;
  readonly value: Stream;
}

/** One condition and two values; a side that no element of the block takes is not computed. */
export function chooseOne(when: Stream, value: Stream, otherwise: Stream): Fill {
  return (out, from, count) => {
    when.run(from, count);
    const holding = sumOf(when, count);
    // A condition without a value makes the sum NaN, and both sides are computed.
    if (holding !== 0) value.run(from, count);
    if (holding !== count) otherwise.run(from, count);
    const { data: hs, offset: ho, mask: hm } = when;
    const { data: xs, offset: xo, mask: xm } = value;
    const { data: ys, offset: yo, mask: ym } = otherwise;
    for (let i = 0; i < count; i += 1) {
      const holds = hs[ho + (i & hm)] as number;
      let chosen = ys[yo + (i & ym)] as number;
      if (holds === 1) chosen = xs[xo + (i & xm)] as number;
      // NaN for a condition without a value, else nothing.
      out[i] = chosen + holds * 0;
    }
  };
}

function sumOf({ data, offset, mask }: Stream, count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i += 1) sum += data[offset + (i & mask)] as number;
  return sum;
}

/** States of an element while the arms are gone through. */
const DONE = 0;
const OPEN = 1;
const CHOSEN = 2;

/** Any number of arms; each is computed only while elements are open, and its value only if one takes it. */
export function takeFirst(arms: readonly Arm[], otherwise: Stream): Fill {
  const state = new Uint8Array(BLOCK);
  return (out, from, count) => {
    state.fill(OPEN, 0, count);
    let open = count;
    for (const { when, value } of arms) {
      if (open === 0) return;
      when.run(from, count);
      if (settle(when, state, out, count)) value.run(from, count);
      open = take(value, state, out, count);
    }
    if (open === 0) return;
    otherwise.run(from, count);
    const { data, offset, mask } = otherwise;
    for (let i = 0; i < count; i += 1) if (state[i] === OPEN) out[i] = data[offset + (i & mask)] as number;
  };
}

/** Marks the open elements whose condition holds, ends those whose condition has no value; whether any holds. */
function settle(when: Stream, state: Uint8Array, out: Float64Array, count: number): boolean {
  const { data, offset, mask } = when;
  let any = false;
  for (let i = 0; i < count; i += 1) {
    if (state[i] !== OPEN) continue;
    const holds = data[offset + (i & mask)] as number;
    if (holds === 1) {
      state[i] = CHOSEN;
      any = true;
    } else if (holds !== 0) {
      state[i] = DONE;
      out[i] = Number.NaN;
    }
  }
  return any;
}

/** Takes the chosen elements from an arm; how many are still open. */
function take(value: Stream, state: Uint8Array, out: Float64Array, count: number): number {
  const { data, offset, mask } = value;
  let open = 0;
  for (let i = 0; i < count; i += 1) {
    if (state[i] === OPEN) open += 1;
    else if (state[i] === CHOSEN) {
      out[i] = data[offset + (i & mask)] as number;
      state[i] = DONE;
    }
  }
  return open;
}
