/** A median with the quartiles around it. */
export interface Spread {
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
}

/** The median and the quartiles. Throws on no values. */
export function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => {
    const value = sorted[Math.floor(sorted.length * share)];
    if (value === undefined) throw new Error('nothing was measured');
    return value;
  };
  return { lower: at(0.25), median: at(0.5), upper: at(0.75) };
}

/** The middle value. Throws on none. */
export function median(values: readonly number[]): number {
  return spreadOf(values).median;
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
