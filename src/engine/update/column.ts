import { compileSweep } from '../compute/compiler.ts';
import type { World } from '../compute/context.ts';
import { BLOCK, prepare, type Strand } from '../compute/strand.ts';
import type { ColumnCell, Formula } from '../store/cells.ts';
import { adopt, clean, countGaps, noRows, type RowWindow, resize, write } from '../store/column.ts';

/** All rows, however many there are. */
export const ALL_ROWS: RowWindow = { from: 0, to: Number.POSITIVE_INFINITY };

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

/** Computes some rows over their old values. */
function sweep(column: ColumnCell, formula: Formula, first: number, to: number, world: World): RowWindow {
  const changed = noRows();
  if (to <= first) return changed;
  const strand = begin(formula, world);
  for (let from = first; from < to; from += BLOCK) {
    const count = Math.min(BLOCK, to - from);
    strand.run(from, count);
    write(column, from, count, strand.data, strand.offset, strand.stride, changed);
  }
  return changed;
}

/** Computes all rows, whatever was there before. */
function sweepAll(column: ColumnCell, formula: Formula, world: World): void {
  const { length } = column.table;
  const values = new Float64Array(length);
  if (length > 0) {
    const strand = begin(formula, world);
    for (let from = 0; from < length; from += BLOCK) {
      const count = Math.min(BLOCK, length - from);
      strand.run(from, count);
      const { data, offset } = strand;
      if (strand.stride === 1) values.set(data.subarray(offset, offset + count), from);
      else values.fill(data[offset] as number, from, from + count);
    }
  }
  adopt(column, values, countGaps(values, 0, length));
}

function begin(formula: Formula, world: World): Strand {
  formula.epoch += 1;
  formula.sweep ??= compileSweep(world, formula);
  prepare(formula.sweep);
  return formula.sweep.strand;
}
