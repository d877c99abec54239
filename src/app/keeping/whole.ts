import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import { applyEdit, type Book, openBook, writeBook } from '../../document/index.ts';
import { type Database, journalFrom, journalThrough, type StoredCard } from './database.ts';

/** What the list of books calls a book. */
export function nameOf({ title }: Book): string {
  return [title.project, title.subject].filter((text) => text !== '').join(', ');
}

/** Writes a book whole; `through` is the number of the last edit in it, whose journal up to there is given up. */
export async function writeWhole(
  database: Database,
  card: Pick<StoredCard, 'id' | 'through' | 'changed'>,
  book: Book,
): Promise<void> {
  const transaction = database.transaction(['books', 'texts', 'journal'], 'readwrite', {
    durability: 'strict',
  });
  await transaction.objectStore('texts').put({ id: card.id, text: writeBook(book) });
  await transaction.objectStore('books').put({ ...card, name: nameOf(book) });
  await transaction.objectStore('journal').delete(journalThrough(card.id, card.through));
  await transaction.done;
}

/** The whole as last written, with the journal since applied; an edit that does not apply is said, never skipped. */
export async function readKept(database: Database, id: string): Promise<Outcome<Book>> {
  const transaction = database.transaction(['books', 'texts', 'journal']);
  const card = await transaction.objectStore('books').get(id);
  const whole = await transaction.objectStore('texts').get(id);
  const journal = await transaction.objectStore('journal').getAll(journalFrom(id, (card?.through ?? 0) + 1));
  if (!card || !whole) return fail(problem('book-not-kept', { from: 0, to: 0 }, {}));
  const opened = openBook(whole.text);
  if (!opened.ok) return opened;
  let { book } = opened.value;
  for (const { edit } of journal) {
    const applied = applyEdit(book, edit);
    if (!applied.ok) return applied;
    book = applied.value.book;
  }
  return succeed(book);
}
