import type { Book } from '../../document/index.ts';
import type { Keeper, Kept } from '../session/session.ts';
import { type Database, journalFrom, openDatabase } from './database.ts';
import type { FoldReply } from './fold-worker.ts';
import type { KeptBook, Library, LibraryNotice } from './library.ts';
import { reasonOf } from './reason.ts';

/** After so many edits the journal is folded into the whole book. */
const editsBetweenWholes = 64;

/** The library in this browser's IndexedDB. `now` is the clock of the page. */
export function keptLibrary(now: () => number): Library {
  const listeners = new Set<(notice: LibraryNotice) => void>();
  const tell = (notice: LibraryNotice): void => {
    for (const listener of listeners) listener(notice);
  };
  const database = openDatabase();
  database.catch((error: unknown) => tell({ kind: 'cannot keep', reason: reasonOf(error) }));
  void navigator.storage?.persist?.();

  return {
    list: async () => {
      const books = await (await database).getAll('books');
      return books
        .map(({ id, name, changed }): KeptBook => ({ id, name, changed }))
        .sort((a, b) => b.changed - a.changed);
    },
    add: async (book) => {
      const id = crypto.randomUUID();
      const { writeNew } = await import('./whole.ts');
      await writeNew(await database, { id, changed: now() }, book);
      return id;
    },
    open: async (id) => (await import('./whole.ts')).readKept(await database, id),
    keeper: (id) => keeperOf(id, database, now, tell),
    remove: async (id) => {
      const transaction = (await database).transaction(['books', 'texts', 'journal'], 'readwrite');
      await transaction.objectStore('books').delete(id);
      await transaction.objectStore('texts').delete(id);
      await transaction.objectStore('journal').delete(journalFrom(id));
      await transaction.done;
    },
    onNotice: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/**
 * Writes the edits of one open book in their order. Only the tab that holds the book's lock writes; another is told
 * that nothing is kept there, and opens the book anew once the lock comes to it.
 */
function keeperOf(
  id: string,
  database: Promise<Database>,
  now: () => number,
  tell: (notice: LibraryNotice) => void,
): Keeper {
  const held = holdLock(id, tell);
  const fold = folderOf(id, tell);
  let number: number | undefined;
  let line: Promise<unknown> = Promise.resolve();
  const write = async (edit: Parameters<Keeper>[0], book: Book): Promise<Kept> => {
    try {
      if (!(await held)) return { state: 'not kept', reason: 'the book is open in another tab' };
      const store = await database;
      const { nameOf } = await import('./whole.ts');
      number ??= await lastNumber(store, id);
      number += 1;
      const changed = now();
      const transaction = store.transaction(['books', 'journal'], 'readwrite', { durability: 'strict' });
      await transaction.objectStore('journal').put({ book: id, number, edit });
      const card = await transaction.objectStore('books').get(id);
      if (card) await transaction.objectStore('books').put({ ...card, name: nameOf(book), changed });
      await transaction.done;
      if (card && number - card.through >= editsBetweenWholes) fold();
      return { state: 'kept', at: now() };
    } catch (error) {
      return { state: 'not kept', reason: reasonOf(error) };
    }
  };
  return (edit, book) => {
    const turn = line.then(() => write(edit, book));
    line = turn;
    return turn;
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
      if (reason !== undefined) tell({ kind: 'cannot keep', reason });
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

/** Whether this tab has the book's lock; held as long as the tab lives. */
function holdLock(id: string, tell: (notice: LibraryNotice) => void): Promise<boolean> {
  const name = `quaybook:${id}`;
  const forever = new Promise<never>(() => undefined);
  return new Promise((resolve) => {
    void navigator.locks.request(name, { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      if (lock) return forever;
      tell({ kind: 'open elsewhere', id });
      void navigator.locks.request(name, () => {
        tell({ kind: 'changed elsewhere', id });
      });
      return undefined;
    });
  });
}
