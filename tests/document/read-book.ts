import { readFileSync } from 'node:fs';
import { type Book, openBook } from '../../src/document/index.ts';

/** The text of a file beside the tests of the document. */
export function textBeside(path: string): string {
  return readFileSync(new URL(path, import.meta.url), 'utf8');
}

/** The book with one of everything the format has. */
export function everyPart(): Book {
  const opened = openBook(textBeside('books/every-part.quaybook.json'));
  if (!opened.ok) throw new Error(opened.problems.map(({ message }) => message).join('\n'));
  return opened.value.book;
}
