import { coordinate } from '../svg/markup.ts';
import type { Point } from '../svg/point.ts';

/**
 * The deck line of a ship in plan, as a path. `at` takes a place of the ship (along the keel from midship, forward
 * positive; across, positive to the left of the way ahead) to the page. `forward` and `aft` are where the parallel
 * side ends; `slope` is how steeply the left side turns in at the forward end at the least.
 */
export function hullPath(
  length: number,
  beam: number,
  at: (along: number, across: number) => Point,
  { forward = 0.25, aft = -0.38, slope = 0 }: { forward?: number; aft?: number; slope?: number } = {},
): string {
  const half = beam / 2;
  const shoulder = forward * length;
  const quarter = aft * length;
  const entry = length / 2 - shoulder;
  // The bow is one curve that begins with this slope and ends at the stem.
  const reach = Math.min(0.6 * entry, slope > 0 ? (0.9 * half) / Math.tan(slope) : Number.POSITIVE_INFINITY);
  const turnIn = half - reach * Math.tan(slope);
  const transom = 0.62 * half;
  const p = (along: number, across: number): string => {
    const { x, y } = at(along, across);
    return `${coordinate(x)} ${coordinate(y)}`;
  };
  return [
    `M${p(shoulder, half)}`,
    `Q${p(shoulder + reach, turnIn)} ${p(length / 2, 0)}`,
    `Q${p(shoulder + 0.6 * entry, -half)} ${p(shoulder, -half)}`,
    `L${p(quarter, -half)}`,
    `Q${p(-length / 2, -half)} ${p(-length / 2, -transom)}`,
    `L${p(-length / 2, transom)}`,
    `Q${p(-length / 2, half)} ${p(quarter, half)}`,
    'Z',
  ].join('');
}
