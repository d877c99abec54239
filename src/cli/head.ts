import { type Book, hashBook } from '../document/index.ts';
import { PROGRAM_VERSION } from '../record/index.ts';

/** What a report was made of and with, so that it can be filed: which book in which state, which program. */
export interface Head {
  /** The file or the template's id, as it was named. */
  readonly book: string;
  readonly title: string;
  /** Empty where the title block states none. */
  readonly revision: string;
  /** SHA-256 of the book's content: equal for equal books, however their files are laid out. */
  readonly hash: string;
  readonly program: string;
}

/** The head of a report on a book. */
export function headOf(name: string, book: Book): Head {
  const { project, subject, revision } = book.title;
  return {
    book: name,
    title: [project, subject].filter((part) => part !== '').join(', '),
    revision,
    hash: hashBook(book),
    program: `Quaybook ${PROGRAM_VERSION}`,
  };
}

/** The head as a person reads it, a line each; `tolerance` says how near two values must be to agree. */
export function headLines(head: Head, tolerance: string): readonly string[] {
  const { book, title, revision, hash, program } = head;
  return [
    `book       ${book}`,
    `title      ${title || 'none stated'}`,
    `revision   ${revision || 'none stated'}`,
    `content    sha256 ${hash}`,
    `program    ${program}`,
    `tolerance  ${tolerance}`,
  ];
}
