import { findColumn, findRow, findSheet, findTable } from '../../document/index.ts';
import { type Item, type Notebook, referencesOfItem } from '../../notebook/index.ts';
import type { CellPlace } from './place.ts';

/** Where a line or column stands: its value cell, or its heading in the table. */
export function placeOfId(notebook: Notebook, id: string): CellPlace | undefined {
  const item = notebook.model.items.get(id);
  const sheet = item && findSheet(notebook.book, item.sheet);
  if (!item || !sheet) return undefined;
  if (item.kind === 'input' || item.kind === 'formula') {
    const found = findRow(sheet, item.row.name);
    return found && { sheet: sheet.key, part: found.place.part, item: found.place.row, field: 'value' };
  }
  const table = findTable(sheet, item.table.slice(sheet.key.length + 1));
  const column = table && findColumn(table.table, item.column.name);
  if (!table || !column) return undefined;
  return {
    sheet: sheet.key,
    part: table.place.table,
    item: table.table.length === 0 ? 'head' : 'r0',
    field: column.id,
  };
}

/** The line or column that a place belongs to, if it belongs to one. */
export function itemAt(notebook: Notebook, place: CellPlace | undefined): Item | undefined {
  if (!place) return undefined;
  const part = findSheet(notebook.book, place.sheet)?.parts.find((one) => one.id === place.part);
  if (part?.kind === 'rows') {
    const row = part.rows.find((one) => one.id === place.item);
    return row && notebook.model.items.get(`${place.sheet}.${row.name}`);
  }
  if (part?.kind !== 'table') return undefined;
  // A column is a field of the table's rows; below the table its formula is a line of its own.
  const column = part.columns.find((one) => one.id === place.field || one.id === place.item);
  return column && notebook.model.items.get(`${place.sheet}.${part.name}.${column.name}`);
}

/** What refers to a line or column. */
export function feedsOf(notebook: Notebook, id: string): readonly Item[] {
  return [...notebook.model.items.values()].filter(
    (item) => 'checked' in item && (referencesOfItem(item).has(id) || item.methods?.byId === id),
  );
}

/** What a line or column refers to. */
export function dependsOn(notebook: Notebook, item: Item): readonly Item[] {
  if (!('checked' in item)) return [];
  const chooses = item.methods?.byId === undefined ? [] : [item.methods.byId];
  return [...new Set([...chooses, ...referencesOfItem(item)])].flatMap(
    (id) => notebook.model.items.get(id) ?? [],
  );
}
