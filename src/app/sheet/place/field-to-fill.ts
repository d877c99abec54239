import type { Sheet } from '../../../document/index.ts';
import { type GridRow, tableRow } from './grid-map.ts';

/**
 * The field of a row that a person fills in: the value of a given or a choice, a formula that is not written yet, the
 * first given cell of a table's row. Undefined for a formula that is, for words, titles and headings.
 */
export function fieldToFill(sheet: Sheet, { part, item }: GridRow): string | undefined {
  const found = sheet.parts.find(({ id }) => id === part);
  if (found?.kind === 'rows') {
    const row = found.rows.find(({ id }) => id === item);
    return row && (row.kind === 'given' || row.kind === 'choice' || isUnwritten(row)) ? 'value' : undefined;
  }
  if (found?.kind !== 'table') return undefined;
  if (tableRow(item) !== undefined) return found.columns.find(({ kind }) => kind === 'given')?.id;
  const column = found.columns.find(({ id }) => id === item);
  return column && column.kind !== 'given' && isUnwritten(column) ? 'value' : undefined;
}

function isUnwritten({ formula }: { readonly formula?: string }): boolean {
  return formula?.trim() === '';
}
