/** A set of positions, taken out from the lowest up: one bit each, so that finding the next is nearly free. */
export interface DirtySet {
  readonly add: (position: number) => void;
  readonly remove: (position: number) => void;
  /** Takes out the lowest position; -1 if there is none. */
  readonly take: () => number;
  /** Makes room for positions below `count`. */
  readonly reserve: (count: number) => void;
}

/** An empty set. */
export function createDirtySet(): DirtySet {
  let words = new Int32Array(8);
  // No bit is set in a word before this one.
  let lowest = 0;
  return {
    add: (position) => {
      const word = position >> 5;
      words[word] = (words[word] as number) | (1 << (position & 31));
      if (word < lowest) lowest = word;
    },
    remove: (position) => {
      const word = position >> 5;
      words[word] = (words[word] as number) & ~(1 << (position & 31));
    },
    take: () => {
      while (lowest < words.length) {
        const bits = words[lowest] as number;
        if (bits !== 0) {
          const bit = 31 - Math.clz32(bits & -bits);
          words[lowest] = bits & (bits - 1);
          return (lowest << 5) | bit;
        }
        lowest += 1;
      }
      return -1;
    },
    reserve: (count) => {
      const needed = (count + 31) >> 5;
      if (needed <= words.length) return;
      const wider = new Int32Array(needed * 2);
      wider.set(words);
      words = wider;
    },
  };
}
