import { fail, problem, succeed } from '../../diagnostics/index.ts';
import type { Book } from '../../document/index.ts';
import type { Shelf } from './library.ts';

/** Books that stand nowhere but in this page, where the browser keeps nothing for `reason`: a file has to keep them. */
export function memoryShelf(reason: string): Shelf {
  const books = new Map<string, Book>();
  return {
    list: () => Promise.resolve([]),
    add: (book) => {
      const id = crypto.randomUUID();
      books.set(id, book);
      return Promise.resolve(id);
    },
    open: (id) => {
      const book = books.get(id);
      return Promise.resolve(book ? succeed(book) : fail(problem('book-not-kept', { from: 0, to: 0 }, {})));
    },
    keeper: (id) => ({
      keep: (_edit, book) => {
        books.set(id, book);
        return Promise.resolve({ state: 'not kept', reason });
      },
      close: () => undefined,
    }),
    remove: (id) => {
      books.delete(id);
      return Promise.resolve();
    },
  };
}
