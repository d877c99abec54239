import type { Spread } from './measure.ts';

/** How long one contestant took, and the memory it holds. */
export interface Timing {
  readonly name: string;
  /** Milliseconds for one operation. */
  readonly ms: Spread;
  /** What the contestant keeps in memory, MB; absent where nothing stays. */
  readonly mb?: number;
}

/** What one part of the bench has measured. */
export interface Measured {
  /** What was done, for the table. */
  readonly title: string;
  /** Ours first. */
  readonly timings: readonly Timing[];
  /** The quotients this part answers for, by their keys. */
  readonly ratios: Readonly<Record<string, Spread>>;
}

/** One part of the bench; it runs in a process of its own. */
export interface Part {
  readonly name: string;
  readonly measure: () => readonly Measured[];
}
