import { compileSweep } from '../compute/compiler.ts';
import type { World } from '../compute/context.ts';
import { prepare, runInto, type Stream } from '../compute/stream.ts';
import type { ColumnCell, Formula } from '../store/cells.ts';
import {
  ALL_ROWS,
  adopt,
  clean,
  countGaps,
  difference,
  noRows,
  type RowWindow,
  resize,
  write,
} from '../store/column.ts';

/** Computes the rows of a column that are marked; the rows that may have changed. */
export function updateColumn(column: ColumnCell, world: World): RowWindow {
  const { table, content, reshaped, dirtyFrom: from } = column;
  const to = Math.min(column.dirtyTo, table.length);
  column.reshaped = false;
  clean(column);
  if (content.kind !== 'formula') {
    resize(column, table.length);
    return reshaped ? ALL_ROWS : { from, to };
  }
  if (!reshaped && column.values.length === table.length)
    return sweep(column, content.formula, from, to, world);
  sweepAll(column, content.formula, world);
  return ALL_ROWS;
}

/** Computes some rows and compares them with their old values. */
function sweep(column: ColumnCell, formula: Formula, from: number, to: number, world: World): RowWindow {
  const changed = noRows();
  if (to <= from) return changed;
  const stream = begin(formula, world);
  const { length } = column.values;
  if ((to - from) * 2 < length) {
    const fresh = world.buffers.take(to - from);
    runInto(stream, from, to, fresh, 0);
    write(column, from, to - from, fresh, 0, changed);
    world.buffers.give(fresh);
    return changed;
  }
  // Most rows are computed: the new array takes the place of the old.
  const before = column.values;
  const after = world.buffers.take(length);
  after.set(before.subarray(0, from));
  runInto(stream, from, to, after, from);
  after.set(before.subarray(to), to);
  const { first, last } = difference(before, from, after, from, to - from);
  const same = first > last;
  if (!same) adopt(column, after, countGaps(after, 0, length));
  world.buffers.give(same ? after : before);
  return { from: from + first, to: from + last + 1 };
}

/** Computes all rows, whatever was there before. */
function sweepAll(column: ColumnCell, formula: Formula, world: World): void {
  const { length } = column.table;
  const before = column.values;
  const after = world.buffers.take(length);
  if (length > 0) runInto(begin(formula, world), 0, length, after, 0);
  adopt(column, after, countGaps(after, 0, length));
  world.buffers.give(before);
}

/** Begins an evaluation of a column formula: what all rows share is computed. */
export function begin(formula: Formula, world: World): Stream {
  formula.epoch += 1;
  formula.sweep ??= compileSweep(world, formula);
  prepare(formula.sweep);
  return formula.sweep.stream;
}
