import { type Outcome, succeed } from '../../diagnostics/index.ts';
import { applyEdit, type Book, type Case, type Edit, joinEdits } from '../../document/index.ts';
import { enterRows, enterValues, type Notebook, openNotebook } from '../../notebook/index.ts';

/**
 * The edit that enters the inputs of a case in a template's book, or what is wrong with them. What a case sets or lists
 * for a calculated line or column is stated there, with the source of the case as the reason.
 */
export function caseEdit(book: Book, example: Case): Outcome<Edit> {
  const entered: Edit[] = [];
  for (const [name, rows] of Object.entries(example.tables ?? {})) {
    const edit = enterRows(book, name, rows, example.source);
    if (!edit.ok) return edit;
    entered.push(edit.value);
  }
  const values = enterValues(book, example.set ?? {}, example.source);
  return values.ok ? succeed(joinEdits('enter a case', [...entered, values.value])) : values;
}

/** A template's book with the inputs of a case entered, or what is wrong with them. */
export function prepareCase(book: Book, example: Case): Outcome<Notebook> {
  const edit = caseEdit(book, example);
  if (!edit.ok) return edit;
  // All at once: the book is understood and computed a single time.
  const applied = applyEdit(book, edit.value);
  return applied.ok ? succeed(openNotebook(applied.value.book)) : applied;
}
