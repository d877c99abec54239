import { compileSweep } from '../compute/compiler.ts';
import type { World } from '../compute/context.ts';
import { BLOCK, prepare } from '../compute/strand.ts';
import type { ColumnCell, Formula } from '../store/cells.ts';
import { clean, noRows, type RowWindow, resize, write } from '../store/column.ts';

/** All rows, however many there are. */
export const ALL_ROWS: RowWindow = { from: 0, to: Number.POSITIVE_INFINITY };

/** Computes the rows of a column that are marked; the rows that may have changed. */
export function updateColumn(column: ColumnCell, world: World): RowWindow {
  const { table, content, dirtyFrom: from } = column;
  const resized = resize(column, table.length);
  const reshaped = column.reshaped || resized;
  const to = Math.min(column.dirtyTo, table.length);
  column.reshaped = false;
  clean(column);
  if (content.kind !== 'formula') return reshaped ? ALL_ROWS : { from, to };
  const first = reshaped ? 0 : from;
  const changed = sweep(column, content.formula, first, reshaped ? table.length : to, world);
  return reshaped ? ALL_ROWS : changed;
}

function sweep(column: ColumnCell, formula: Formula, first: number, to: number, world: World): RowWindow {
  const changed = noRows();
  if (to <= first) return changed;
  formula.epoch += 1;
  formula.sweep ??= compileSweep(world, formula);
  prepare(formula.sweep);
  const { strand } = formula.sweep;
  for (let from = first; from < to; from += BLOCK) {
    const count = Math.min(BLOCK, to - from);
    strand.run(from, count);
    write(column, from, count, strand.data, strand.offset, strand.stride, changed);
  }
  return changed;
}
