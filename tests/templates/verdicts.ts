import { templateBook } from '../../src/cli/books.ts';
import { type Edit, joinEdits } from '../../src/document/index.ts';
import { enterRows, enterValues, lineNamed, openNotebook } from '../../src/notebook/index.ts';

/** What is entered in a book: lines by name, and tables with all their rows. */
export interface Entered {
  readonly lines?: Readonly<Record<string, string>>;
  readonly tables?: Readonly<Record<string, readonly Readonly<Record<string, string | null>>[]>>;
}

/**
 * What checks of a book say once some values are entered: `passes`, `fails`, `does not apply` or `no value`; of another
 * line `a value` or `no value`.
 */
export function verdicts(
  id: string,
  { lines = {}, tables = {} }: Entered,
  names: readonly string[],
): string[] {
  const book = templateBook(id);
  const notebook = openNotebook(book);
  const edits: readonly Edit[] = [
    ...Object.entries(tables).map(([table, rows]) => enterRows(book, table, rows, 'a test')),
    enterValues(book, lines, 'a test'),
  ].map((outcome) => {
    if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
    return outcome.value;
  });
  if (!notebook.apply(joinEdits('a test', edits)).ok) throw new Error('a value cannot be entered');
  return names.map((name) => {
    const line = lineNamed(notebook.model, name);
    if (!line.ok) throw new Error(`there is no line ${name}`);
    const read = notebook.result(line.value.id);
    if (read.status === 'inapplicable') return `${name}: does not apply`;
    if (read.status !== 'ok') return `${name}: no value`;
    if (read.value.kind !== 'truth') return `${name}: a value`;
    return `${name}: ${read.value.truth ? 'passes' : 'fails'}`;
  });
}
