import type { Outcome } from '../../diagnostics/index.ts';
import type { Book } from '../../document/index.ts';
import type { Autosave } from './autosave.ts';
import type { JournalLoss } from './snapshot.ts';
import type { StoreNotice } from './store-notice.ts';

/** A book that can be opened, as the start page lists it. */
export interface ListedBook {
  readonly id: string;
  /** Project, subject, job and revision of its title block, as far as they are filled in. */
  readonly name: string;
  /** How many sheets it has; undefined where that is not known before it is opened. */
  readonly sheets: number | undefined;
  /** When it was last changed, in milliseconds. */
  readonly changed: number;
  /** Why it stands in this tab alone, where the storage of the browser has not taken it. */
  readonly unsaved: string | undefined;
}

/** A book that was opened, with what keeps its edits. */
export interface OpenBook {
  readonly id: string;
  readonly book: Book;
  readonly autosave: Autosave;
  /** What of the stored edits could not be read; the book is as it was before them. */
  readonly loss: JournalLoss | undefined;
  /**
   * Opens what is stored in place of the book here, which is given up with all that is not kept of it. Where nothing can be
   * opened, the book here goes on, and its autosave says what has become of the stored one.
   */
  readonly takeStored: () => Promise<Outcome<OpenBook>>;
  /**
   * Lets go of the book, so that it can be opened again, here or elsewhere. What is not kept stays in this tab, as this
   * book or as one of its own.
   */
  readonly close: () => void;
}

/** The books of this browser. Its storage is never the only copy: files are saved beside it. */
export interface BookStore {
  readonly list: () => Promise<readonly ListedBook[]>;
  /** Keeps a new book and gives its id; where the storage does not take it, in this tab alone. */
  readonly add: (book: Book) => Promise<string>;
  /** The book as last kept, its journal of edits applied. Throws where the storage does not answer. */
  readonly open: (id: string) => Promise<Outcome<OpenBook>>;
  /** The book as it stands, for its sheets to be looked at or brought elsewhere; it is not opened and cannot be changed. */
  readonly read: (id: string) => Promise<Outcome<Book>>;
  /** Everything that is stored of a book, as one JSON text to look into when it cannot be opened. */
  readonly rawText: (id: string) => Promise<string>;
  /** Whether the book is open in some tab; undefined where the browser cannot tell. */
  readonly isOpen: (id: string) => Promise<boolean | undefined>;
  readonly remove: (id: string) => Promise<void>;
  /** Whether some book of this tab has what would be lost with the tab. */
  readonly hasUnsaved: () => boolean;
  readonly onNotice: (listener: (notice: StoreNotice) => void) => () => void;
}
