import type { Edit } from '../src/document/index.ts';
import type { Notebook } from '../src/notebook/index.ts';

/** Applies an edit that a test is sure of. */
export function apply(notebook: Notebook, edit: Edit): void {
  const done = notebook.apply(edit);
  if (!done.ok) throw new Error(done.problems.map(({ message }) => message).join('\n'));
}
