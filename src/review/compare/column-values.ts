import type { Notebook, Value } from '../../notebook/index.ts';
import { areEqual, PLAIN_UNIT, type Unit } from '../../units/index.ts';

/** The rows of a column as they are compared. */
export interface ColumnValues {
  readonly length: number;
  readonly holds: 'number' | 'text' | 'truth' | undefined;
  readonly unit: Unit;
  /** SI numbers, truth 1 or 0; NaN where a row has no value. */
  readonly numbers: Float64Array;
  readonly textAt: (row: number) => string | undefined;
  /** Undefined where a row has no value. */
  readonly valueAt: (row: number) => Value | undefined;
}

const NO_NUMBERS = new Float64Array(0);

/** Reads a column; one that has a problem as a whole has no values. */
export function readColumn(notebook: Notebook, id: string): ColumnValues {
  const column = notebook.column(id);
  if (column.status !== 'ok')
    return {
      length: 0,
      holds: undefined,
      unit: PLAIN_UNIT,
      numbers: NO_NUMBERS,
      textAt: () => undefined,
      valueAt: () => undefined,
    };
  const { reading, unit } = column;
  const { holds, values } = reading;
  return {
    length: reading.length,
    holds,
    unit,
    numbers: values,
    textAt: reading.textAt,
    valueAt: (row) => {
      const si = values[row];
      if (si === undefined || Number.isNaN(si)) return undefined;
      if (holds === 'number') return { kind: 'number', si, unit };
      if (holds === 'truth') return { kind: 'truth', truth: si === 1 };
      const text = reading.textAt(row);
      return text === undefined ? undefined : { kind: 'text', text };
    },
  };
}

/** Whether a row of one column has what a row of the other has, but for what rounding leaves. */
export function sameInRow(a: ColumnValues, before: number, b: ColumnValues, after: number): boolean {
  const [x, y] = [a.numbers[before] ?? Number.NaN, b.numbers[after] ?? Number.NaN];
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.isNaN(x) === Number.isNaN(y);
  if (a.holds !== b.holds) return false;
  if (a.holds === 'text') return a.textAt(before) === b.textAt(after);
  return areEqual(x, y) && a.unit.dimension.key === b.unit.dimension.key && a.unit.point === b.unit.point;
}
