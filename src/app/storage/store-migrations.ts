import type { IDBPTransaction } from 'idb';
import { type Database, journalFrom, type Schema, type StoreName } from './stores.ts';

/** What the books' store held before: in the first version the text as well, in the second the snapshot's number. */
interface EarlierBook {
  readonly id: string;
  readonly name: string;
  readonly changed: number;
  readonly through?: number;
  readonly text?: string;
}

/** Brings the stores of any earlier version, or none, to this one. */
export async function migrateStores(
  database: Database,
  transaction: IDBPTransaction<Schema, StoreName[], 'versionchange'>,
): Promise<void> {
  const { objectStoreNames } = database;
  if (!objectStoreNames.contains('books')) database.createObjectStore('books', { keyPath: 'id' });
  if (!objectStoreNames.contains('texts')) database.createObjectStore('texts', { keyPath: 'id' });
  if (!objectStoreNames.contains('journal'))
    database.createObjectStore('journal', { keyPath: ['book', 'number'] });
  const [books, texts, journal] = [
    transaction.objectStore('books'),
    transaction.objectStore('texts'),
    transaction.objectStore('journal'),
  ];
  for (const stored of await books.getAll()) {
    const { id, name, changed, through = 0, text } = stored as EarlierBook;
    const snapshot = await texts.get(id);
    await texts.put({ id, text: text ?? snapshot?.text ?? '', through });
    const last = await journal.openKeyCursor(journalFrom(id), 'prev');
    await books.put({ id, name, changed, sequence: Math.max(through, last?.primaryKey[1] ?? 0) });
    if ((await journal.getKey([id, through])) === undefined) await journal.put({ book: id, number: through });
  }
}
