import type { Book } from '../../document/index.ts';

/** What a book is called: its project and subject. */
export function bookName({ title }: Book): string {
  return [title.project, title.subject].filter((text) => text !== '').join(', ');
}

/** What the list of books tells it from others by: its name, its job and its revision. */
export function listedName(book: Book): string {
  const { job, revision } = book.title;
  const parts = [bookName(book), job, revision === '' ? '' : `revision ${revision}`];
  return parts.filter((text) => text !== '').join(' · ');
}
