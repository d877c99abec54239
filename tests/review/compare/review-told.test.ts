import { expect, test } from 'vitest';
import { openNotebook } from '../../../src/notebook/index.ts';
import { compareBooks, enterHandValue, raiseComment } from '../../../src/review/index.ts';
import { blockOf, bookOf, calc, given } from '../../make-book.ts';

const book = bookOf({ s: [blockOf('p', given('a', '2', 'm'), calc('b', { formula: '2 * a', unit: 'm' }))] });

test('what the checker says is told in words of its own, without the state of the book it was said of', () => {
  const next = openNotebook(book);
  for (const edit of [
    enterHandValue(next, { item: 'b' }, { entry: '4 m', by: 'KL' }),
    raiseComment(next, { item: 'b' }, { by: 'KL', text: 'Why 2?' }),
  ])
    expect(next.apply(edit).ok).toBe(true);
  const { differences } = compareBooks(openNotebook(book), next);
  expect(differences).toMatchObject([
    { kind: 'book', field: 'review.handValues', to: 's.b: 4 m (KL)' },
    { kind: 'book', field: 'review.comments', to: 'Why 2? (KL)' },
  ]);
  expect(compareBooks(next, next).differences).toEqual([]);
});
