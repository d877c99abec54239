import type { Outcome } from '../../diagnostics/index.ts';
import type { Book } from '../../document/index.ts';
import { type AutosaveStart, createAutosave, type StoreAutosave } from './autosave.ts';
import { newBookId } from './book-id.ts';
import { type BookLock, isBookLocked, requestBookLock } from './book-lock.ts';
import { listedAs } from './book-name.ts';
import type { BookStore, ListedBook, OpenBook } from './book-store.ts';
import { createCompaction } from './compaction.ts';
import { createConnection } from './connection.ts';
import { BookChanged, BookRemoved, reasonOf } from './storage-error.ts';
import type { StoreNotice } from './store-notice.ts';
import { journalFrom } from './stores.ts';
import { openTabChannel } from './tab-channel.ts';
import { inTransaction } from './transaction.ts';

/** A book that stands in this tab alone, as it goes on when it is opened again. */
interface UnsavedBook {
  readonly start: AutosaveStart;
  readonly changed: number;
  readonly reason: string;
  /** Whether it stands in a file too. */
  readonly safe: boolean;
}

const noStorage = (reason: string) => ({ state: 'not kept', cause: 'refused', reason }) as const;

/**
 * The books of this browser: in its storage, and in this tab alone what the storage has not taken. `now` is the clock of
 * the page.
 */
