import { type DBSchema, type IDBPDatabase, type IDBPObjectStore, type IDBPTransaction, openDB } from 'idb';
import type { Edit } from '../../document/index.ts';

/** What is known of a kept book without reading it. */
export interface StoredCard {
  readonly id: string;
  readonly name: string;
  readonly changed: number;
  /** The number of the last edit that is in the text. */
  readonly through: number;
}
/** A book as last written whole; the journal holds the edits since. */
export interface StoredText {
  readonly id: string;
  /** Read again through the same door as a file. */
  readonly text: string;
}
/** One edit of the journal, in the order of its number. */
export interface StoredEdit {
  readonly book: string;
  readonly number: number;
  readonly edit: Edit;
}

interface Schema extends DBSchema {
  books: { key: string; value: StoredCard };
  texts: { key: string; value: StoredText };
  journal: { key: [string, number]; value: StoredEdit };
}
export type Database = IDBPDatabase<Schema>;

/**
 * Opens the storage of this browser. A text lies apart from its card, because the card is written with every edit, and
 * a large book takes longer to write than a keystroke may.
 */
export async function openDatabase(): Promise<Database> {
  return openDB<Schema>('quaybook', 2, {
    upgrade: (database, before, _after, transaction) => {
      if (before === 0) {
        database.createObjectStore('books', { keyPath: 'id' });
        database.createObjectStore('journal', { keyPath: ['book', 'number'] });
      }
      if (database.objectStoreNames.contains('texts')) return;
      database.createObjectStore('texts', { keyPath: 'id' });
      // A transaction taken back leaves the first version as it was, and the opening is refused.
      partTextsFromCards(transaction).catch(() => transaction.abort());
    },
  });
}

/** The first version kept the text with the card. */
async function partTextsFromCards(
  transaction: IDBPTransaction<Schema, StoreName[], 'versionchange'>,
): Promise<void> {
  for (const stored of await transaction.objectStore('books').getAll()) {
    const { text, ...card } = stored as StoredCard & Pick<StoredText, 'text'>;
    await transaction.objectStore('texts').put({ id: card.id, text });
    await transaction.objectStore('books').put(card);
  }
}

type StoreName = 'books' | 'texts' | 'journal';
type Stores = <Name extends StoreName>(name: Name) => IDBPObjectStore<Schema, StoreName[], Name, 'readwrite'>;

/** Writes all of it or nothing, and is done when the disk has it. Throws what a request or the end of it threw. */
export async function inTransaction(
  database: Database,
  write: (stores: Stores) => Promise<void>,
): Promise<void> {
  const names: StoreName[] = ['books', 'texts', 'journal'];
  const transaction = database.transaction(names, 'readwrite', { durability: 'strict' });
  await Promise.all([write((name) => transaction.objectStore(name)), transaction.done]);
}

/** All numbers of one book's journal, from one on. */
export function journalFrom(book: string, number = 0): IDBKeyRange {
  return IDBKeyRange.bound([book, number], [book, Number.MAX_SAFE_INTEGER]);
}

/** The journal of a book up to a number. */
export function journalThrough(book: string, number: number): IDBKeyRange {
  return IDBKeyRange.bound([book, 0], [book, number]);
}
