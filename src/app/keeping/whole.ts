import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import { applyEdit, type Book, openBook, writeBook } from '../../document/index.ts';
import { type Database, journalFrom, journalThrough, type StoredCard } from './database.ts';

/** What the list of books calls a book. */
export function nameOf({ title }: Book): string {
  return [title.project, title.subject].filter((text) => text !== '').join(', ');
}

/** Writes a new book. */
export async function writeNew(
  database: Database,
  card: Pick<StoredCard, 'id' | 'changed'>,
  book: Book,
): Promise<void> {
  const transaction = database.transaction(['books', 'texts'], 'readwrite', { durability: 'strict' });
  await transaction.objectStore('texts').put({ id: card.id, text: writeBook(book) });
  await transaction.objectStore('books').put({ ...card, through: 0, name: nameOf(book) });
  await transaction.done;
}

/** The whole as last written, with the journal since applied; an edit that does not apply is said, never skipped. */
export async function readKept(database: Database, id: string): Promise<Outcome<Book>> {
  const kept = await readThrough(database, id);
  return kept.ok ? succeed(kept.value.book) : kept;
}

/**
 * Writes a book whole that is kept as an older whole and a journal. Edits that come in meanwhile stay in the journal.
 * Throws if the book cannot be read; what is kept stays as it was then.
 */
export async function foldJournal(database: Database, id: string): Promise<void> {
  const kept = await readThrough(database, id);
  if (!kept.ok) throw new Error(kept.problems[0]?.message ?? 'the book cannot be read');
  const { book, through } = kept.value;
  const text = writeBook(book);
  const transaction = database.transaction(['books', 'texts', 'journal'], 'readwrite', {
    durability: 'strict',
  });
  const card = await transaction.objectStore('books').get(id);
  if (card) {
    await transaction.objectStore('texts').put({ id, text });
    await transaction.objectStore('books').put({ ...card, through });
    await transaction.objectStore('journal').delete(journalThrough(id, through));
  }
  await transaction.done;
}

async function readThrough(
  database: Database,
  id: string,
): Promise<Outcome<{ readonly book: Book; readonly through: number }>> {
  const transaction = database.transaction(['books', 'texts', 'journal']);
  const card = await transaction.objectStore('books').get(id);
  const whole = await transaction.objectStore('texts').get(id);
  const journal = await transaction.objectStore('journal').getAll(journalFrom(id, (card?.through ?? 0) + 1));
  if (!card || !whole) return fail(problem('book-not-kept', { from: 0, to: 0 }, {}));
  const opened = openBook(whole.text);
  if (!opened.ok) return opened;
  let { book } = opened.value;
  let { through } = card;
  for (const { edit, number } of journal) {
    const applied = applyEdit(book, edit);
    if (!applied.ok) return applied;
    book = applied.value.book;
    through = number;
  }
  return succeed({ book, through });
}