export function browserStore(now: () => number): BookStore {
  const open = new Map<string, StoreAutosave>();
  const listeners = new Set<(notice: StoreNotice) => void>();
  const tell = (notice: StoreNotice): void => {
    if (notice.kind === 'ready') for (const autosave of open.values()) autosave.retry();
    for (const listener of listeners) listener(notice);
  };
  const unsaved = new Map<string, UnsavedBook>();
  /** The books that are being let go of. */
  const closing = new Map<string, Promise<void>>();
  const tellTabs = openTabChannel((message) => {
    if (message.kind === 'removed') void open.get(message.id)?.check();
    tell({ kind: 'list' });
  });
  const checkAll = (): void => {
    for (const autosave of open.values()) void autosave.check();
  };
  const connection = createConnection(tell, () => {
    checkAll();
    tell({ kind: 'list' });
  });
  // Not all that takes a stored book away says so.
  addEventListener('focus', checkAll);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') checkAll();
  });
  void navigator.storage?.persist?.();

  const add = async (book: Book): Promise<string> => {
    const id = newBookId();
    const start = { id, book, stored: undefined, through: 0 };
    try {
      const { writeSnapshot } = await import('./snapshot.ts');
      const database = await connection.openAtOnce();
      await writeSnapshot(database, { id, sequence: 0, changed: now() }, book, 'none');
      tellTabs({ kind: 'list' });
    } catch (error) {
      const reason = reasonOf(error);
      unsaved.set(id, { start: { ...start, state: noStorage(reason) }, changed: now(), reason, safe: false });
    }
    return id;
  };

  const openWith = (
    start: AutosaveStart,
    lock: BookLock,
    loss?: OpenBook['loss'],
  ): { readonly opened: OpenBook; readonly autosave: StoreAutosave } => {
    const { id, book } = start;
    let whenDone: (through: number) => void = () => undefined;
    const compact = createCompaction(
      id,
      (through) => whenDone(through),
      (reason) => tell({ kind: 'cannot compact', id, reason }),
    );
    const autosave = createAutosave(start, connection, now, {
      isWriter: () => lock.held,
      onOtherStored: () => tell({ kind: 'changed elsewhere', id }),
      compact: (done) => {
        whenDone = done;
        compact();
      },
    });
    open.set(id, autosave);
    const keepHere = (): void => {
      const { state, latest, stored } = autosave;
      if (autosave.isStored || state.state !== 'not kept') return;
      const { cause, reason } = state;
      const safe = !autosave.isUnsaved;
      // What is stored under its id is another book by now.
      if (cause === 'refused' || cause === 'removed')
        unsaved.set(id, {
          start: { id, book: latest, stored, through: stored ?? 0, state },
          changed: now(),
          reason,
          safe,
        });
      else if (!safe) void add(latest);
    };
    const close = async (): Promise<void> => {
      await autosave.settled();
      autosave.stop();
      keepHere();
      if (open.get(id) === autosave) open.delete(id);
      await lock.release();
      tell({ kind: 'list' });
    };
    const takeStored = async (): Promise<Outcome<OpenBook>> => {
      await autosave.settled();
      try {
        const taken = await openStored(id, lock);
        if (taken.ok) autosave.stop();
        else
          autosave.fail(taken.problems[0]?.code === 'book-not-kept' ? new BookRemoved() : new BookChanged());
        return taken;
      } catch (error) {
        const { state } = autosave;
        if (state.state !== 'not kept' || state.cause !== 'changed elsewhere') autosave.fail(error);
        throw error;
      }
    };
    return {
      autosave,
      opened: { id, book, autosave, loss, takeStored, close: () => void closing.set(id, close()) },
    };
  };

  /** Opens what is stored of a book whose lock this tab has asked for. */
  const openStored = async (id: string, lock: BookLock): Promise<Outcome<OpenBook>> => {
    const [database, { readBook }] = await Promise.all([connection.open(), import('./snapshot.ts')]);
    const read = await readBook(database, id);
    if (!read.ok) return read;
    const { book, sequence, through, loss } = read.value;
    const state = ((): AutosaveStart['state'] => {
      const not = (cause: 'open elsewhere' | 'unreadable', reason: string) =>
        ({ state: 'not kept', cause, reason }) as const;
      if (!lock.held) return not('open elsewhere', 'this book is open in another tab, which keeps it');
      if (loss) return not('unreadable', 'part of what is stored cannot be read');
      return { state: 'kept', at: now() };
    })();
    const { opened } = openWith({ id, book, stored: sequence, through, state }, lock, loss);
    return { ok: true, value: opened };
  };

  return {
    list: async () => {
      const here = [...unsaved].map(([id, { start, changed, reason }]): ListedBook => {
        return { id, ...listedAs(start.book), changed, unsaved: reason };
      });
      return [...here, ...(await listStored())].sort((a, b) => b.changed - a.changed);
    },
    add,
    open: async (id) => {
      await closing.get(id);
      const here = unsaved.get(id);
      if (here) {
        unsaved.delete(id);
        const lock = await requestBookLock(id);
        const { opened, autosave } = openWith(here.start, lock);
        if (here.safe) autosave.markSafe(here.start.book);
        return { ok: true, value: opened };
      }
      const lock = await requestBookLock(id);
      const opened = await openStored(id, lock).catch(async (error: unknown) => {
        await lock.release();
        throw error;
      });
      if (!opened.ok) await lock.release();
      else void lock.comes.then(() => open.get(id)?.check());
      return opened;
    },
    read: async (id) => {
      await closing.get(id);
      const here = open.get(id)?.latest ?? unsaved.get(id)?.start.book;
      if (here) return { ok: true, value: here };
      const [database, { readBook }] = await Promise.all([connection.open(), import('./snapshot.ts')]);
      const read = await readBook(database, id);
      if (!read.ok) return read;
      if (read.value.loss) throw new Error('part of what is stored of it cannot be read; open it first');
      return { ok: true, value: read.value.book };
    },
    rawText: async (id) => {
      const [database, { readRecords }] = await Promise.all([connection.open(), import('./snapshot.ts')]);
      return `${JSON.stringify(await readRecords(database, id), null, 1)}\n`;
    },
    isOpen: isBookLocked,
    remove: async (id) => {
      if (unsaved.get(id)?.start.stored === undefined && unsaved.delete(id)) return;
      unsaved.delete(id);
      await inTransaction(await connection.open(), 'readwrite', async (transaction) => {
        await transaction.objectStore('books').delete(id);
        await transaction.objectStore('texts').delete(id);
        await transaction.objectStore('journal').delete(journalFrom(id));
      });
      tellTabs({ kind: 'removed', id });
    },
    hasUnsaved: () =>
      [...unsaved.values()].some(({ safe }) => !safe) ||
      [...open.values()].some(({ isUnsaved }) => isUnsaved),
    onNotice: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };

  async function listStored(): Promise<readonly ListedBook[]> {
    // Why it is not open is told by itself.
    const database = await connection.openAtOnce().catch(() => undefined);
    if (!database) return [];
    const [books, texts] = await inTransaction(
      database,
      'readonly',
      async (transaction) =>
        [
          await transaction.objectStore('books').getAll(),
          await transaction.objectStore('texts').getAllKeys(),
        ] as const,
    );
    const whole = new Set(texts);
    return books
      .filter(({ id }) => whole.has(id) && !unsaved.has(id))
      .map(
        ({ id, name, sheets, changed }): ListedBook => ({ id, name, sheets, changed, unsaved: undefined }),
      );
  }
}
