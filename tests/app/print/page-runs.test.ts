import { expect, test } from 'vitest';
import { pageRuns } from '../../../src/app/print/page-runs.ts';
import { type Piece, piecesOf } from '../../../src/app/print/pieces.ts';
import type { Book } from '../../../src/document/index.ts';
import { bookOf } from '../../make-book.ts';

const plain = bookOf({ a: [], b: [], c: [], d: [] });
const groups: Readonly<Record<string, string>> = { a: 'Basis', b: 'Basis', c: 'New' };
const book: Book = {
  ...plain,
  sheets: plain.sheets.map((sheet) => {
    const group = groups[sheet.key];
    return { ...sheet, title: `Sheet ${sheet.key}`, ...(group !== undefined && { group }) };
  }),
};

const titles = (pieces: readonly Piece[]): readonly string[] =>
  pageRuns(pieces, book).map(({ title }) => title);

test('a book begins with its contents and checks; the sheets of a group follow one another', () => {
  expect(titles(piecesOf(book)).slice(0, 2)).toEqual([
    'Contents; parts 1 to 2 of 7: Purpose, limits and cautions, All checks',
    'parts 3 to 4 of 7: Basis',
  ]);
  const named = titles(piecesOf(book)).join('\n');
  for (const foot of ['part 5 of 7: Sheet c', 'part 6 of 7: Sheet d', 'part 7 of 7: Sources'])
    expect(named).toContain(foot);
});

test('every piece stands on one run, in order', () => {
  const pieces = piecesOf(book);
  const placed = pageRuns(pieces, book).flatMap((run) => run.pieces);
  expect(placed.map(({ at }) => at)).toEqual(pieces.map((_, at) => at));
  expect(placed.map(({ piece }) => piece)).toEqual(pieces);
});

test('one sheet alone has no contents', () => {
  expect(pageRuns([{ kind: 'sheet', sheet: 'a' }], book)).toMatchObject([
    { contents: false, title: 'Sheet a' },
  ]);
  expect(pageRuns([{ kind: 'page', page: 'checks' }], book)).toMatchObject([
    { contents: false, title: 'All checks' },
  ]);
});
