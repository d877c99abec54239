import { type Spread, spreadOf } from './measure.ts';
import type { Timing } from './part.ts';

/** One side of a comparison. */
export interface Contestant {
  readonly name: string;
  readonly mb?: number;
  /** Comes before each batch, with the number of its operations, and is not timed. */
  readonly prepare?: (count: number) => void;
  readonly run: (count: number) => void;
}

/** A run of a contestant that does the same operation again and again. */
export function times(operation: () => void): Contestant['run'] {
  return (count) => {
    for (let left = count; left > 0; left -= 1) operation();
  };
}

/** What a comparison came to. */
export interface Comparison {
  /** In the order of the contestants. */
  readonly timings: readonly Timing[];
  /** How many times longer than the first another contestant took for an operation, round by round. */
  readonly quotient: (name: string) => Spread;
}

/** A batch is long enough for the clock and short enough to be done, mostly, while no other process wants the core. */
const BATCH_MS = 2;

/** What a contestant works before it counts: its code is compiled then, however busy the machine. */
const WARM_UP_MS = 500;

/** As many rounds as go into the time, within these bounds. */
const ROUNDS = { least: 5, most: 300, ms: 5000 };

/**
 * Times contestants in turn, round by round, so that whatever else the machine does meets all of them; each has done
 * the same work before and does as many operations at a time as take as long as another's.
 */
export function compare(contestants: readonly Contestant[]): Comparison {
  const counts = contestants.map(warmUp);
  const rounds: number[][] = [];
  const start = performance.now();
  const isTime = () => performance.now() - start < ROUNDS.ms;
  while (rounds.length < ROUNDS.least || (rounds.length < ROUNDS.most && isTime()))
    rounds.push(contestants.map((contestant, at) => undisturbed(contestant, counts[at] as number)));
  const roundsOf = (at: number) => rounds.map((round) => round[at] as number);
  return {
    timings: contestants.map(({ name, mb }, at) => ({
      name,
      ms: spreadOf(roundsOf(at)),
      ...(mb !== undefined && { mb }),
    })),
    quotient: (name) => {
      const at = contestants.findIndex((contestant) => contestant.name === name);
      if (at < 0) throw new Error(`no contestant is called ${name}`);
      return spreadOf(rounds.map((round) => (round[at] as number) / (round[0] as number)));
    },
  };
}

/** Works until the code is compiled; how many operations make a batch. */
function warmUp(contestant: Contestant): number {
  let count = 1;
  for (let worked = 0; worked < WARM_UP_MS; ) {
    const { ms, core } = timed(contestant, count);
    worked += core;
    if (ms < BATCH_MS / 2) count *= 2;
  }
  return count;
}

/** Milliseconds for one operation, of a batch during which the process had its core, or of the last of some tries. */
function undisturbed(contestant: Contestant, count: number): number {
  for (let left = 10; ; left -= 1) {
    const { ms, core } = timed(contestant, count);
    if (core >= 0.9 * ms || left <= 0 || ms > 100 * BATCH_MS) return ms / count;
  }
}

/** How long a batch took, and how long of it some core worked for this process. */
function timed({ prepare, run }: Contestant, count: number): { readonly ms: number; readonly core: number } {
  prepare?.(count);
  const before = process.cpuUsage();
  const start = performance.now();
  run(count);
  const ms = performance.now() - start;
  const { user, system } = process.cpuUsage(before);
  return { ms, core: (user + system) / 1000 };
}
