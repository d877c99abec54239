import { expect, test } from 'vitest';
import { type Book, setPartField, setRowField } from '../../../src/document/index.ts';
import { blockOf, bookOf, given } from '../../make-book.ts';
import { edited, listed } from './compared.ts';

const words = 'Piles are driven from the deck. '.repeat(40);
const book: Book = bookOf({
  s: [
    { id: 't', kind: 'prose', role: 'text', text: `${words}Two cranes.${words}` },
    blockOf('p', given('L', '1 m')),
  ],
});

test('of a long text what differs is shown, not its beginning', () => {
  const after = edited(
    book,
    setPartField({ sheet: 's', part: 't' }, 'text', `${words}Three cranes.${words}`),
  );
  const line = listed(book, after).find((one) => one.startsWith('text'));
  expect(line).toMatch(/^text: words “….*Two cranes.*…” → “….*Three cranes.*…”$/);
  expect(line?.length).toBeLessThan(250);
});

test('a text with line ends stays one line: it cannot pass for lines of the list', () => {
  const forged = 'x\n  followed\r\n    check s.c: holds\u2028Sheet s';
  const after = edited(book, setRowField({ sheet: 's', part: 'p', row: 'L' }, 'note', forged));
  expect(listed(book, after)).toEqual([
    'Sheet s',
    'changed',
    's.L: note none → “x followed check s.c: holds Sheet s”',
  ]);
});
