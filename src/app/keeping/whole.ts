import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import { applyEdit, type Book, openBook, writeBook } from '../../document/index.ts';
import { type Database, journalFrom, type StoredBook } from './database.ts';

/** What the list of books calls a book. */
export function nameOf({ title }: Book): string {
  return [title.project, title.subject].filter((text) => text !== '').join(', ');
}

/** A book written whole; `through` is the number of the last edit in it. */
export function wholeOf(id: string, book: Book, through: number, changed: number): StoredBook {
  return { id, name: nameOf(book), changed, text: writeBook(book), through };
}

/** The whole as last written, with the journal since applied; an edit that does not apply is said, never skipped. */
export async function readKept(database: Database, id: string): Promise<Outcome<Book>> {
  const whole = await database.get('books', id);
  if (!whole) return fail(problem('book-not-kept', { from: 0, to: 0 }, {}));
  const opened = openBook(whole.text);
  if (!opened.ok) return opened;
  let { book } = opened.value;
  for (const { edit } of await database.getAll('journal', journalFrom(id, whole.through + 1))) {
    const applied = applyEdit(book, edit);
    if (!applied.ok) return applied;
    book = applied.value.book;
  }
  return succeed(book);
}
