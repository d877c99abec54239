import type { ArithmeticOperator } from '../../language/index.ts';

/**
 * A loop over `count` elements: out[i] from a[ao + i * as] and b[bo + i * bs], a stride of 0 being one number for
 * all. An infinite result becomes NaN without a branch: r + (r - r).
 */
export type PairKernel = (
  a: Float64Array,
  ao: number,
  as: 0 | 1,
  b: Float64Array,
  bo: number,
  bs: 0 | 1,
  out: Float64Array,
  count: number,
) => void;

// One loop for each operation and each pair of strides: a loop shared by the operations would call a function for
// every element, and one shared by the strides would multiply an index.

const add: PairKernel = (a, ao, as, b, bo, bs, out, count) => {
  if (as === 0) {
    const x = a[ao] as number;
    for (let i = 0; i < count; i += 1) {
      const r = x + (b[bo + i] as number);
      out[i] = r + (r - r);
    }
  } else if (bs === 0) {
    const y = b[bo] as number;
    for (let i = 0; i < count; i += 1) {
      const r = (a[ao + i] as number) + y;
      out[i] = r + (r - r);
    }
  } else {
    for (let i = 0; i < count; i += 1) {
      const r = (a[ao + i] as number) + (b[bo + i] as number);
      out[i] = r + (r - r);
    }
  }
};

const subtract: PairKernel = (a, ao, as, b, bo, bs, out, count) => {
  if (as === 0) {
    const x = a[ao] as number;
    for (let i = 0; i < count; i += 1) {
      const r = x - (b[bo + i] as number);
      out[i] = r + (r - r);
    }
  } else if (bs === 0) {
    const y = b[bo] as number;
    for (let i = 0; i < count; i += 1) {
      const r = (a[ao + i] as number) - y;
      out[i] = r + (r - r);
    }
  } else {
    for (let i = 0; i < count; i += 1) {
      const r = (a[ao + i] as number) - (b[bo + i] as number);
      out[i] = r + (r - r);
    }
  }
};

const multiply: PairKernel = (a, ao, as, b, bo, bs, out, count) => {
  if (as === 0) {
    const x = a[ao] as number;
    for (let i = 0; i < count; i += 1) {
      const r = x * (b[bo + i] as number);
      out[i] = r + (r - r);
    }
  } else if (bs === 0) {
    const y = b[bo] as number;
    for (let i = 0; i < count; i += 1) {
      const r = (a[ao + i] as number) * y;
      out[i] = r + (r - r);
    }
  } else {
    for (let i = 0; i < count; i += 1) {
      const r = (a[ao + i] as number) * (b[bo + i] as number);
      out[i] = r + (r - r);
    }
  }
};

const divide: PairKernel = (a, ao, as, b, bo, bs, out, count) => {
  if (as === 0) {
    const x = a[ao] as number;
    for (let i = 0; i < count; i += 1) {
      const r = x / (b[bo + i] as number);
      out[i] = r + (r - r);
    }
  } else if (bs === 0) {
    const y = b[bo] as number;
    for (let i = 0; i < count; i += 1) {
      const r = (a[ao + i] as number) / y;
      out[i] = r + (r - r);
    }
  } else {
    for (let i = 0; i < count; i += 1) {
      const r = (a[ao + i] as number) / (b[bo + i] as number);
      out[i] = r + (r - r);
    }
  }
};

/** The loops of the four operations; at least one stride must be 1. */
export const arithmeticKernels: Readonly<Record<ArithmeticOperator, PairKernel>> = {
  '+': add,
  '-': subtract,
  '*': multiply,
  '/': divide,
};
