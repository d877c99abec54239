import { type Axes, type Axis, sameAxis } from '../../language/index.ts';
import type { TableCell } from '../store/cells.ts';

/** What a stream runs over: the rows of one table, or every combination of the rows of several; the last runs fastest. */
export interface Space {
  readonly axes: readonly Axis[];
  readonly tables: readonly TableCell[];
}

/** The number of elements of a space; 1 for the space without axes. */
export function sizeOf(space: Space): number {
  let size = 1;
  for (const table of space.tables) size *= table.length;
  return size;
}

/** Whether a value on `axes` changes along the space. */
export function spans(axes: Axes, space: Space): boolean {
  return axes.some((axis) => space.axes.some((known) => sameAxis(axis, known)));
}

/** The part of a space a value on `axes` changes along; the space itself if that is all of it. */
export function subspace(axes: Axes, space: Space): Space {
  const kept = space.axes.map((known) => axes.some((axis) => sameAxis(axis, known)));
  if (!kept.includes(false)) return space;
  return {
    axes: space.axes.filter((_, at) => kept[at]),
    tables: space.tables.filter((_, at) => kept[at]),
  };
}

/** The tables of a space whose rows could not be determined. */
export function failedTable(space: Space): TableCell | undefined {
  return space.tables.find((table) => table.failed);
}

/** The row of each table at a flat index of the space. */
function rowsAt(space: Space, index: number): number[] {
  const rows: number[] = [];
  let rest = index;
  for (let k = space.tables.length - 1; k >= 0; k -= 1) {
    const length = (space.tables[k] as TableCell).length;
    rows[k] = rest % length;
    rest = Math.floor(rest / length);
  }
  return rows;
}

/**
 * Writes `count` elements of a value that lies in a subspace, from the flat index `from` of the whole space.
 * `values` holds the value over all of its own subspace.
 */
export function spread(
  values: Float64Array,
  own: Space,
  space: Space,
  from: number,
  count: number,
  out: Float64Array,
): void {
  const depth = space.tables.length;
  const at = rowsAt(space, from);
  const steps = stepsOf(own, space);
  const last = depth - 1;
  const fastest = (space.tables[last] as TableCell).length;
  const step = steps[last] as number;
  let done = 0;
  while (done < count) {
    let index = 0;
    for (let k = 0; k < depth; k += 1) index += (at[k] as number) * (steps[k] as number);
    const run = Math.min(count - done, fastest - (at[last] as number));
    for (let i = 0; i < run; i += 1) out[done + i] = values[index + i * step] as number;
    done += run;
    at[last] = (at[last] as number) + run;
    for (let k = last; k > 0 && at[k] === (space.tables[k] as TableCell).length; k -= 1) {
      at[k] = 0;
      at[k - 1] = (at[k - 1] as number) + 1;
    }
  }
}

/** How far the index into the subspace moves for a step along each axis of the space. */
function stepsOf(own: Space, space: Space): number[] {
  const steps: number[] = new Array(space.axes.length).fill(0);
  let step = 1;
  for (let k = space.axes.length - 1; k >= 0; k -= 1) {
    if (!own.axes.some((axis) => sameAxis(axis, space.axes[k] as Axis))) continue;
    steps[k] = step;
    step *= (space.tables[k] as TableCell).length;
  }
  return steps;
}

/** Puts the cursors of the fresh axes of a space on one of its elements. */
export function placeCursors(space: Space, index: number): void {
  const rows = rowsAt(space, index);
  for (const [at, table] of space.tables.entries()) table.fresh = rows[at] ?? 0;
}

/** The rows of a column formula's own table. */
export function rowSpace(table: TableCell): Space {
  return { axes: [{ table: table.id, fresh: false }], tables: [table] };
}

/** The space of all the axes of a value. */
export function spaceOf(axes: Axes, tableOf: (id: string) => TableCell): Space {
  return { axes, tables: axes.map((axis) => tableOf(axis.table)) };
}

/** The space of the fresh axes of a value. */
export function freshSpace(axes: Axes, tableOf: (id: string) => TableCell): Space {
  return spaceOf(
    axes.filter((axis) => axis.fresh),
    tableOf,
  );
}
