import type { Problem } from '../../../diagnostics/index.ts';
import type { Column, Table } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import { problemInWords, unlistedKeys } from '../../../record/index.ts';
import { blankRowsOf } from './blank-rows.ts';

/** A row of a table that has a problem of its own, with the sentence. */
export interface BadRow {
  readonly row: number;
  readonly column: string;
  readonly name: string;
  readonly message: string;
  /** Whether it is the cause of what fails in its row: what chooses there is blank. */
  readonly isCause?: boolean;
}

/** What of the entries of a table nothing reads, by its first row. */
export function unreadRows(notebook: Notebook, tableId: string, { columns }: Table): readonly BadRow[] {
  const sheet = tableId.slice(0, tableId.indexOf('.'));
  const byId = new Map(columns.map((column) => [`${tableId}.${column.name}`, column]));
  return notebook.problems().flatMap((found) => {
    const column = byId.get(found.cell ?? '');
    if (found.code !== 'entry-unread' || !column || typeof found.data.row !== 'number') return [];
    const isCause = found.data.blank === true;
    return [{ ...told(notebook, sheet, column, found.data.row - 1, found), ...(isCause && { isCause }) }];
  });
}

function told(notebook: Notebook, sheet: string, column: Column, row: number, found: Problem): BadRow {
  const { message, hints } = problemInWords(found, notebook, sheet);
  return { row, column: column.id, name: column.name, message: [message, ...hints].join('; ') };
}

/**
 * The first bad rows of a table, and whether there are more: entries that stand in no row of a list, and what has no value. A
 * blank row is told of once, and not by what fails in it.
 */
export function badRows(
  notebook: Notebook,
  tableId: string,
  table: Table,
  most: number,
): { readonly listed: readonly BadRow[]; readonly more: boolean } {
  const listed: BadRow[] = [];
  const isBlank = table.length === undefined ? () => false : blankRowsOf(table);
  const sheet = tableId.slice(0, tableId.indexOf('.'));
  for (const column of table.columns) {
    for (const [row, found] of unlistedKeys(notebook, `${tableId}.${column.name}`)) {
      if (listed.length >= most) return { listed, more: true };
      listed.push(told(notebook, sheet, column, row, found));
    }
    const result = notebook.column(`${tableId}.${column.name}`);
    if (result.status !== 'ok' || result.reading.gaps === 0) continue;
    const { values, length } = result.reading;
    for (let row = 0; row < length; row += 1) {
      if (!Number.isNaN(values[row] ?? Number.NaN) || result.reading.statusAt(row) !== 'problem') continue;
      if (isBlank(row)) continue;
      if (listed.length >= most) return { listed, more: true };
      const found = result.reading.problemAt(row);
      if (!found) continue;
      listed.push(told(notebook, sheet, column, row, found));
    }
  }
  return { listed, more: false };
}
