import type { Outcome } from '../../diagnostics/index.ts';
import { type Notebook, unitProblems } from '../../notebook/index.ts';
import type { ReadTable } from '../../tables/index.ts';

/** Rows read for a table of a notebook (`id` is `sheet.table`); a unit that its column does not read refuses them. */
export function unitsRead(notebook: Notebook, id: string, read: Outcome<ReadTable>): Outcome<ReadTable> {
  if (!read.ok) return read;
  const problems = unitProblems(notebook, id, read.value.units);
  return problems.length > 0 ? { ok: false, problems } : read;
}
