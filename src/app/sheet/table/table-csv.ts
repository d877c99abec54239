import type { Column, Table } from '../../../document/index.ts';
import { cellOf } from '../../../document/index.ts';
import type { ColumnResult, Notebook } from '../../../notebook/index.ts';
import { writeTable } from '../../../tables/index.ts';
import { writeIn } from '../../../units/index.ts';

/**
 * A table as CSV: numbers in the unit of their column, which its header states, also those that were typed in another
 * one; what has no such value as it was typed, and nothing where a calculated cell has no value.
 */
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
        words: holdsWords(column, result),
        cells: Array.from({ length }, (_, row) => cell(column, result, row)),
      };
    }),
  );
}

function cell(column: Column, result: ColumnResult, row: number): number | string | null {
  const typed = column.kind === 'given' ? (cellOf(column, row) ?? null) : undefined;
  if (typed !== undefined && (typeof typed !== 'string' || !isPlain(column, result))) return typed;
  if (result.status !== 'ok') return typed ?? null;
  const { reading, unit } = result;
  const value = reading.values[row] ?? Number.NaN;
  if (Number.isNaN(value)) return typed ?? null;
  if (reading.holds === 'text') return reading.textAt(row) ?? null;
  if (reading.holds === 'truth') return value === 1 ? 'true' : 'false';
  if (unit.point === 'date') return writeIn(value, unit);
  // Without the last digits that a computation or a change of units leaves.
  return Number(writeIn(value, unit, { digits: 14, grouping: 'none' }));
}

/** Whether a column holds numbers in a unit that can stand in a header once for all: no dates, levels or temperatures. */
function isPlain(column: Column, result: ColumnResult): boolean {
  if (column.kind !== 'given' || (column.type ?? 'number') !== 'number') return false;
  return result.status === 'ok' && result.unit.point === undefined;
}

function holdsWords(column: Column, result: ColumnResult): boolean {
  if (column.kind === 'given') return column.type === 'text';
  return result.status === 'ok' && result.reading.holds === 'text';
}
