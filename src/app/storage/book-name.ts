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

/** What is kept of a book so that it can be listed without being read. */
export function listedAs(book: Book): { readonly name: string; readonly sheets: number } {
  return { name: listedName(book), sheets: book.sheets.length };
}
