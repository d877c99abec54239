import demoUrl from '../../../templates/demo/book.quaybook.json?url';
import type { Book } from '../../document/index.ts';
import { fetchBook } from '../shipped/templates.ts';

/** The demo book: an invented crane upgrade whose sheets feed one another. */
export function demoBook(): Promise<Book> {
  return fetchBook(demoUrl);
}
