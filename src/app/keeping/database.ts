import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Edit } from '../../document/index.ts';

/** A book as last written whole; the journal holds the edits since. */
export interface StoredBook {
  readonly id: string;
  readonly name: string;
  readonly changed: number;
  /** The text of the book, read again through the same door as a file. */
  readonly text: string;
  /** The number of the last edit that is in the text. */
  readonly through: number;
}
/** One edit of the journal, in the order of its number. */
export interface StoredEdit {
  readonly book: string;
  readonly number: number;
  readonly edit: Edit;
}

interface Schema extends DBSchema {
  books: { key: string; value: StoredBook };
  journal: { key: [string, number]; value: StoredEdit };
}
export type Database = IDBPDatabase<Schema>;

export function openDatabase(): Promise<Database> {
  return openDB<Schema>('quaybook', 1, {
    upgrade: (database) => {
      database.createObjectStore('books', { keyPath: 'id' });
      database.createObjectStore('journal', { keyPath: ['book', 'number'] });
    },
  });
}

/** All numbers of one book's journal, from one on. */
export function journalFrom(book: string, number = 0): IDBKeyRange {
  return IDBKeyRange.bound([book, number], [book, Number.MAX_SAFE_INTEGER]);
}

/** The journal of a book up to a number. */
export function journalThrough(book: string, number: number): IDBKeyRange {
  return IDBKeyRange.bound([book, 0], [book, number]);
}
