import type { LoweredColumn, LoweringTools } from './entry.ts';

/** A grid in long form and the point to find on it, lowered. */
export interface LoweredGrid {
  readonly x: string;
  readonly y: string;
  readonly xs: LoweredColumn;
  readonly ys: LoweredColumn;
  readonly zs: LoweredColumn;
}

/**
 * Interpolation on a grid in plain formulas: the coordinates around the point, the grid's value at the four corners
 * (a sum that meets one row only), and straight lines between them.
 */
export function lowerBilinear(grid: LoweredGrid, hold: boolean, tools: LoweringTools): string {
  const { x, y, xs, ys } = grid;
  if (xs.count === 0) return tools.refused;
  const [left, right] = bracket(x, xs, hold, tools);
  const [low, high] = bracket(y, ys, hold, tools);
  const across = part(x, left, right, tools);
  const row = (at: string): string => {
    const [from, to] = [corner(grid, left, at, tools), corner(grid, right, at, tools)];
    return tools.helper(`${from}+${across}*(${to}-${from})`);
  };
  const [below, above] = [row(low), row(high)];
  return `(${below}+${part(y, low, high, tools)}*(${above}-${below}))`;
}

/** The nearest coordinates at or below and at or above; beyond the ends the end itself if held, else none. */
function bracket(
  at: string,
  along: LoweredColumn,
  hold: boolean,
  tools: LoweringTools,
): readonly [string, string] {
  const side = (
    op: '<=' | '>=',
    nearest: 'MAX' | 'MIN',
  ): { readonly count: string; readonly value: string } => {
    const [one, zero] = [tools.constant(1), tools.constant(0)];
    const isThere = (index: number) => tools.compare(op, along.cell(index), at);
    const hits = tools.column(along.count, (index) => `IF(${isThere(index)},${one},${zero})`);
    const values = tools.column(along.count, (index) => `IF(${isThere(index)},${along.cell(index)},"")`);
    return { count: tools.helper(`SUM(${hits.range})`), value: tools.helper(`${nearest}(${values.range})`) };
  };
  const [below, above] = [side('<=', 'MAX'), side('>=', 'MIN')];
  const zero = tools.constant(0);
  const end = (one: typeof below, other: typeof below): string =>
    tools.helper(`IF(${one.count}>${zero},${one.value},${hold ? other.value : tools.refused})`);
  return [end(below, above), end(above, below)];
}

/** The grid's value at a corner; none where it has none or two. */
function corner({ xs, ys, zs }: LoweredGrid, x: string, y: string, tools: LoweringTools): string {
  const [one, zero] = [tools.constant(1), tools.constant(0)];
  const hits = tools.column(xs.count, (at) => {
    const isAlong = `IF(${tools.compare('=', ys.cell(at), y)},${one},${zero})`;
    return `IF(${tools.compare('=', xs.cell(at), x)},${isAlong},${zero})`;
  });
  const values = tools.column(xs.count, (at) => `${hits.cell(at)}*${zs.cell(at)}`);
  const count = tools.helper(`SUM(${hits.range})`);
  return tools.helper(`IF(${count}=${one},SUM(${values.range}),${tools.refused})`);
}

/** How far between two coordinates, from 0 to 1. */
function part(at: string, low: string, high: string, tools: LoweringTools): string {
  const [one, zero] = [tools.constant(1), tools.constant(0)];
  const clamped = `MIN(${one},MAX(${zero},(${at}-${low})/(${high}-${low})))`;
  return tools.helper(`IF(${low}=${high},${zero},${clamped})`);
}
