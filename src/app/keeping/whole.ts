import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import { applyEdit, type Book, openBook, writeBook } from '../../document/index.ts';
import { type Database, inTransaction, journalFrom, journalThrough, type StoredCard } from './database.ts';

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
  const text = writeBook(book);
  await inTransaction(database, async (stores) => {
    await stores('texts').put({ id: card.id, text });
    await stores('books').put({ ...card, name: nameOf(book) });
    await stores('journal').delete(journalThrough(card.id, card.through));
  });
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
  const { book, from, through } = kept.value;
  const text = writeBook(book);
  await inTransaction(database, async (stores) => {
    const card = await stores('books').get(id);
    // Gone meanwhile, or written whole by the page: then there is nothing to fold.
    if (card?.through !== from) return;
    await stores('texts').put({ id, text });
    await stores('books').put({ ...card, through });
    await stores('journal').delete(journalThrough(id, through));
  });
}

async function readThrough(
  database: Database,
  id: string,
): Promise<Outcome<{ readonly book: Book; readonly from: number; readonly through: number }>> {
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
  return succeed({ book, from: card.through, through });
}
