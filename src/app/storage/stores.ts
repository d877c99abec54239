import type { DBSchema, IDBPDatabase } from 'idb';
import type { Edit } from '../../document/index.ts';

/** What is known of a stored book without reading it. */
export interface BookMetadata {
  readonly id: string;
  readonly name: string;
  /** When it was last changed, in milliseconds. */
  readonly changed: number;
  /** How many sheets it has; none where it was last kept before this was counted. */
  readonly sheets?: number;
  /** The number of its last edit: a journal that ends before it has lost its end. */
  readonly sequence: number;
}
/** A book as it was once, in full. */
export interface Snapshot {
  readonly id: string;
  /** Read again through the same door as a file. */
  readonly text: string;
  /** The number of the last edit that is in the text. */
  readonly through: number;
}
/**
 * One edit of a book. Numbers have no gaps; the entry whose number is the snapshot's stays, though its edit is in the
 * snapshot, so that each entry to be added finds the one before it.
 */
export interface JournalEntry {
  readonly book: string;
  readonly number: number;
  /** None where a snapshot was written without an edit of its own. */
  readonly edit?: Edit;
}

export interface Schema extends DBSchema {
  books: { key: string; value: BookMetadata };
  texts: { key: string; value: Snapshot };
  journal: { key: [string, number]; value: JournalEntry };
}
export type StoreName = 'books' | 'texts' | 'journal';
export type Database = IDBPDatabase<Schema>;

/** Every store: what concerns a book is written in one transaction or not at all. */
export const allStores: readonly StoreName[] = ['books', 'texts', 'journal'];

/** The entries of one book's journal, from one number on. */
export function journalFrom(book: string, number = 0): IDBKeyRange {
  return IDBKeyRange.bound([book, number], [book, Number.MAX_SAFE_INTEGER]);
}

/** The entries of a book's journal in front of a number. */
export function journalBefore(book: string, number: number): IDBKeyRange {
  return IDBKeyRange.bound([book, 0], [book, number], false, true);
}
