import { type Book, withStarts } from '../../document/index.ts';
import { PROGRAM_VERSION } from '../../record/index.ts';

/** The book of a shipped template as a book begins with it: its sheets know where they came from. */
export function startedFrom(book: Book, template: string): Book {
  return withStarts(book, { template, title: book.title.subject, version: `Quaybook ${PROGRAM_VERSION}` });
}
