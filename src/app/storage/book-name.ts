import type { Book } from '../../document/index.ts';

/** What the list of books calls a book. */
export function bookName({ title }: Book): string {
  return [title.project, title.subject].filter((text) => text !== '').join(', ');
}
