import { expect, test } from 'vitest';
import {
  blankBook,
  emptiedColumns,
  insertTableRows,
  type Part,
  type Table,
} from '../../src/document/index.ts';
import { enterRows, openNotebook } from '../../src/notebook/index.ts';

/** Names that every object has by inheritance, and that a book may use. */
const [sheet, name, first, second] = ['toString', 'constructor', 'hasOwnProperty', 'valueOf'];

const table: Table & Part = {
  id: 'isPrototypeOf',
  kind: 'table',
  name,
  length: 1,
  columns: [
    { id: first, kind: 'given', name: first, unit: 'm', chunks: [[1]] },
    { id: second, kind: 'given', name: second, unit: 'm', chunks: [[2]] },
  ],
};
const open = () => openNotebook({ ...blankBook(), sheets: [{ key: sheet, title: '', parts: [table] }] });
const values = (notebook: ReturnType<typeof open>, column: string) => {
  const read = notebook.column(`${sheet}.${name}.${column}`);
  if (read.status !== 'ok') throw new Error(read.problem.message);
  return [...read.reading.values];
};

test('rows without a cell of such a column leave it blank', () => {
  const notebook = open();
  const place = { sheet, table: table.id };
  const grown = notebook.apply(insertTableRows(place, table, 1, { length: 1, cells: { [second]: [5] } }));
  expect(grown.ok).toBe(true);
  expect(values(notebook, first)).toEqual([1, Number.NaN]);
  expect(values(notebook, second)).toEqual([2, 5]);
  expect(emptiedColumns(table, { length: 1, cells: { [second]: [5] } }).map((one) => one.name)).toEqual([
    first,
  ]);
});

test('rows that are entered cell by cell have what they say alone', () => {
  const notebook = open();
  const edit = enterRows(notebook.book, name, [{ [first]: 3 }, { [second]: 4 }], '');
  if (!edit.ok) throw new Error(edit.problems[0]?.message);
  expect(notebook.apply(edit.value).ok).toBe(true);
  expect(values(notebook, first)).toEqual([3, Number.NaN]);
  expect(values(notebook, second)).toEqual([Number.NaN, 4]);
});
