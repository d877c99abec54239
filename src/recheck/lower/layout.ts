import type { GridLabel, OpenSheet } from '../grid.ts';
import type { RecheckProgram } from '../program.ts';
import { FIRST_ROW, type TableSheet, VALUE_COLUMN, type ValuePlace } from './plan.ts';

/** Gives every cell its place, and tables their rows with the row numbers. */
export function layOut(
  program: RecheckProgram,
  lines: OpenSheet,
  tables: ReadonlyMap<string, TableSheet>,
  labels: GridLabel[],
): ReadonlyMap<string, ValuePlace> {
  for (const { table, sheet } of tables.values()) {
    labels.push({ sheet: sheet.name, row: 0, column: 0, text: table.id });
    sheet.rows.push([null]);
    for (let row = 0; row < table.rows; row += 1) sheet.rows.push([row + 1]);
  }
  const places = new Map<string, ValuePlace>();
  for (const cell of program.cells) {
    const id = cell.kind === 'input' ? undefined : cell.table;
    if (id === undefined) {
      const row = lines.rows.length;
      lines.rows.push([null, null]);
      labels.push({ sheet: lines.name, row, column: 0, text: cell.id });
      places.set(cell.id, { cell, sheet: lines, row, column: VALUE_COLUMN });
      continue;
    }
    const found = tables.get(id);
    if (!found) throw new Error(`${cell.id} is a column of ${id}, which the program does not contain`);
    const { sheet, table } = found;
    const column = sheet.rows[0]?.length ?? 0;
    for (const row of sheet.rows) row.push(null);
    labels.push({ sheet: sheet.name, row: 0, column, text: cell.id });
    places.set(cell.id, { cell, sheet, row: FIRST_ROW, column, count: table.rows });
  }
  return places;
}
