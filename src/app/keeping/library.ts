import type { Outcome } from '../../diagnostics/index.ts';
import type { Book } from '../../document/index.ts';
import type { Keeper } from '../session/session.ts';

/** A book kept in this browser, as the start page lists it. */
export interface KeptBook {
  readonly id: string;
  /** Project and subject of its title block. */
  readonly name: string;
  /** When it was last changed, in milliseconds. */
  readonly changed: number;
}

/** Something the person should know about where the book is kept. */
export type LibraryNotice =
  /** Another tab changed this book; it is opened anew from what is kept. */
  | { readonly kind: 'changed elsewhere'; readonly id: string }
  /** Another tab has this book open and writes it; here it is read only until it is closed there. */
  | { readonly kind: 'open elsewhere'; readonly id: string }
  /** The edits of this book are kept, but could not be gathered into a whole, and why. */
  | { readonly kind: 'cannot fold'; readonly id: string; readonly reason: string }
  /** Nothing can be kept in this browser, and why; a file keeps it. */
  | { readonly kind: 'cannot keep'; readonly reason: string };

/** A book in keeping. */
export interface Keeping {
  /** Writes each edit to the journal before it says kept. */
  readonly keep: Keeper;
  /** Lets go of the book when what was entered is written, so that it can be opened again, here or elsewhere. */
  readonly close: () => void;
}

/** Where books stand. Browser storage is never the only copy: files are saved beside it. */
export interface Shelf {
  readonly list: () => Promise<readonly KeptBook[]>;
  /** Keeps a new book and gives its id. */
  readonly add: (book: Book) => Promise<string>;
  /** The book as last kept, its journal of edits replayed. */
  readonly open: (id: string) => Promise<Outcome<Book>>;
  /** Takes a book that was opened into keeping, until it is closed. */
  readonly keeper: (id: string) => Keeping;
  readonly remove: (id: string) => Promise<void>;
}

/** The books of this browser, and what the person should know about their keeping. */
export interface Library extends Shelf {
  readonly onNotice: (listener: (notice: LibraryNotice) => void) => () => void;
}
