import { areEqual } from '../../units/index.ts';
import type { Refusal, ToldRefusal } from './entry.ts';
import { firstNotRising } from './keys.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}
/** A grid in long form: one row a point, in any order. */
interface Grid {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly zs: Float64Array;
}

/** Straight lines between points with rising xs; NaN beyond the ends unless held, and where xs do not rise. */
export function linear(x: number, xs: Float64Array, ys: Float64Array, hold: boolean): number {
  return linearAlong(xs, ys, hold)(x);
}

/** The same for many x: whether the xs rise is looked at once, and the points around an x are found by halving. */
export function linearAlong(xs: Float64Array, ys: Float64Array, hold: boolean): (x: number) => number {
  if (xs.length === 0 || firstNotRising(xs) !== undefined) return () => Number.NaN;
  return (x) => between(x, xs, ys, hold);
}

function between(x: number, xs: Float64Array, ys: Float64Array, hold: boolean): number {
  const last = xs.length - 1;
  const [low, high] = [xs[0] as number, xs[last] as number];
  if (x <= low || areEqual(x, low)) return hold || areEqual(x, low) ? (ys[0] as number) : Number.NaN;
  if (x >= high || areEqual(x, high)) return hold || areEqual(x, high) ? (ys[last] as number) : Number.NaN;
  let at = 0;
  let beyond = last - 1;
  while (at < beyond) {
    const middle = (at + beyond) >> 1;
    if ((xs[middle + 1] as number) < x) at = middle + 1;
    else beyond = middle;
  }
  const [x1, x2, y1, y2] = [xs[at], xs[at + 1], ys[at], ys[at + 1]] as [number, number, number, number];
  return y1 + ((x - x1) / (x2 - x1)) * (y2 - y1);
}

/** Why `linear` has no value; x is the first argument. */
export function linearRefusal(x: number, xs: Float64Array): Refusal {
  return linearRefusals(xs)(x);
}

/** The same for many x: whether the xs rise is looked at once. */
export function linearRefusals(xs: Float64Array): (x: number) => Refusal {
  if (xs.length === 0) return () => ({ words: 'the table it looks in has no rows' });
  const row = firstNotRising(xs);
  if (row !== undefined)
    return () => ({ words: `the xs must rise from row to row, and row ${row} does not` });
  return (x) => {
    const below = x < (xs[0] as number);
    const end = (below ? xs[0] : xs.at(-1)) as number;
    return {
      words: ({ shown }) =>
        below
          ? `the table begins at ${shown(end)}, and less is wanted; change what it is looked up for, or add the rows that its source has there`
          : `the table ends at ${shown(end)}, and more is wanted; change what it is looked up for, or add the rows that its source has there`,
      argument: 0,
    };
  };
}

/** The nearest coordinates at or below and at or above; undefined beyond the ends unless held. */
function bracket(x: number, xs: Float64Array, hold: boolean): readonly [number, number] | undefined {
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (const other of xs) {
    if (other <= x || areEqual(other, x)) low = Math.max(low, other);
    if (other >= x || areEqual(other, x)) high = Math.min(high, other);
  }
  if (Number.isFinite(low) && Number.isFinite(high)) return [low, high];
  if (!hold) return undefined;
  if (Number.isFinite(low)) return [low, low];
  return Number.isFinite(high) ? [high, high] : undefined;
}

/** The grid's value at a corner; NaN where it has none or two. */
function corner(grid: Grid, x: number, y: number): number {
  let found = Number.NaN;
  for (let at = 0; at < grid.xs.length; at += 1) {
    if (!areEqual(grid.xs[at] as number, x) || !areEqual(grid.ys[at] as number, y)) continue;
    if (!Number.isNaN(found)) return Number.NaN;
    found = grid.zs[at] as number;
  }
  return found;
}

function part(x: number, [low, high]: readonly [number, number]): number {
  return low === high ? 0 : Math.min(1, Math.max(0, (x - low) / (high - low)));
}

/** Between the four nearest points of a grid; NaN where one of them is missing or stands twice. */
export function bilinear({ x, y }: Point, grid: Grid, hold: boolean): number {
  const across = bracket(x, grid.xs, hold);
  const along = bracket(y, grid.ys, hold);
  if (!across || !along) return Number.NaN;
  const row = (at: number) => {
    const [low, high] = [corner(grid, across[0], at), corner(grid, across[1], at)];
    return low + part(x, across) * (high - low);
  };
  const [low, high] = [row(along[0]), row(along[1])];
  return low + part(y, along) * (high - low);
}

/** Why `bilinear` has no value; x and y are the first two arguments. */
export function bilinearRefusal({ x, y }: Point, grid: Grid, hold: boolean): Refusal {
  if (grid.xs.length === 0) return { words: 'the table it looks in has no rows' };
  if (!bracket(x, grid.xs, hold)) return { words: beyondGrid('x', grid.xs), argument: 0 };
  if (!bracket(y, grid.ys, hold)) return { words: beyondGrid('y', grid.ys), argument: 1 };
  return { words: 'a corner of the grid around the point is missing or stands twice' };
}

function beyondGrid(name: string, values: Float64Array): ToldRefusal['words'] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return ({ shown }) =>
    `the table covers ${name} from ${shown(low)} to ${shown(high)}, and the value wanted lies outside; change what it is looked up for, or add the rows that its source has there`;
}
