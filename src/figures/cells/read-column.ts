import { fail, type Outcome, type Problem, problem, succeed } from '../../diagnostics/index.ts';
import type { FormulaColumnItem, InputColumnItem, Notebook } from '../../notebook/index.ts';
import { writeIn } from '../../units/index.ts';
import type { FigureView } from '../drawing.ts';
import { labelUnit } from './amount.ts';
import type { Amounts, Texts } from './role.ts';

type ColumnItem = InputColumnItem | FormulaColumnItem;
const nowhere = { from: 0, to: 0 };

/** That a picture waits on a line or column, and why. */
export function waitsOn(id: string, because: string): Problem {
  return problem('figure-waits', nowhere, { on: id, because });
}

/** A column as numbers, in the unit of the view. */
export function readAmounts(notebook: Notebook, item: ColumnItem, view: FigureView): Outcome<Amounts> {
  const read = notebook.column(item.id);
  if (read.status !== 'ok') return fail(waitsOn(item.id, read.problem.message));
  const { column } = item;
  return succeed({
    id: item.id,
    name: column.name,
    label: column.label ?? '',
    unit: labelUnit(read.unit, view, notebook.model.registry),
    values: Array.from(read.reading.values),
  });
}

/** A column as texts; numbers are written in the column's unit. */
export function readTexts(notebook: Notebook, item: ColumnItem): Outcome<Texts> {
  const read = notebook.column(item.id);
  if (read.status !== 'ok') return fail(waitsOn(item.id, read.problem.message));
  const { reading } = read;
  const { column } = item;
  return succeed({
    id: item.id,
    name: column.name,
    label: column.label ?? '',
    values: Array.from({ length: reading.length }, (_, row) => {
      const value = reading.values[row] ?? Number.NaN;
      if (reading.holds !== 'number') return reading.textAt(row);
      return Number.isNaN(value) ? undefined : writeIn(value, read.unit);
    }),
  });
}
