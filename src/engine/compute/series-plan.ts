import type { SeriesPlan } from '../store/cells.ts';

/** The most rows a series may make. */
export const MOST_ROWS = 200_000;

/** How near a quotient counts as the whole number beside it: the language's rounding rule. */
function margin(q: number): number {
  return Math.max(1e-9, 1e-12 * Math.abs(q));
}

/**
 * The rows of SERIES(start; stop; step): from start in equal steps, up to and with the stop if a step meets it
 * within the rounding rule. A text is the reason there are none; undefined if an argument has no value.
 */
export function planSeries(
  start: number,
  stop: number,
  step: number,
): SeriesPlan | 'step zero' | 'wrong way' | 'too long' | undefined {
  const q = (stop - start) / step;
  if (step === 0) return 'step zero';
  if (Number.isNaN(q)) return undefined;
  const near = Math.round(q);
  const meets = Math.abs(q - near) <= margin(q);
  const last = meets ? near : Math.floor(q);
  if (last < 0) return 'wrong way';
  if (last + 1 > MOST_ROWS) return 'too long';
  return { start, step, stop, count: last + 1, meets };
}
