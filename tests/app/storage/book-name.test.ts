import { describe, expect, test } from 'vitest';
import { bookName, listedName } from '../../../src/app/storage/book-name.ts';
import { smallBook } from '../small-book.ts';

const titled = (title: Partial<ReturnType<typeof smallBook>['title']>) => {
  const book = smallBook();
  const blank = { project: '', subject: '', job: '', revision: '' };
  return { ...book, title: { ...book.title, ...blank, ...title } };
};

describe('what the list of books tells a book by', () => {
  test('is its name, its job and its revision, as far as they are filled in', () => {
    const first = titled({ subject: 'Debris', job: '24-017', revision: 'A' });
    expect(listedName(first)).toBe('Debris · 24-017 · revision A');
    expect(bookName(first)).toBe('Debris');
    expect(listedName(titled({ subject: 'Debris', revision: 'B' }))).toBe('Debris · revision B');
    expect(listedName(titled({}))).toBe('');
  });
});
