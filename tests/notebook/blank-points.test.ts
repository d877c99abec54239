import { beforeEach, describe, expect, test } from 'vitest';
import {
  type Book,
  blankBook,
  insertTableRows,
  type Part,
  setCells,
  type Table,
} from '../../src/document/index.ts';
import { type Notebook, openNotebook } from '../../src/notebook/index.ts';
import { findingsOf } from '../../src/record/findings/findings.ts';

const bill: Table = {
  id: 'bill',
  kind: 'table',
  name: 'bill',
  length: 2,
  columns: [
    { id: 'i', kind: 'given', name: 'item', type: 'text', chunks: [['paving', 'kerb']] },
    { id: 'q', kind: 'given', name: 'q', unit: 'm', chunks: [[10, 20]] },
    { id: 'p', kind: 'given', name: 'price', unit: 'USD/m', chunks: [[3, 4]] },
    { id: 'w', kind: 'given', name: 'waste', unit: '%', default: '0 %', chunks: [[null, null]] },
    { id: 'r', kind: 'given', name: 'remark', type: 'text', optional: true, chunks: [[null, null]] },
    { id: 'a', kind: 'calc', name: 'amount', formula: 'q * price', unit: 'USD' },
    { id: 'b', kind: 'calc', name: 'more', formula: 'amount * (1 + waste)', unit: 'USD' },
    { id: 'n', kind: 'calc', name: 'share', formula: 'amount / SUM(bill.amount)', unit: '%' },
  ],
};
const notes: Table = {
  id: 'notes',
  kind: 'table',
  name: 'notes',
  length: 1,
  columns: [{ id: 'm', kind: 'given', name: 'memo', type: 'text', chunks: [['first']] }],
};
const marks: Table = {
  id: 'marks',
  kind: 'table',
  name: 'marks',
  columns: [
    { id: 'z', kind: 'series', name: 'z', formula: 'SERIES(0; COUNT(bill.item); 1)', unit: '-' },
    { id: 'y', kind: 'calc', name: 'y', formula: 'z * 2', unit: '-' },
  ],
};
const lines: Part = {
  id: 'l',
  kind: 'rows',
  rows: [
    { id: 't', kind: 'calc', name: 'total', formula: 'SUM(bill.more)', unit: 'USD' },
    { id: 'l', kind: 'calc', name: 'length', formula: 'SUM(bill.q)', unit: 'm' },
    {
      id: 'k',
      kind: 'calc',
      name: 'kerb',
      formula: 'LOOKUP("kerb"; bill.item; bill.price; "exact")',
      unit: 'USD/m',
    },
    { id: 'c', kind: 'check', name: 'cheap', formula: 'total <= 500 USD' },
  ],
};
const book: Book = { ...blankBook(), sheets: [{ key: 's', title: 'S', parts: [bill, notes, marks, lines] }] };
const at = { sheet: 's', table: 'bill' };

let notebook: Notebook;
beforeEach(() => {
  notebook = openNotebook(book);
});

const part = () => notebook.model.tables.get('s.bill')?.part ?? bill;
const put = (column: string, row: number, cell: string | number | null) =>
  notebook.apply(setCells({ ...at, column }, row, [cell]));
const addRow = (row = 2) => notebook.apply(insertTableRows(at, part(), row, { length: 1, cells: {} }));
const toMend = () => findingsOf(notebook).problems.map(({ cell, message }) => `${cell}: ${message}`);

