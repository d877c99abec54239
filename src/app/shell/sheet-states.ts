import type { Problem } from '../../diagnostics/index.ts';
import type { Book } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';

/** How a sheet stands, for the list of sheets. */
export interface SheetState {
  readonly problems: number;
  readonly failing: number;
  readonly checks: number;
}

type States = ReadonlyMap<string, SheetState>;

// A book is a value: the same book has the same states, whoever asks.
const known = new WeakMap<Book, States>();

/** Problems and failing checks of every sheet, by key; found once for each state of the book. */
export function sheetStates(notebook: Notebook): States {
  const before = known.get(notebook.book);
  if (before) return before;
  const states = findStates(notebook);
  known.set(notebook.book, states);
  return states;
}

function findStates(notebook: Notebook): States {
  const states = new Map(
    notebook.book.sheets.map(({ key }) => [key, { problems: 0, failing: 0, checks: 0 }]),
  );
  for (const found of notebook.problems()) {
    const state = states.get(found.cell?.split('.')[0] ?? '');
    if (state && found.severity === 'error' && isOwn(found, notebook)) state.problems += 1;
  }
  for (const item of notebook.model.items.values()) {
    const state = states.get(item.sheet);
    if (!state || item.kind !== 'formula' || item.row.kind !== 'check') continue;
    state.checks += 1;
    if (notebook.verdict(item.id)?.holds === false) state.failing += 1;
  }
  return states;
}

/** Whether a problem is one to mend, and does not just wait on another. */
function isOwn({ cell, code, data }: Problem, notebook: Notebook): boolean {
  const item = cell === undefined ? undefined : notebook.model.items.get(cell);
  if (!item) return true;
  if (item.kind === 'input' || item.kind === 'formula') return notebook.result(item.id).status !== 'waiting';
  const column = notebook.column(item.id);
  if (column.status !== 'ok') return column.status !== 'waiting';
  return code !== 'row-fails' || column.reading.statusAt(Number(data.row) - 1) === 'problem';
}

/** The state in words. */
export function stateWords({ problems, failing, checks }: SheetState): string {
  if (problems > 0) return `${problems} ${problems === 1 ? 'problem' : 'problems'}`;
  if (failing > 0) return `${failing} ${failing === 1 ? 'fails' : 'fail'}`;
  return checks > 0 ? 'holds' : '';
}
