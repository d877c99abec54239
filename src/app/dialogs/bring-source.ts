import type { Book } from '../../document/index.ts';
import { shippedTemplates } from '../shipped/templates.ts';
import type { BookStore, ListedBook } from '../storage/book-store.ts';

/** Where a new sheet comes from. */
export type SheetSource = 'blank' | 'template' | 'kept' | 'file';

/** The sources in words, in the order they are offered. */
export const sourceWords: Readonly<Record<SheetSource, string>> = {
  blank: 'blank',
  template: 'from a template',
  kept: 'from a book kept here',
  file: 'from a file',
};

/** A book that sheets can be brought from. */
export interface OfferedBook {
  readonly id: string;
  readonly name: string;
  /** Fetches it; throws with the reason where it cannot be had. */
  readonly open: () => Promise<Book>;
}

/** The shipped templates. */
export function offeredTemplates(): readonly OfferedBook[] {
  return shippedTemplates.map(({ id, title, open }) => ({ id, name: title, open }));
}

/** The other books of this browser, the last changed first. */
export async function offerStoredBooks(store: BookStore, own: string): Promise<readonly OfferedBook[]> {
  const listed = await store.list();
  return listed
    .filter(({ id }) => id !== own)
    .map((kept: ListedBook) => ({
      id: kept.id,
      name: kept.name || 'Untitled book',
      open: async () => {
        const read = await store.read(kept.id);
        if (!read.ok) throw new Error(read.problems[0]?.message);
        return read.value;
      },
    }));
}
