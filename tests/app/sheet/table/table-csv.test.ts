import { expect, test } from 'vitest';
import { tableCsv } from '../../../../src/app/sheet/table/table-csv.ts';
import { blankBook, chunksOfCells, type Table } from '../../../../src/document/index.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';

const table: Table = {
  id: 'p1',
  kind: 'table',
  name: 'takeoff',
  length: 3,
  columns: [
    {
      id: 'c1',
      kind: 'given',
      name: 'item',
      type: 'text',
      chunks: chunksOfCells(['deck, south', 'cap', 'pile']),
    },
    { id: 'c2', kind: 'given', name: 'L', unit: 'ft', chunks: chunksOfCells([10, '3.048 m', null]) },
    { id: 'c3', kind: 'calc', name: 'A', formula: 'L * 12 ft', unit: 'sf' },
    { id: 'c4', kind: 'calc', name: 'long', formula: 'L > 5 ft' },
  ],
};
const notebook = openNotebook({
  ...blankBook(),
  sheets: [{ key: 's', title: '', parts: [table] }],
});

test('numbers are in the unit of the header, typed in another one or calculated, and no value is blank', () => {
  expect(tableCsv(notebook, 's', table)).toBe(
    ['item,L (ft),A (sf),long', '"deck, south",10,120,true', 'cap,10,120,true', 'pile,,,', ''].join('\r\n'),
  );
});
