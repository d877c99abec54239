import type { Book } from '../../document/index.ts';
import type { Keeper, Kept } from '../session/session.ts';
import { type Database, inTransaction, journalFrom } from './database.ts';
import type { FoldReply } from './fold-worker.ts';
import type { KeptBook, LibraryNotice, Shelf } from './library.ts';
import { reasonOf } from './reason.ts';

/** After so many edits the journal is folded into the whole book. */
const editsBetweenWholes = 64;

/** So many milliseconds an edit waits before it is written: the frame that shows it comes first. */
const frame = 17;

/** The books in this browser's IndexedDB. `now` is the clock of the page, `tell` hears what the person should know. */
export function keptShelf(
  database: Database,
  now: () => number,
  tell: (notice: LibraryNotice) => void,
): Shelf {
  void navigator.storage?.persist?.();
  /** The books that are being let go of. */
  const closing = new Map<string, Promise<void>>();
  return {
    list: async () => {
      const books = await database.getAll('books');
      return books
        .map(({ id, name, changed }): KeptBook => ({ id, name, changed }))
        .sort((a, b) => b.changed - a.changed);
    },
    add: async (book) => {
      const id = crypto.randomUUID();
      const { writeWhole } = await import('./whole.ts');
      await writeWhole(database, { id, through: 0, changed: now() }, book);
      return id;
    },
    open: async (id) => {
      await closing.get(id);
      return (await import('./whole.ts')).readKept(database, id);
    },
    keeper: (id) => {
      const { keep, closed } = keeperOf(id, closing.get(id), database, now, tell);
      return { keep, close: () => void closing.set(id, closed()) };
    },
    remove: (id) =>
      inTransaction(database, async (stores) => {
        await stores('books').delete(id);
        await stores('texts').delete(id);
        await stores('journal').delete(journalFrom(id));
      }),
  };
}

/**
 * Writes the edits of one open book in their order. Only the tab that holds the book's lock writes; another is told
 * that nothing is kept there, and opens the book anew once the lock comes to it.
 */
function keeperOf(
  id: string,
  before: Promise<void> | undefined,
  database: Database,
  now: () => number,
  tell: (notice: LibraryNotice) => void,
): { readonly keep: Keeper; readonly closed: () => Promise<void> } {
  const lock = lockOf(id, before, tell);
  const fold = folderOf(id, tell);
  let number: number | undefined;
  // After an edit that could not be kept the journal would skip it: only the whole book mends that.
  let skipped = false;
  let line: Promise<unknown> = Promise.resolve();
  const write = async (edit: Parameters<Keeper>[0], book: Book): Promise<Kept> => {
    try {
      if (!(await lock.held)) return { state: 'not kept', reason: 'the book is open in another tab' };
      const { nameOf, writeWhole } = await import('./whole.ts');
      number ??= await lastNumber(database, id);
      number += 1;
      const [at, changed] = [number, now()];
      if (skipped) {
        await writeWhole(database, { id, through: at, changed }, book);
        skipped = false;
        return { state: 'kept', at: now() };
      }
      let through = at;
      await inTransaction(database, async (stores) => {
        await stores('journal').put({ book: id, number: at, edit });
        const card = await stores('books').get(id);
        if (!card) return;
        await stores('books').put({ ...card, name: nameOf(book), changed });
        ({ through } = card);
      });
      if (at - through >= editsBetweenWholes) fold();
      return { state: 'kept', at: now() };
    } catch (error) {
      skipped = true;
      return { state: 'not kept', reason: reasonOf(error) };
    }
  };
  return {
    keep: (edit, book) => {
      const shown = new Promise((resolve) => setTimeout(resolve, frame));
      const turn = Promise.all([line, shown]).then(() => write(edit, book));
      line = turn;
      return turn;
    },
    closed: async () => {
      await line;
      await lock.released();
    },
  };
}

/** Folds a book's journal beside the page, one time after the other; that it cannot be is told, and the journal stays. */
function folderOf(id: string, tell: (notice: LibraryNotice) => void): () => void {
  let worker: Worker | undefined;
  return () => {
    if (worker) return;
    worker = new Worker(new URL('./fold-worker.ts', import.meta.url), { type: 'module' });
    const end = (reason: string | undefined): void => {
      worker?.terminate();
      worker = undefined;
      if (reason !== undefined) tell({ kind: 'cannot fold', id, reason });
    };
    worker.addEventListener('message', ({ data }: MessageEvent<FoldReply>) => end(data.failed));
    worker.addEventListener('error', ({ message }) => end(message));
    worker.postMessage(id);
  };
}

async function lastNumber(store: Database, id: string): Promise<number> {
  const card = await store.get('books', id);
  const last = await store.transaction('journal').store.openCursor(journalFrom(id), 'prev');
  return Math.max(card?.through ?? 0, last?.value.number ?? 0);
}

/**
 * The lock of a book, asked for once `before` is done. Whether it is held here is known at once; where another tab has it,
 * its coming is told.
 */
function lockOf(
  id: string,
  before: Promise<void> | undefined,
  tell: (notice: LibraryNotice) => void,
): { readonly held: Promise<boolean>; readonly released: () => Promise<void> } {
  const name = `quaybook:${id}`;
  const waiting = new AbortController();
  let release = (): void => undefined;
  const left = new Promise<void>((resolve) => {
    release = resolve;
  });
  let over: Promise<unknown> = Promise.resolve();
  const held = new Promise<boolean>((resolve) => {
    const ask = (): void => {
      over = navigator.locks.request(name, { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        if (lock) return left;
        tell({ kind: 'open elsewhere', id });
        navigator.locks
          .request(name, { signal: waiting.signal }, () => tell({ kind: 'changed elsewhere', id }))
          .catch((error: unknown) => {
            if (!waiting.signal.aborted) throw error;
          });
        return undefined;
      });
    };
    if (before) void before.then(ask);
    else ask();
  });
  return {
    held,
    released: async () => {
      await held;
      waiting.abort();
      release();
      await over;
    },
  };
}
