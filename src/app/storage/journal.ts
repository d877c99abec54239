import { BookChanged, BookRemoved } from './storage-error.ts';
import { type BookMetadata, type Database, type JournalEntry, journalFrom } from './stores.ts';
import { abortTransaction, inTransaction, isNamed } from './transaction.ts';

/**
 * Adds an edit to a book's journal, and is done when the disk has it. The transaction is on its way before this returns,
 * so that a tab that is closed with the key still has its edit kept. Throws {@link BookChanged} or {@link BookRemoved}
 * where the stored book is not the one with the edit before: then nothing of it is stored.
 */
export async function appendToJournal(
  database: Database,
  entry: JournalEntry,
  about: Omit<BookMetadata, 'id' | 'sequence'>,
): Promise<void> {
  const { book: id, number } = entry;
  const transaction = database.transaction(['books', 'journal'], 'readwrite', { durability: 'strict' });
  const journal = transaction.objectStore('journal');
  const requests: Promise<unknown>[] = [transaction.done];
  try {
    const before = journal.getKey([id, number - 1]);
    // One by one: where the next is refused at once, this one is waited for all the same.
    requests.push(before);
    requests.push(journal.add(entry));
    requests.push(transaction.objectStore('books').put({ id, ...about, sequence: number }));
    transaction.commit();
    await Promise.all(requests);
    if ((await before) !== undefined) return;
  } catch (error) {
    abortTransaction(transaction);
    await Promise.allSettled(requests);
    // The number is taken: another tab has added an edit.
    throw isNamed(error, 'ConstraintError') ? new BookChanged() : error;
  }
  throw await takeBack(database, entry);
}

/** Takes an entry back that stands behind none, and tells what has become of its book. */
function takeBack(database: Database, { book: id, number }: JournalEntry): Promise<Error> {
  return inTransaction(database, 'readwrite', async (transaction) => {
    const [books, journal] = [transaction.objectStore('books'), transaction.objectStore('journal')];
    await journal.delete([id, number]);
    const snapshot = await transaction.objectStore('texts').getKey(id);
    const last = await journal.openKeyCursor(journalFrom(id), 'prev');
    const metadata = await books.get(id);
    if (snapshot === undefined) await books.delete(id);
    else if (metadata) await books.put({ ...metadata, sequence: last?.primaryKey[1] ?? 0 });
    return snapshot === undefined ? new BookRemoved() : new BookChanged();
  });
}

/** The number of the last edit that is stored of a book; undefined where the book is not there. */
export function readLastNumber(database: Database, id: string): Promise<number | undefined> {
  return inTransaction(database, 'readonly', async (transaction) => {
    const snapshot = await transaction.objectStore('texts').getKey(id);
    const last = await transaction.objectStore('journal').openKeyCursor(journalFrom(id), 'prev');
    const metadata = await transaction.objectStore('books').get(id);
    if (snapshot === undefined) return undefined;
    return Math.max(last?.primaryKey[1] ?? 0, metadata?.sequence ?? 0);
  });
}
