import type { Problem } from '../diagnostics/index.ts';
import type { Notebook } from './notebook.ts';

/** Those problems of a book that are to be mended: not what only waits, for an entry, another line or its own formula. */
export function toMend(
  notebook: Notebook,
  problems: readonly Problem[] = notebook.problems(),
): readonly Problem[] {
  // A row in which nothing is entered is told once: what fails in it lacks an entry, and is no slip.
  const blank = new Set(
    problems.flatMap((found) =>
      found.code === 'row-incomplete' && found.data.empty === true ? [rowOf(found)] : [],
    ),
  );
  return problems.filter(
    (found) =>
      found.severity === 'error' &&
      !waits(found, notebook) &&
      !(found.code === 'row-fails' && blank.has(rowOf(found))),
  );
}

/** The table of a problem and the number of its row. */
function rowOf({ cell = '', data }: Problem): string {
  return `${cell.slice(0, cell.lastIndexOf('.'))} ${Number(data.row)}`;
}

/** Whether the line, column or row of a problem only waits: on another one, or for its formula to be written. */
export function waits({ cell, code, data }: Problem, notebook: Notebook): boolean {
  const item = cell === undefined ? undefined : notebook.model.items.get(cell);
  if (!item) return false;
  if (item.kind === 'input' || item.kind === 'formula') return notebook.result(item.id).status === 'waiting';
  const column = notebook.column(item.id);
  if (column.status !== 'ok') return column.status === 'waiting';
  return code === 'row-fails' && column.reading.statusAt(Number(data.row) - 1) !== 'problem';
}
