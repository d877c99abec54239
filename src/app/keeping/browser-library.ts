import { openDatabase } from './database.ts';
import { keptShelf } from './kept-shelf.ts';
import type { Library, LibraryNotice, Shelf } from './library.ts';
import { reasonOf } from './reason.ts';

/**
 * The library of this browser: in its storage, or where it allows none in this page alone, which is told to whoever
 * listens. `now` is the clock of the page.
 */
export function browserLibrary(now: () => number): Library {
  const listeners = new Set<(notice: LibraryNotice) => void>();
  const tell = (notice: LibraryNotice): void => {
    for (const listener of listeners) listener(notice);
  };
  const shelf: Promise<Shelf> = openDatabase().then(
    (database) => keptShelf(database, now, tell),
    async (error: unknown) => {
      const reason = reasonOf(error);
      tell({ kind: 'cannot keep', reason });
      return (await import('./memory-shelf.ts')).memoryShelf(reason);
    },
  );
  return {
    list: async () => (await shelf).list(),
    add: async (book) => (await shelf).add(book),
    open: async (id) => (await shelf).open(id),
    keeper: (id) => {
      const keeping = shelf.then((found) => found.keeper(id));
      return {
        keep: async (edit, book) => (await keeping).keep(edit, book),
        close: () => void keeping.then(({ close }) => close()),
      };
    },
    remove: async (id) => (await shelf).remove(id),
    onNotice: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
