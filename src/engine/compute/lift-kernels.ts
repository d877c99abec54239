import { finite } from './operations.ts';
import type { Stream } from './stream.ts';

/** Applies a function to every element of its arguments: `out[i]` for i < count. */
export type LiftKernel = (args: readonly Stream[], out: Float64Array, count: number) => void;

/**
 * Lifts a function of single numbers over blocks. It never sees NaN: an argument without a value gives none. An
 * infinite result becomes NaN.
 */
export function liftKernel(of: (...args: number[]) => number, arity: number): LiftKernel {
  if (arity === 1) return ([a], out, count) => a && liftOne(of, a, out, count);
  if (arity === 2) return ([a, b], out, count) => a && b && liftTwo(of, a, b, out, count);
  const values = new Array<number>(arity).fill(0);
  return (args, out, count) => liftMany(of, args, values, out, count);
}

function liftOne(of: (x: number) => number, a: Stream, out: Float64Array, count: number): void {
  const { data, offset, mask } = a;
  for (let i = 0; i < count; i += 1) {
    const x = data[offset + (i & mask)] as number;
    out[i] = !Number.isNaN(x) ? finite(of(x)) : x;
  }
}

function liftTwo(
  of: (x: number, y: number) => number,
  a: Stream,
  b: Stream,
  out: Float64Array,
  count: number,
) {
  const { data: xs, offset: xo, mask: xm } = a;
  const { data: ys, offset: yo, mask: ym } = b;
  for (let i = 0; i < count; i += 1) {
    const x = xs[xo + (i & xm)] as number;
    const y = ys[yo + (i & ym)] as number;
    out[i] = !Number.isNaN(x) && !Number.isNaN(y) ? finite(of(x, y)) : Number.NaN;
  }
}

function liftMany(
  of: (...args: number[]) => number,
  args: readonly Stream[],
  values: number[],
  out: Float64Array,
  count: number,
): void {
  for (let i = 0; i < count; i += 1) {
    let known = true;
    for (let k = 0; k < args.length; k += 1) {
      const arg = args[k] as Stream;
      const value = arg.data[arg.offset + (i & arg.mask)] as number;
      values[k] = value;
      if (Number.isNaN(value)) known = false;
    }
    out[i] = known ? finite(of(...values)) : Number.NaN;
  }
}
