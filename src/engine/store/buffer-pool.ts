/** Arrays that are no longer in use, kept to be used again: new ones cost more than filling them. */
export interface BufferPool {
  /** An array of that length; what is in it is of no account. */
  readonly take: (length: number) => Float64Array;
  /** Gives back an array nobody reads any more. */
  readonly give: (array: Float64Array) => void;
}

/** Shorter arrays are not worth keeping. */
const WORTH_KEEPING = 1024;

/** No spare arrays; at most one is kept. */
export function createBufferPool(): BufferPool {
  let kept: Float64Array = new Float64Array(0);
  return {
    take: (length) => {
      if (kept.length !== length || length === 0) return new Float64Array(length);
      const taken = kept;
      kept = new Float64Array(0);
      return taken;
    },
    give: (array) => {
      if (array.length >= WORTH_KEEPING) kept = array;
    },
  };
}
