import { expect, test } from 'vitest';
import type { Book, Column } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { rowsOnPaper } from '../../../src/record/tables/rows-on-paper.ts';
import { blockOf, bookOf, calc, calcColumn, numbers, type tableOf } from '../../make-book.ts';

/** A table of so many rows that a series makes, one metre a row, and a column that is greatest in row 60. */
function bookWith(rows: number, columns: readonly Column[] = []): Book {
  const depth: Column = {
    id: 'z',
    kind: 'series',
    name: 'z',
    formula: `SERIES(1 m; ${rows} m; 1 m)`,
    unit: 'm',
  };
  const load = calcColumn('q', { formula: '100 (m^2) - (z - 60 m)^2', unit: 'm^2' });
  const table: ReturnType<typeof tableOf> = {
    id: 't',
    kind: 'table',
    name: 't',
    columns: [depth, load, ...columns],
  };
  return bookOf({ s: [blockOf('p', calc('q_max', { formula: 'MAX(t.q)', unit: 'm^2' })), table] });
}

function printed(book: Book, rows: number): readonly string[] {
  const notebook = openNotebook(book);
  const part = book.sheets[0]?.parts.find((one) => one.kind === 'table');
  if (part?.kind !== 'table') throw new Error('there is no table');
  const runs = rowsOnPaper(notebook, 's.t', part.columns, rows);
  return runs.map(({ kind, from, to }) => `${kind} ${from + 1}-${to + 1}`);
}

test('of a long calculated table those are printed that come first and last, govern or fail', () => {
  const inverse = calcColumn('i', { formula: '1 m / (z - 100 m)', unit: '-' });
  expect(printed(bookWith(172, [inverse]), 172)).toEqual([
    'printed 1-6',
    'left out 7-59',
    'printed 60-60',
    'left out 61-99',
    'printed 100-100',
    'left out 101-169',
    'printed 170-172',
  ]);
});

test('one row is never left out by itself', () => {
  const inverse = calcColumn('i', { formula: '1 m / (z - 8 m)', unit: '-' });
  expect(printed(bookWith(64, [inverse]), 64)).toEqual(['printed 1-8', 'left out 9-59', 'printed 60-64']);
});

test('every row is printed of a table that is not long, that has entries, and where the book says so', () => {
  expect(printed(bookWith(48), 48)).toEqual(['printed 1-48']);
  const book = bookWith(172);
  const whole: Book = { ...book, settings: { ...book.settings, printedTables: 'whole' } };
  expect(printed(whole, 172)).toEqual(['printed 1-172']);
  const notebook = openNotebook(book);
  const columns = [numbers('n', 'm', [])];
  expect(rowsOnPaper(notebook, 's.t', columns, 172)).toEqual([{ kind: 'printed', from: 0, to: 171 }]);
});
