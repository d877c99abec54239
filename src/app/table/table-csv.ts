import type { Column, Table } from '../../document/index.ts';
import type { ColumnResult, Notebook } from '../../notebook/index.ts';
import { writeTable } from '../../tables/index.ts';
import { fromSI, writeIn } from '../../units/index.ts';
import { cellOf } from '../editing/cell-content.ts';

/** A table as CSV: entries as typed, what is calculated in the unit of its column, and nothing where it has no value. */
export function tableCsv(notebook: Notebook, sheet: string, table: Table): string {
  const id = `${sheet}.${table.name}`;
  const length = notebook.rowsOf(id) ?? 0;
  return writeTable(
    table.columns.map((column) => {
      const result = notebook.column(`${id}.${column.name}`);
      const unit = result.status === 'ok' ? result.unit : notebook.unitOf(`${id}.${column.name}`);
      return {
        name: column.name,
        unit: unit.text === '-' || unit.text === 'date' ? '' : unit.text,
        cells: Array.from({ length }, (_, row) => cell(column, result, row)),
      };
    }),
  );
}

function cell(column: Column, result: ColumnResult, row: number): number | string | null {
  if (column.kind === 'given') return cellOf(column, row) ?? null;
  if (result.status !== 'ok') return null;
  const { reading, unit } = result;
  const value = reading.values[row] ?? Number.NaN;
  if (Number.isNaN(value)) return null;
  if (reading.holds === 'text') return reading.textAt(row) ?? null;
  if (reading.holds === 'truth') return value === 1 ? 'true' : 'false';
  if (unit.point === 'date') return writeIn(value, unit);
  // Without the last digits that a change of units leaves.
  return Number(fromSI(value, unit).toPrecision(14));
}
