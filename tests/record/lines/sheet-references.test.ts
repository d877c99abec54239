import { expect, test } from 'vitest';
import { findSheet, type Row } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { marksOfBook, sheetReferences } from '../../../src/record/lines/sheet-references.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf, texts } from '../../make-book.ts';

const long = 'An invented handbook, 3rd edition, clause 4.2.1 (from memory)';
const shared = 'Invented code 7, table 2';
const once = 'Invented code 7, table 3';

function referencesOf(...rows: readonly Row[]) {
  const notebook = openNotebook(bookOf({ s: [blockOf('b', ...rows)] }));
  const sheet = findSheet(notebook.book, 's');
  if (!sheet) throw new Error('there is no sheet');
  return sheetReferences(notebook, sheet);
}

test('what is long, or stands more than once, is listed once in the order of the lines', () => {
  const { cite, listed } = referencesOf(
    { ...given('a', '1', 'm'), reference: shared },
    { ...given('b', '2', 'm'), reference: once },
    { ...calc('c', 'a + b'), reference: long },
    { ...calc('d', 'a * b'), reference: shared },
    { ...given('e', '3', 'm'), reference: 'survey' },
    { ...given('f', '4', 'm'), reference: 'survey' },
  );
  expect(listed).toEqual([shared, long]);
  expect([shared, once, 'survey', ''].map(cite)).toEqual(['[1]', once, 'survey', '']);
});

test('that a reference is only remembered stands beside its mark', () => {
  const { cite } = referencesOf({ ...calc('c', '1 m'), reference: long });
  expect(cite(long)).toBe('[1] from memory');
});

test('each method of a column has its own reference, and a column without lines of its own is counted', () => {
  const column = calcColumn('q', {
    by: 'kind',
    reference: shared,
    methods: [
      { id: 'm1', for: ['soft'], formula: '1 m', reference: long },
      { id: 'm2', for: ['hard'], formula: '2 m' },
    ],
    unit: 'm',
  });
  const width = { ...numbers('w', 'm', [1, 2]), reference: once };
  const kind = texts('kind', ['soft', 'hard'], ['soft', 'hard']);
  const notebook = openNotebook(
    bookOf({
      s: [blockOf('b', { ...given('a', '1', 'm'), reference: once }), tableOf('t', 2, kind, width, column)],
    }),
  );
  const sheet = findSheet(notebook.book, 's');
  if (!sheet) throw new Error('there is no sheet');
  // `once` stands at a line and a column by now; `shared`, which is the line's own, only for the method that has none.
  expect(sheetReferences(notebook, sheet).listed).toEqual([once, long]);
});

test('with the page of sources, marks count through the book in its order, the weakest first, and sheets list nothing', () => {
  const notebook = openNotebook(
    bookOf({
      s: [
        blockOf('b', { ...given('a', '1', 'm'), reference: shared }, { ...calc('c', 'a'), reference: once }),
      ],
      t: [
        blockOf(
          'b',
          { ...given('a', '1', 'm'), reference: long },
          { ...given('b', '1', 'm'), reference: 'survey' },
        ),
      ],
    }),
  );
  const sheet = findSheet(notebook.book, 's');
  if (!sheet) throw new Error('there is no sheet');
  const marks = marksOfBook(notebook);
  expect(marks.get(long)).toBe(1);
  expect(new Set([shared, once].map((one) => marks.get(one)))).toEqual(new Set([2, 3]));
  expect(marks.size).toBe(3);
  const { cite, listed } = sheetReferences(notebook, sheet, marks);
  expect(listed).toEqual([]);
  expect([long, once, 'survey'].map(cite)).toEqual(['[1] from memory', `[${marks.get(once)}]`, 'survey']);
});
