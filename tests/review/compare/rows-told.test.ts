import { describe, expect, test } from 'vitest';
import {
  type Book,
  type Cell,
  insertTableRows,
  moveTableRows,
  removeTableRows,
  replaceTableRows,
  setCells,
  stateCell,
  type Table,
} from '../../../src/document/index.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf, texts } from '../../make-book.ts';
import { compared, edited, listed } from './compared.ts';

const items = (names: readonly string[], masses: readonly Cell[]): Table =>
  tableOf('items', names.length, texts('item', names), numbers('m', 't', masses), calcColumn('w', '2 * m'));
const bookWith = (table: Table): Book => bookOf({ t: [table, blockOf('s', calc('S', 'SUM(items.m)'))] });
const table = items(['cap', 'beam', 'pile', 'deck'], [4, 5, 6, 7]);
const book = bookWith(table);
const at = { sheet: 't', table: 'items' };
const changed = (before: Book, after: Book): readonly string[] => {
  const lines = listed(before, after);
  return lines.slice(
    lines.indexOf('changed') + 1,
    lines.includes('followed') ? lines.indexOf('followed') : undefined,
  );
};

describe('rows of one table go by their identities', () => {
  test('a row put in is the only one that came, wherever it stands', () => {
    const after = edited(
      book,
      insertTableRows(at, table, 1, { length: 1, cells: { item: ['curb'], m: [3] } }),
    );
    expect(changed(book, after)).toEqual(['added: t.items, row 2 “curb”: item curb, m 3']);
    expect(listed(book, after)).toContain(
      'total of column t.items.m: 22 t → 25 t (+3 t, +13.6 %); from t.items (rows)',
    );
  });

  test('a row taken out, and one moved', () => {
    const gone = edited(book, removeTableRows(at, 0, 1));
    expect(changed(book, gone)).toEqual(['removed: t.items, row 1 “cap”: item cap, m 4']);
    const moved = edited(book, moveTableRows(at, table, 0, 1, 2));
    expect(changed(book, moved)).toEqual(['moved: t.items, row 3 “cap” from position 1 to 3']);
  });

  test('an item with another name is a cell that was changed, in the row it always was', () => {
    const after = edited(book, setCells({ ...at, column: 'item' }, 1, ['cross beam']));
    expect(changed(book, after)).toEqual(['t.items.item, row 2 “cross beam”: “beam” → “cross beam”']);
    expect(compared(book, after).tables).toMatchObject([{ by: 'identity' }]);
  });

  test('a value stated in a cell, and its reason', () => {
    const after = edited(
      book,
      stateCell({ ...at, column: 'w' }, calcColumn('w', '2 * m'), 3, { entry: '11 t', reason: 'weighed' }),
    );
    expect(changed(book, after)).toEqual([
      't.items.w, row 3 “pile”: stated value none → “11 t”',
      't.items.w, row 3 “pile”: reason for the stated value none → “weighed”',
    ]);
  });
});

describe('files that were filled apart go by the first column of texts without repeats', () => {
  test('another order and another row, in a table of another file', () => {
    const other = { ...items(['pile', 'curb', 'cap', 'beam', 'deck'], [6, 3, 4, 5.5, 7]), id: 'theirs' };
    expect(changed(book, bookWith(other))).toEqual([
      'moved: t.items, row 1 “pile” from position 3 to 1',
      'added: t.items, row 2 “curb”: item curb, m 3',
      't.items.m, row 4 “beam”: 5 → 5.5 (+0.5 t, +10.0 %)',
      '(rows of t.items are told apart by what stands in item)',
    ]);
  });

  test('a list pasted over another in one book', () => {
    const rows = { length: 4, cells: { item: ['curb', 'cap', 'beam', 'pile'], m: [3, 4, 5, 6] } };
    const over = edited(
      book,
      setCells({ ...at, column: 'item' }, 0, rows.cells.item),
      setCells({ ...at, column: 'm' }, 0, rows.cells.m),
    );
    const told = [
      'added: t.items, row 1 “curb”: item curb, m 3',
      'removed: t.items, row 4 “deck”: item deck, m 7',
      '(rows of t.items are told apart by what stands in item)',
    ];
    expect(changed(book, over)).toEqual(told);
    expect(changed(book, edited(book, replaceTableRows(at, table, rows)))).toEqual(told);
  });

  test('without such a column rows go by their places, and it is said', () => {
    const twice = (masses: readonly Cell[], id: string): Book =>
      bookWith({ ...items(['cap', 'cap', 'beam'], masses), id });
    expect(changed(twice([1, 2, 3], 'ours'), twice([1, 4, 3], 'theirs'))).toEqual([
      't.items.m, row 2: 2 → 4 (+2 t, +100.0 %)',
      '(rows of t.items are told apart by their places)',
    ]);
  });
});

test('of many cells of a column the first are listed, and how many more there are', () => {
  const names = Array.from({ length: 60 }, (_, at) => `item ${at}`);
  const masses = names.map((_, at) => at + 1);
  const before = bookWith(items(names, masses));
  const after = edited(
    before,
    setCells(
      { ...at, column: 'm' },
      0,
      masses.map((m) => m + 0.5),
    ),
  );
  const lines = changed(before, after);
  expect(lines.length).toBe(41);
  expect(lines.at(-1)).toBe('and 20 more (cell t.items.m)');
  expect(compared(before, after).differences.filter(({ kind }) => kind === 'cell').length).toBe(60);
});

test('the rows a series makes are no edits: their number is told with what it followed from', () => {
  const made = (stop: string): Book =>
    bookOf({
      t: [
        blockOf('p', given('n', stop)),
        {
          id: 'k',
          kind: 'table',
          name: 'steps',
          columns: [
            { id: 'i', kind: 'series', name: 'i', formula: 'SERIES(1; n; 1)' },
            calcColumn('x', '2 * i'),
          ],
        },
      ],
    });
  const lines = listed(made('3'), made('5'));
  expect(lines).toContain('column t.steps.i: 3 → 5 rows in all; from t.n (entry)');
  expect(changed(made('3'), made('5'))).toEqual(['t.n: entry “3” → “5” (+2, +66.7 %)']);
});
