import { fail, type Outcome, problem, succeed } from '../../../diagnostics/index.ts';
import { findSheet, freshFor, type Sheet, type Table } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { chartTables, usualColumns } from './chart-columns.ts';
import { type Change, insertPartBelow } from './line-edits.ts';

/**
 * Puts a line chart below a place, of the nearest table at or above it, else of the first of the sheet. Refused on a
 * sheet without a table; undefined at a place that is not there.
 */
export function insertChart(notebook: Notebook, place: CellPlace): Outcome<Change> | undefined {
  const { book } = notebook;
  const sheet = findSheet(book, place.sheet);
  if (!sheet) return undefined;
  const table = tableNear(sheet, place.part);
  if (!table)
    return fail(problem('chart-without-table', { from: 0, to: 0 }, { sheet: sheet.title || sheet.key }));
  const fresh = freshFor(book, sheet);
  const columns = usualColumns(notebook, sheet.key, table);
  const chart = { id: fresh.id('p'), kind: 'chart', form: 'line', table: table.name, ...columns } as const;
  return succeed(insertPartBelow(book, sheet.key, place, chart, 'insert a chart', fresh));
}

function tableNear(sheet: Sheet, part: string): Table | undefined {
  const at = sheet.parts.findIndex(({ id }) => id === part);
  const tables = chartTables(sheet);
  return tables.findLast((one) => sheet.parts.indexOf(one) <= at) ?? tables[0];
}
