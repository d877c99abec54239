import type { ArithmeticOperator } from '../../language/index.ts';
import type { Stream } from './stream.ts';

/** A loop over the elements of two streams that have run. An infinite result becomes NaN, branchless: r + (r - r). */
export type PairKernel = (a: Stream, b: Stream, out: Float64Array, count: number) => void;

// One loop an operation, for a loop they shared would call a function for every element; four elements a turn, which
// is half as fast again as one.

const add: PairKernel = (a, b, out, count) => {
  const { data: x, offset: xo, mask: xm } = a;
  const { data: y, offset: yo, mask: ym } = b;
  let i = 0;
  for (; i + 3 < count; i += 4) {
    const p = (x[xo + (i & xm)] as number) + (y[yo + (i & ym)] as number);
    const q = (x[xo + ((i + 1) & xm)] as number) + (y[yo + ((i + 1) & ym)] as number);
    const r = (x[xo + ((i + 2) & xm)] as number) + (y[yo + ((i + 2) & ym)] as number);
    const s = (x[xo + ((i + 3) & xm)] as number) + (y[yo + ((i + 3) & ym)] as number);
    out[i] = p + (p - p);
    out[i + 1] = q + (q - q);
    out[i + 2] = r + (r - r);
    out[i + 3] = s + (s - s);
  }
  for (; i < count; i += 1) {
    const r = (x[xo + (i & xm)] as number) + (y[yo + (i & ym)] as number);
    out[i] = r + (r - r);
  }
};

const subtract: PairKernel = (a, b, out, count) => {
  const { data: x, offset: xo, mask: xm } = a;
  const { data: y, offset: yo, mask: ym } = b;
  let i = 0;
  for (; i + 3 < count; i += 4) {
    const p = (x[xo + (i & xm)] as number) - (y[yo + (i & ym)] as number);
    const q = (x[xo + ((i + 1) & xm)] as number) - (y[yo + ((i + 1) & ym)] as number);
    const r = (x[xo + ((i + 2) & xm)] as number) - (y[yo + ((i + 2) & ym)] as number);
    const s = (x[xo + ((i + 3) & xm)] as number) - (y[yo + ((i + 3) & ym)] as number);
    out[i] = p + (p - p);
    out[i + 1] = q + (q - q);
    out[i + 2] = r + (r - r);
    out[i + 3] = s + (s - s);
  }
  for (; i < count; i += 1) {
    const r = (x[xo + (i & xm)] as number) - (y[yo + (i & ym)] as number);
    out[i] = r + (r - r);
  }
};

const multiply: PairKernel = (a, b, out, count) => {
  const { data: x, offset: xo, mask: xm } = a;
  const { data: y, offset: yo, mask: ym } = b;
  let i = 0;
  for (; i + 3 < count; i += 4) {
    const p = (x[xo + (i & xm)] as number) * (y[yo + (i & ym)] as number);
    const q = (x[xo + ((i + 1) & xm)] as number) * (y[yo + ((i + 1) & ym)] as number);
    const r = (x[xo + ((i + 2) & xm)] as number) * (y[yo + ((i + 2) & ym)] as number);
    const s = (x[xo + ((i + 3) & xm)] as number) * (y[yo + ((i + 3) & ym)] as number);
    out[i] = p + (p - p);
    out[i + 1] = q + (q - q);
    out[i + 2] = r + (r - r);
    out[i + 3] = s + (s - s);
  }
  for (; i < count; i += 1) {
    const r = (x[xo + (i & xm)] as number) * (y[yo + (i & ym)] as number);
    out[i] = r + (r - r);
  }
};

const divide: PairKernel = (a, b, out, count) => {
  const { data: x, offset: xo, mask: xm } = a;
  const { data: y, offset: yo, mask: ym } = b;
  let i = 0;
  for (; i + 3 < count; i += 4) {
    const p = (x[xo + (i & xm)] as number) / (y[yo + (i & ym)] as number);
    const q = (x[xo + ((i + 1) & xm)] as number) / (y[yo + ((i + 1) & ym)] as number);
    const r = (x[xo + ((i + 2) & xm)] as number) / (y[yo + ((i + 2) & ym)] as number);
    const s = (x[xo + ((i + 3) & xm)] as number) / (y[yo + ((i + 3) & ym)] as number);
    out[i] = p + (p - p);
    out[i + 1] = q + (q - q);
    out[i + 2] = r + (r - r);
    out[i + 3] = s + (s - s);
  }
  for (; i < count; i += 1) {
    const r = (x[xo + (i & xm)] as number) / (y[yo + (i & ym)] as number);
    out[i] = r + (r - r);
  }
};

/** The loops of the four operations. */
export const arithmeticKernels: Readonly<Record<ArithmeticOperator, PairKernel>> = {
  '+': add,
  '-': subtract,
  '*': multiply,
  '/': divide,
};
