import type { Book, Edit } from '../../document/index.ts';
import { listedAs } from './book-name.ts';
import type { Connection } from './connection.ts';
import { appendToJournal, readLastNumber } from './journal.ts';
import type { Replaces } from './snapshot.ts';
import { BookChanged, BookRemoved, reasonOf } from './storage-error.ts';

/**
 * Why a book is not kept:
 * - `refused`: the storage does not take it, or is not there; what was missed goes in once it does;
 * - `removed`: the stored book was removed; it can be kept anew;
 * - `open elsewhere`: another tab writes it;
 * - `changed elsewhere`: another tab has written edits that are not in the book here;
 * - `unreadable`: part of what is stored cannot be read, and writing would take its place.
 */
export type UnsavedCause = 'refused' | 'removed' | 'open elsewhere' | 'changed elsewhere' | 'unreadable';

/** Whether the book as it stands here is stored. `kept` is said only of what opening it again would find. */
export type SaveState =
  | { readonly state: 'kept'; readonly at: number }
  | { readonly state: 'keeping' }
  | { readonly state: 'not kept'; readonly cause: UnsavedCause; readonly reason: string };

/** What stores the edits of one open book. */
export interface Autosave {
  readonly state: SaveState;
  /** Whether something of the book here is neither stored, nor on its way there, nor safe elsewhere. */
  readonly isUnsaved: boolean;
  /** Whether the book as it stands here is the stored one. */
  readonly isStored: boolean;
  /** Stores an edit that was applied; `book` is the book after it. */
  readonly save: (edit: Edit, book: Book) => void;
  /** Stores the book in full: what is stored under its id is given up, unless another tab wrote it. */
  readonly saveAnew: () => Promise<void>;
  /** Tells that this book stands elsewhere: in a file, or as another book. */
  readonly markSafe: (book: Book) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

/** An autosave as the store handles it. */
export interface StoreAutosave extends Autosave {
  /** The book as it was last. */
  readonly latest: Book;
  /** The number of its last stored edit; undefined where none of it is stored. */
  readonly stored: number | undefined;
  /**
   * Looks what is stored of the book, and says what has become of it: after something may have taken or changed it, and
   * when this tab comes to be the one that writes it.
   */
  readonly check: () => Promise<void>;
  /** Says that the book is not kept, and why. */
  readonly fail: (error: unknown) => void;
  /** Tries again what the storage has refused. */
  readonly retry: () => void;
  /** Resolves when everything begun is stored or refused. */
  readonly settled: () => Promise<void>;
  /** Stops writing. */
  readonly stop: () => void;
}

/** A book as it was opened, to go on from. */
export interface AutosaveStart {
  readonly id: string;
  readonly book: Book;
  /** The number of its last stored edit; undefined where it is not stored. */
  readonly stored: number | undefined;
  /** The number of the last edit in its stored snapshot. */
  readonly through: number;
  readonly state: SaveState;
}

/** What an autosave asks of the store. */
export interface AutosaveHooks {
  /** Whether this tab is the one that writes the book. */
  readonly isWriter: () => boolean;
  /** Hears that the stored book is another one than here, where nothing was entered: it is opened in its place. */
  readonly onOtherStored: () => void;
  /** Compacts the journal, which has become long; `done` hears the number of the last edit in the snapshot. */
  readonly compact: (done: (through: number) => void) => void;
}

/** After so many edits the journal is compacted. */
const editsBetweenSnapshots = 64;

/** So many milliseconds after the last edit the storage is tried again, then after twice as many each time. */
const [firstRetry, lastRetry] = [500, 30_000];

/** Stores the edits of one open book in their order. */
export function createAutosave(
  start: AutosaveStart,
  connection: Connection,
  now: () => number,
  { isWriter, onOtherStored, compact }: AutosaveHooks,
): StoreAutosave {
  const { id } = start;
  const listeners = new Set<() => void>();
  let { book: latest, state, stored, through } = start;
  /** The number of the last edit made here, stored or not. */
  let number = stored ?? 0;
  /** The book that is stored. */
  let storedBook = stored === undefined ? undefined : latest;
  let safeBook: Book | undefined;
  /** Edits on their way to the storage, and the turn of those that count: a failure ends a turn. */
  let pending = 0;
  let turn = 0;
  let running: Promise<unknown> = Promise.resolve();
  let retrying: ReturnType<typeof setTimeout> | undefined;
  let wait = firstRetry;
  let stopped = false;

  const show = (next: SaveState): void => {
    state = next;
    for (const listener of listeners) listener();
  };
  const fail = (error: unknown): void => {
    pending = 0;
    turn += 1;
    if (error instanceof BookRemoved) {
      storedBook = undefined;
      stored = undefined;
    }
    const cause =
      error instanceof BookRemoved
        ? 'removed'
        : error instanceof BookChanged
          ? 'changed elsewhere'
          : 'refused';
    show({ state: 'not kept', cause, reason: reasonOf(error) });
    if (cause === 'refused') retryLater();
  };
  const retryLater = (): void => {
    clearTimeout(retrying);
    if (!stopped) retrying = setTimeout(() => void writeAll(stored ?? 'none'), wait);
    wait = Math.min(2 * wait, lastRetry);
  };
  const writeAll = (replaces: Replaces): Promise<void> => {
    clearTimeout(retrying);
    const writing = running.then(async () => {
      const [sequence, book] = [number, latest];
      try {
        const database = await connection.openAtOnce();
        const { writeSnapshot } = await import('./snapshot.ts');
        await writeSnapshot(database, { id, sequence, changed: now() }, book, replaces);
      } catch (error) {
        fail(error);
        return;
      }
      stored = sequence;
      through = sequence;
      storedBook = book;
      wait = firstRetry;
      if (book === latest) show({ state: 'kept', at: now() });
      else retryLater();
    });
    running = writing;
    return writing;
  };
  const append = (edit: Edit, database: NonNullable<Connection['current']>): void => {
    const [own, at, book] = [turn, number, latest];
    pending += 1;
    show({ state: 'keeping' });
    const appending = appendToJournal(
      database,
      { book: id, number: at, edit },
      { ...listedAs(book), changed: now() },
    ).then(
      () => {
        if (own !== turn) return;
        stored = at;
        storedBook = book;
        pending -= 1;
        if (pending === 0) show({ state: 'kept', at: now() });
        if (at - through >= editsBetweenSnapshots)
          compact((done) => {
            through = Math.max(through, done);
          });
      },
      (error: unknown) => {
        if (own === turn) fail(error);
      },
    );
    running = Promise.all([running, appending]);
  };

  const check = async (): Promise<void> => {
    const before = running;
    await before;
    const cause = state.state === 'not kept' ? state.cause : undefined;
    // The next try finds it out.
    if (cause === 'refused') return;
    const begins = cause === 'open elsewhere' && isWriter();
    let last: number | undefined;
    try {
      last = await readLastNumber(await connection.openAtOnce(), id);
    } catch (error) {
      if (running === before && (cause === undefined || begins)) fail(error);
      return;
    }
    // Something was written meanwhile: what was read is older than what is said of it.
    if (running !== before) await check();
    else if (last === undefined) {
      if (cause !== 'removed') fail(new BookRemoved());
    } else if (cause === 'removed') fail(new BookChanged());
    else if (cause !== undefined && !begins) return;
    else if (last !== stored) {
      if (latest === storedBook) onOtherStored();
      else fail(new BookChanged());
    } else if (latest !== storedBook) await writeAll(stored);
    else if (begins) show({ state: 'kept', at: now() });
  };

  if (state.state === 'not kept' && state.cause === 'refused') retryLater();

  return {
    get state() {
      return state;
    },
    get isUnsaved() {
      return state.state === 'not kept' && latest !== storedBook && latest !== safeBook;
    },
    get isStored() {
      return latest === storedBook;
    },
    get latest() {
      return latest;
    },
    get stored() {
      return stored;
    },
    save: (edit, book) => {
      latest = book;
      number += 1;
      if (state.state === 'not kept') {
        wait = firstRetry;
        if (state.cause === 'refused') retryLater();
        else void check();
        show(state);
      } else if (connection.current) append(edit, connection.current);
      else {
        show({ state: 'keeping' });
        void writeAll(stored ?? 'none');
      }
    },
    saveAnew: () =>
      writeAll(state.state === 'not kept' && state.cause === 'unreadable' ? 'any' : (stored ?? 'none')),
    markSafe: (book) => {
      safeBook = book;
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    check,
    fail,
    retry: () => {
      if (state.state === 'not kept' && state.cause === 'refused') void writeAll(stored ?? 'none');
    },
    settled: () => running.then(() => undefined),
    stop: () => {
      stopped = true;
      clearTimeout(retrying);
    },
  };
}
