import type { Table } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import { problemInWords } from '../../view-model/persons-words.ts';
import { blankRowsOf } from './blank-rows.ts';

/** A row of a table that has a problem of its own, with the sentence. */
export interface BadRow {
  readonly row: number;
  readonly column: string;
  readonly name: string;
  readonly message: string;
}

/** The first bad rows of a table, and whether there are more. A blank row is told of once, and not by what fails in it. */
export function badRows(
  notebook: Notebook,
  tableId: string,
  table: Table,
  most: number,
): { readonly listed: readonly BadRow[]; readonly more: boolean } {
  const listed: BadRow[] = [];
  const isBlank = table.length === undefined ? () => false : blankRowsOf(table);
  for (const column of table.columns) {
    const result = notebook.column(`${tableId}.${column.name}`);
    if (result.status !== 'ok' || result.reading.gaps === 0) continue;
    const { values, length } = result.reading;
    for (let row = 0; row < length; row += 1) {
      if (!Number.isNaN(values[row] ?? Number.NaN) || result.reading.statusAt(row) !== 'problem') continue;
      if (isBlank(row)) continue;
      if (listed.length >= most) return { listed, more: true };
      const found = result.reading.problemAt(row);
      if (!found) continue;
      const problem = problemInWords(found, notebook, tableId.slice(0, tableId.indexOf('.')));
      const hint = problem.hints.map((text) => `; ${text}`).join('');
      listed.push({ row, column: column.id, name: column.name, message: `${problem.message}${hint}` });
    }
  }
  return { listed, more: false };
}
