import type { Timing } from './part.ts';

/** One side of a comparison: `run` does `count` operations; `prepare` comes before it and is not timed. */
export interface Contestant {
  readonly name: string;
  readonly count: number;
  readonly prepare?: () => void;
  readonly run: () => void;
  readonly mb?: number;
  /** Runs in every n-th round only; for what takes long. */
  readonly every?: number;
}

/**
 * Times contestants in turn, round by round, so that whatever else the machine does meets all of them. The first
 * rounds are left out.
 */
export function interleave(
  contestants: readonly Contestant[],
  rounds: number,
  warmUp: number,
): readonly Timing[] {
  const times = contestants.map((): number[] => []);
  for (let round = 0; round < warmUp + rounds; round += 1) {
    for (const [at, { count, prepare, run, every = 1 }] of contestants.entries()) {
      if (round % every !== 0) continue;
      prepare?.();
      const start = performance.now();
      run();
      const ms = (performance.now() - start) / count;
      if (round >= warmUp || every > 1) times[at]?.push(ms);
    }
  }
  return contestants.map(({ name, mb }, at) => ({
    name,
    ms: median(times[at] ?? []),
    ...(mb !== undefined && { mb }),
  }));
}

/** The middle value. Throws on none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted[sorted.length >> 1];
  if (middle === undefined) throw new Error('nothing was measured');
  return middle;
}

/** How many times longer the second took than the first. */
export function ratio(ours: Timing | undefined, other: Timing | undefined): number {
  if (!ours || !other) throw new Error('a contestant is missing');
  return other.ms / ours.ms;
}

/** Builds something and says how much memory it keeps, in MB. */
export function weigh<T>(build: () => T): { readonly built: T; readonly mb: number } {
  const before = heldMegabytes();
  const built = build();
  return { built, mb: heldMegabytes() - before };
}

function heldMegabytes(): number {
  const { gc } = globalThis;
  if (!gc) throw new Error('run with --expose-gc');
  gc();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return (heapUsed + arrayBuffers) / 1e6;
}

/** Throws unless two results agree to a relative 1e-9: contestants must have done the same work. */
export function mustAgree(what: string, a: number, b: number): void {
  if (Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b))) return;
  throw new Error(`${what}: the contestants disagree, ${a} and ${b}`);
}
