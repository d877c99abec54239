import type { Outcome } from '../diagnostics/index.ts';
import { type Edit, joinEdits } from '../document/index.ts';
import type { AppliedEdit, Notebook } from './notebook.ts';

/**
 * Enters edits that were all made for a book as it is now, each in place of the one before. Taking back and entering are
 * one step, for the book is understood anew for each. One that is refused leaves the one before in place.
 */
export function enterInTurn(notebook: Notebook): (edit: Edit) => Outcome<AppliedEdit> {
  let back: Edit | undefined;
  return (edit) => {
    const applied = notebook.apply(back ? joinEdits(edit.label, [back, edit]) : edit);
    if (!applied.ok) return applied;
    // The inverse takes back what was entered last before all else.
    back = { label: edit.label, patches: applied.value.inverse.patches.slice(0, edit.patches.length) };
    return applied;
  };
}
