import { type Problem, problem } from '../diagnostics/index.ts';
import type { Cell } from '../document/index.ts';
import { readCell } from './columns.ts';
import type { InputColumnItem } from './model.ts';
import type { Notebook } from './notebook.ts';

const nowhere = { from: 0, to: 0 };

/** What is wrong with the units stated for columns of a table (`sheet.table`), by the columns' names. */
export function unitProblems(
  notebook: Notebook,
  table: string,
  units: Readonly<Record<string, string>>,
): readonly Problem[] {
  return Object.entries(units).flatMap(([name, unit]) => {
    // A unit is read with one of it as the cell, for so it will stand behind each number.
    const found = cellProblem(notebook, columnOf(notebook, table, name), `1 ${unit}`);
    return found ? [problem('column-unit-unread', nowhere, { column: name, unit, ...inside(found) })] : [];
  });
}

/** The cells that columns of a table (`sheet.table`) would not read, row by row, without entering them. */
export function unreadCells(
  notebook: Notebook,
  table: string,
  cells: Readonly<Record<string, readonly Cell[]>>,
): readonly Problem[] {
  const unread = Object.entries(cells).flatMap(([name, values]) => {
    const item = columnOf(notebook, table, name);
    return values.flatMap((cell, at) => {
      const found = cellProblem(notebook, item, cell);
      return found ? [{ row: at + 1, column: name, ...inside(found) }] : [];
    });
  });
  return unread.sort((a, b) => a.row - b.row).map((facts) => problem('cell-unread', nowhere, facts));
}

function columnOf({ model }: Notebook, table: string, name: string): InputColumnItem {
  const item = model.items.get(`${table}.${name}`);
  if (item?.kind !== 'input column') throw new Error(`${table}.${name} is no given column`);
  return item;
}

function cellProblem({ model }: Notebook, item: InputColumnItem, cell: Cell): Problem | undefined {
  const value = readCell(cell, item.column, item.unit, model.registry);
  return typeof value === 'object' ? value : undefined;
}

function inside({ message, hints }: Problem): { readonly reason: string; readonly remedy: string } {
  return { reason: message, remedy: hints.join('; ') };
}
