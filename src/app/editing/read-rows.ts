import type { Outcome } from '../../diagnostics/index.ts';
import type { Table } from '../../document/index.ts';
import { type Notebook, unitProblems } from '../../notebook/index.ts';
import { type ReadOptions, type ReadTable, readTable } from '../../tables/index.ts';

/**
 * Rows for a table of a notebook (`id` is `sheet.table`) from a text with headers. A unit in a header that its column
 * does not read refuses the whole.
 */
export function readRows(
  notebook: Notebook,
  id: string,
  table: Table,
  text: string,
  options: ReadOptions = {},
): Outcome<ReadTable> {
  const read = readTable(text, table.columns, options);
  if (!read.ok) return read;
  const problems = unitProblems(notebook, id, read.value.units);
  return problems.length > 0 ? { ok: false, problems } : read;
}
