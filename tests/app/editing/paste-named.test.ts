import { expect, test } from 'vitest';
import { cellContent } from '../../../src/app/editing/cell-content.ts';
import { pasteNamed } from '../../../src/app/editing/paste-named.ts';
import { putIn } from '../../../src/app/editing/put-in.ts';
import { applyEdit, type Book } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { at, smallBook } from '../small-book.ts';

const notebook = openNotebook(smallBook());

/** The book after a text with headers was pasted at a row of its table. */
function pasted(text: string, row = 'r0'): Book {
  const named = pasteNamed(notebook, at('p3', row, 'k1'), 'written', text);
  if (!named?.ok) throw new Error('the text was not pasted');
  const applied = applyEdit(smallBook(), named.value.edit);
  if (!applied.ok) throw new Error('the edit was refused');
  return applied.value.book;
}

const texts = (book: Book, column: string, rows: number): readonly string[] =>
  Array.from({ length: rows }, (_, row) => cellContent(book, at('p3', `r${row}`, column)).text);

test('columns are found by their headers, in any order, and the table grows', () => {
  const book = pasted('length (ft),mark\n"1,200.5",x\n3,y\n4,z\n5,last\n');
  expect(texts(book, 'k1', 4)).toEqual(['x', 'y', 'z', 'last']);
  expect(texts(book, 'k2', 4)).toEqual(['1,200.5 ft', '3 ft', '4 ft', '5 ft']);
});

test('columns and rows that the text does not have stay', () => {
  const book = pasted('mark;length\nx;7', 'r1');
  expect(texts(book, 'k1', 3)).toEqual(['a', 'x', 'c']);
  expect(texts(pasted('mark\nx', 'r1'), 'k2', 3)).toEqual(['1', '2 m', '']);
});

test.each([
  ['1,200\n1,300', 'numbers are not cut at their commas'],
  ['x\t1\ny\t2', 'a block of cells is none of this'],
  [`12'-6"\n13'-2"`, 'inches are no quotation marks'],
  ['steel\tpine\nstone\toak', 'words are no headers'],
  ['mark', 'one line is a cell'],
])('%j: %s', (text) => {
  expect(pasteNamed(notebook, at('p3', 'r0', 'k1'), 'written', text)).toBeUndefined();
});

test.each([
  ['mark,span\nx,2', 'column-unknown', 'a header that names nothing'],
  ['mark,length\nx,2,3', 'row-long', 'a row with too many cells'],
  ['mark,length\nx', 'row-short', 'a row with too few cells'],
  ['mark,length (m3)\nx,2', 'column-unit-unread', 'a unit that does not read'],
])('%j is refused, %s: %s', (text, code) => {
  const named = pasteNamed(notebook, at('p3', 'r0', 'k1'), 'written', text);
  expect(named?.ok === false && named.problems.map((found) => found.code)).toEqual([code]);
});

test('the rows put in and those that are new are told', () => {
  const told = (text: string, row: string): string | undefined => {
    const named = pasteNamed(notebook, at('p3', row, 'k1'), 'written', text);
    return named?.ok ? putIn(named.value.edit) : undefined;
  };
  expect(told('mark,length\nx,1\ny,2', 'r0')).toBe('2 rows pasted');
  expect(told('mark\nx\ny\nz', 'r1')).toBe(
    '3 rows (1 of them new) pasted; 1 other column keeps what was there',
  );
  expect(told('mark\nx\ny', 'r2')).toBe('2 rows (1 of them new) pasted');
});
