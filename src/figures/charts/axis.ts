import { scaleLinear } from 'd3-scale';
import { writeNumber } from '../../units/index.ts';

/** A scale from numbers to the page with round marks. */
export interface Axis {
  readonly place: (value: number) => number;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  readonly domain: readonly [least: number, greatest: number];
}

/**
 * An axis over numbers from `least` to `greatest` between two places of the page. `round`: to whole steps at the ends;
 * `count`: about so many marks. A span of nothing is widened, so that there is always an axis.
 */
export function numberAxis(
  [least, greatest]: readonly [number, number],
  range: readonly [from: number, to: number],
  { round = true, count = 5 }: { readonly round?: boolean; readonly count?: number } = {},
): Axis {
  const domain = widened(least, greatest);
  const scale = scaleLinear().domain(domain).range(range);
  if (round) scale.nice(count);
  const [from = 0, to = 1] = scale.domain();
  return {
    place: (value) => scale(value),
    ticks: scale.ticks(count).map((value) => ({ at: scale(value), text: tickText(value) })),
    domain: [from, to],
  };
}

/** Below this there are no steps between numbers that an axis could mark. */
export const SMALLEST = 1e-250;

/** Whether two numbers differ by more than rounding, so that there are steps between them. */
export function isSpan(least: number, greatest: number): boolean {
  return greatest - least > Math.max(SMALLEST, 1e-12 * Math.max(Math.abs(least), Math.abs(greatest)));
}

/** A span that is not empty. */
function widened(least: number, greatest: number): [number, number] {
  if (!Number.isFinite(least) || !Number.isFinite(greatest)) return [0, 1];
  if (isSpan(least, greatest)) return [least, greatest];
  const by = Math.abs(least) < SMALLEST ? 1 : Math.abs(least) * 0.5;
  return [least - by, least + by];
}

/** The number at a mark: all its digits, since marks are round, with a true minus sign. */
function tickText(value: number): string {
  return writeNumber(Number(value.toPrecision(12)), { digits: 'full' }).replace(/^-/, '−');
}
