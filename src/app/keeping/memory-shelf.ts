import { fail, problem, succeed } from '../../diagnostics/index.ts';
import type { Book } from '../../document/index.ts';
import type { Shelf } from './library.ts';

/** Books that stand nowhere but in this page, where the browser keeps nothing for `reason`: a file has to keep them. */
export function memoryShelf(reason: string): Shelf {
  const books = new Map<string, Book>();
  return {
    list: async () => [],
    add: async (book) => {
      const id = crypto.randomUUID();
      books.set(id, book);
      return id;
    },
    open: async (id) => {
      const book = books.get(id);
      return book ? succeed(book) : fail(problem('book-not-kept', { from: 0, to: 0 }, {}));
    },
    keeper: (id) => async (_edit, book) => {
      books.set(id, book);
      return { state: 'not kept', reason };
    },
    remove: async (id) => {
      books.delete(id);
    },
  };
}