describe('a row in which nothing is entered', () => {
  test('is one open point, and no line or column beside it', () => {
    expect(toMend()).toEqual([]);
    addRow();
    expect(toMend()).toEqual(['s.bill.item: row 3 is blank, and what is computed from it waits']);
    expect(findingsOf(notebook).problems[0]).toMatchObject({
      code: 'row-incomplete',
      data: { row: 3, empty: true },
      hints: ['fill it in or delete it'],
    });
  });

  test('leaves every total over it without a value, which says so with the part that is known', () => {
    addRow();
    expect(notebook.result('s.total')).toMatchObject({
      status: 'waiting',
      problem: { message: expect.stringMatching(/row 3 .*is blank; the 2 filled give 110.00 USD/) },
    });
    expect(notebook.result('s.length')).toMatchObject({ status: 'waiting' });
    expect(notebook.result('s.kerb').status).toBe('waiting');
    expect(notebook.verdict('s.cheap')).toBeUndefined();
    // A table whose rows are counted from it has none.
    expect(['s.marks.z', 's.marks.y'].map((id) => notebook.column(id).status)).toEqual([
      'waiting',
      'waiting',
    ]);
  });

  test('two of them are told one by one, in the order of the rows', () => {
    addRow();
    addRow(0);
    expect(toMend()).toEqual([
      's.bill.item: row 1 is blank, and what is computed from it waits',
      's.bill.item: row 4 is blank, and what is computed from it waits',
    ]);
  });

  test('is no point where nothing waits for it', () => {
    notebook.apply(insertTableRows({ sheet: 's', table: 'notes' }, notes, 1, { length: 1, cells: {} }));
    expect(toMend()).toEqual([]);
  });
});

describe('a row that is begun', () => {
  test('names what is missing, once, until it is filled in', () => {
    addRow();
    put('r', 2, 'to be priced');
    expect(toMend()).toEqual([
      expect.stringMatching(/^s\.bill\.item: row 3: “item”, “q” and “price” are blank, and what/),
    ]);
    put('i', 2, 'gully');
    put('q', 2, 3);
    expect(toMend()).toEqual([expect.stringMatching(/^s\.bill\.price: row 3: “price” is blank, and what/)]);
    put('p', 2, 100);
    expect(toMend()).toEqual([]);
    // 30 + 80 + 300.
    expect(notebook.result('s.total')).toMatchObject({ status: 'ok', value: { si: 410 } });
  });

  test('hides no mistake in another row', () => {
    addRow();
    put('q', 0, 'ten');
    expect(toMend()).toEqual([
      's.bill.item: row 3 is blank, and what is computed from it waits',
      expect.stringMatching(/^s\.bill\.q: row 1: /),
    ]);
  });
});

test('a mistake behind many blank rows is told', () => {
  for (let count = 0; count < 12; count += 1) addRow(0);
  put('q', 13, 'ten');
  const told = toMend();
  expect(told.filter((one) => one.includes('is blank'))).toHaveLength(5);
  expect(told).toContainEqual(expect.stringMatching(/^s\.bill\.q: row 14: /));
});

test('a blank that means an option because of which another cell is needed is named with it', () => {
  const table: Table = {
    id: 'take',
    kind: 'table',
    name: 'take',
    length: 2,
    columns: [
      {
        id: 'f',
        kind: 'given',
        name: 'from',
        type: 'text',
        options: ['area', 'volume'],
        default: 'area',
        chunks: [[null, 'area']],
      },
      { id: 'a', kind: 'given', name: 'area', unit: 'sf', optional: true, chunks: [[null, null]] },
      { id: 'v', kind: 'given', name: 'V', unit: 'cf', optional: true, chunks: [[9, 9]] },
      {
        id: 'm',
        kind: 'calc',
        name: 'A',
        by: 'from',
        methods: [
          { id: 'm1', for: ['area'], formula: 'area' },
          { id: 'm2', for: ['volume'], formula: 'V / 1 ft' },
        ],
        unit: 'sf',
      },
    ],
  };
  const notebook = openNotebook({ ...blankBook(), sheets: [{ key: 's', title: 'S', parts: [table] }] });
  const [blank, chosen] = notebook.problems().filter(({ code }) => code === 'row-incomplete');
  expect(blank?.hints).toEqual([
    'fill in what is missing, or choose another than “area” in “from”, which a blank there means',
  ]);
  expect(chosen?.hints).toEqual(['fill in what is missing']);
});
