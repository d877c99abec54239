import type { Outcome } from '../../diagnostics/index.ts';
import type { Book, Case, Edit } from '../../document/index.ts';
import { enterRows, enterValues, type Notebook, openNotebook } from '../../notebook/index.ts';

/**
 * A template's book with the inputs of a case entered, or what is wrong with them. What a case sets or lists for a
 * calculated line or column is stated there, with the source of the case as the reason.
 */
export function prepareCase(book: Book, example: Case): Outcome<Notebook> {
  const notebook = openNotebook(book);
  const edits: Outcome<Edit>[] = [
    ...Object.entries(example.tables ?? {}).map(([name, rows]) =>
      enterRows(book, name, rows, example.source),
    ),
    enterValues(book, example.set ?? {}, example.source),
  ];
  for (const edit of edits) {
    if (!edit.ok) return edit;
    const applied = notebook.apply(edit.value);
    if (!applied.ok) return applied;
  }
  return { ok: true, value: notebook };
}
