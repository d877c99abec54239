import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import { applyEdit, type Book, openBook, writeBook } from '../../document/index.ts';
import { listedAs } from './book-name.ts';
import { BookChanged, BookRemoved } from './storage-error.ts';
import {
  type BookMetadata,
  type Database,
  type JournalEntry,
  journalBefore,
  journalFrom,
  type Snapshot,
} from './stores.ts';
import { inTransaction } from './transaction.ts';

/** Edits of the journal that cannot be read: those from `number` on. */
export interface JournalLoss {
  readonly number: number;
  /** How many edits are lost. */
  readonly edits: number;
  /** Why, as the end of a sentence. */
  readonly reason: string;
}

/** A stored book: its snapshot and the edits since. */
interface StoredBook {
  readonly book: Book;
  /** The number of the last edit in the snapshot. */
  readonly through: number;
  /** The number of the last edit in `book`. */
  readonly sequence: number;
  readonly loss: JournalLoss | undefined;
}

/** Which stored book a snapshot takes the place of: the one with this last edit, none, or whatever is there. */
export type Replaces = number | 'none' | 'any';

/**
 * Writes a book in full, whose last edit has the number `sequence`; its journal is given up. Throws {@link BookRemoved} or
 * {@link BookChanged}, and leaves everything as it was, where what is stored is not what it may take the place of.
 */
export async function writeSnapshot(
  database: Database,
  { id, sequence, changed }: { readonly id: string; readonly sequence: number; readonly changed: number },
  book: Book,
  replaces: Replaces,
): Promise<void> {
  const text = writeBook(book);
  await inTransaction(database, 'readwrite', async (transaction) => {
    const [books, texts, journal] = [
      transaction.objectStore('books'),
      transaction.objectStore('texts'),
      transaction.objectStore('journal'),
    ];
    const stored = await texts.getKey(id);
    const last = await journal.openKeyCursor(journalFrom(id), 'prev');
    if (typeof replaces === 'number' && stored === undefined) throw new BookRemoved();
    if (typeof replaces === 'number' && last?.primaryKey[1] !== replaces) throw new BookChanged();
    if (replaces === 'none' && stored !== undefined) throw new BookChanged();
    await journal.delete(journalFrom(id));
    await journal.put({ book: id, number: sequence });
    await texts.put({ id, text, through: sequence });
    await books.put({ id, ...listedAs(book), changed, sequence });
  });
}

/** The snapshot with the edits since. An edit that is missing or does not apply ends it, and is told. */
export async function readBook(database: Database, id: string): Promise<Outcome<StoredBook>> {
  const { metadata, snapshot, journal } = await readRecords(database, id);
  if (!snapshot) return fail(problem('book-not-kept', { from: 0, to: 0 }, {}));
  const opened = openBook(snapshot.text);
  if (!opened.ok) return opened;
  const { through } = snapshot;
  const entries = journal.filter(({ number }) => number > through);
  const end = Math.max(through, metadata?.sequence ?? 0, entries.at(-1)?.number ?? 0);
  return succeed({ through, ...replay(opened.value.book, entries, through, end) });
}

/** Everything that is stored of a book, as it is. */
export function readRecords(
  database: Database,
  id: string,
): Promise<{
  readonly metadata: BookMetadata | undefined;
  readonly snapshot: Snapshot | undefined;
  readonly journal: readonly JournalEntry[];
}> {
  return inTransaction(database, 'readonly', async (transaction) => ({
    metadata: await transaction.objectStore('books').get(id),
    snapshot: await transaction.objectStore('texts').get(id),
    journal: await transaction.objectStore('journal').getAll(journalFrom(id)),
  }));
}

/** Applies entries to a book whose last edit is number `through`, as far as they go on without a gap to number `end`. */
function replay(
  start: Book,
  entries: readonly JournalEntry[],
  through: number,
  end: number,
): Pick<StoredBook, 'book' | 'sequence' | 'loss'> {
  const byNumber = new Map(entries.map((entry) => [entry.number, entry]));
  let book = start;
  for (let number = through + 1; number <= end; number += 1) {
    const lost = (reason: string) => ({
      book,
      sequence: number - 1,
      loss: { number, edits: end - number + 1, reason },
    });
    const edit = byNumber.get(number)?.edit;
    if (!edit) return lost('it is not there');
    const next = applyStored(book, edit);
    if (typeof next === 'string') return lost(next);
    book = next;
  }
  return { book, sequence: end, loss: undefined };
}

/** The book after a stored edit, or why it has none: stored data can be of any shape, which the edits' own checks do not expect. */
function applyStored(book: Book, edit: NonNullable<JournalEntry['edit']>): Book | string {
  try {
    const applied = applyEdit(book, edit);
    if (applied.ok) return applied.value.book;
    return applied.problems[0]?.message ?? 'it does not fit the book';
  } catch (error) {
    return `it is not an edit (${String(error)})`;
  }
}

/**
 * Writes a snapshot of a book that is stored as an older one and a journal, and gives the number of the last edit in it.
 * Edits that come in meanwhile stay in the journal. Throws if the book cannot be read in full; what is stored stays.
 */
export async function compactJournal(database: Database, id: string): Promise<number> {
  const stored = await readBook(database, id);
  if (!stored.ok) throw new Error(stored.problems[0]?.message ?? 'the book cannot be read');
  const { book, through, sequence, loss } = stored.value;
  if (loss) throw new Error(`edit ${loss.number} cannot be read: ${loss.reason}`);
  const text = writeBook(book);
  return inTransaction(database, 'readwrite', async (transaction) => {
    const texts = transaction.objectStore('texts');
    const before = await texts.get(id);
    // Removed meanwhile, or written by the page: then there is nothing to compact.
    if (before?.through !== through) return before?.through ?? 0;
    await texts.put({ id, text, through: sequence });
    await transaction.objectStore('journal').delete(journalBefore(id, sequence));
    return sequence;
  });
}
