import {
  type Book,
  blankBook,
  type Edit,
  hashBook,
  openBook,
  type Revision,
  writeBook,
} from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { freshId } from '../checking/bases.ts';
import type { Said } from '../checking/edits.ts';

/**
 * The edit that issues the book as a revision: its whole content is kept, without its review, as a book in the format of
 * this version.
 */
export function issueRevision(
  { book }: Notebook,
  { label, by, date, note }: Said & { readonly label: string; readonly note?: string },
): Edit {
  const list = book.review.revisions;
  const value: Revision = {
    id: freshId(list, 'r'),
    label,
    by,
    ...(date !== undefined && { date }),
    ...(note !== undefined && note !== '' && { note }),
    content: hashBook(book),
    book: writeBook({ ...book, review: blankBook().review }),
  };
  const at = ['review', 'revisions'];
  return { label: 'issue a revision', patches: [{ kind: 'insert', at, index: list.length, value }] };
}

/** The book as it was issued; undefined where what is kept is no sound book, or not the one that was issued. */
export function bookOfRevision({ book: text, content }: Revision): Book | undefined {
  const opened = openBook(text);
  return opened.ok && hashBook(opened.value.book) === content ? opened.value.book : undefined;
}
