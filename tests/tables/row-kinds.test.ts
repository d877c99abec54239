import { expect, test } from 'vitest';
import { readTable, type TableColumn } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
  { name: 'w', kind: 'given', unit: '%' },
];

/** The codes that refuse a row under one item of 100, or how many rows are taken. */
function under(row: string): readonly string[] | number {
  const read = readTable(`item,V_s\nslab,60\ncaps,40\n${row}\n`, COLUMNS);
  return read.ok ? read.value.length : read.problems.map(({ code }) => code);
}

test.each([
  'Σ,100',
  'carried forward,100',
  'Carried forward to page 2,100',
  'Brought forward,100',
  'c/f,100',
  'Übertrag,100',
  'à reporter,3',
  'A reporter :,3',
  'Report,3',
  'suma y sigue,3',
  'a riportare,3',
  'Riporto,3',
  'carried to collection,3',
  'To collection,3',
  'Transport,100',
  'Итого,3',
  '合计,3',
  'Celkem,3',
  'All deck,100',
  ',100',
])('“%s” is asked for as a total', (row) => {
  expect(under(row)).toEqual(['row-total']);
});

test.each([
  ['item,V_s\nslab,60\ncaps,40\n,7\n', 'row-unnamed', { unnamed: 'out' }],
  ['item,V_s\n,7\nslab,60\ncaps,40\n', 'row-unnamed', { unnamed: 'out' }],
  ['item,V_s\nslab,60\ncaps,40\nAll deck,105\n', 'row-all', { totals: 'out' }],
  ['item,V_s\nslab,60\ncaps,40\nOverall,99.5\n', 'row-all', { totals: 'out' }],
  ['item,V_s,w\n1,2,3\nslab,60,5\ncaps,40,5\n', 'row-numbering', { notes: 'out' }],
  ['item,V_s,w\n(1),(2),(3)\nslab,60,5\ncaps,40,5\n', 'row-numbering', { notes: 'out' }],
] as const)('%j is asked for as %s, and left out by consent', (text, code, consent) => {
  const read = readTable(text, COLUMNS);
  expect(!read.ok && read.problems.map((found) => found.code)).toEqual([code]);
  const out = readTable(text, COLUMNS, consent);
  expect(out.ok && out.value.cells.item).toEqual(['slab', 'caps']);
  expect(out.ok && out.value.cells.V_s).toEqual([60, 40]);
});

test.each([
  ['item,V_s\n,60\n,40\n,7\nslab,3\n', 4],
  ['V_s\n60\n40\n', 2],
])('%j has no words that a row could lack', (text, rows) => {
  const read = readTable(text, COLUMNS);
  expect(read.ok && read.value.length).toBe(rows);
});

test('rows without words are items where that is said', () => {
  const read = readTable('item,V_s\nslab,60\ncaps,40\n,7\n', COLUMNS, { unnamed: 'in' });
  expect(read.ok && read.value.cells).toEqual({ item: ['slab', 'caps', null], V_s: [60, 40, 7] });
  expect(read.account?.counts).toMatchObject({ heading: 2, taken: 5 });
});

test('the sum of a single row without words is asked for as a total', () => {
  const read = readTable('item,V_s\nslab,100\n,100\n', COLUMNS);
  expect(!read.ok && read.problems.map(({ code }) => code)).toEqual(['row-total']);
});

test.each([
  'All-round brace,7',
  'Allowance,100',
  'Carriageway,100',
  'wall,100',
  'Transport,7',
  'Report of survey,7',
  'Summary slab,7',
  'Sumac bed,7',
])('“%s” is a row', (row) => {
  expect(under(row)).toBe(3);
});

test('of a total above all rows it is not said what it is the sum of', () => {
  const read = readTable('item,V_s\nTotal,100\nslab,60\ncaps,40\n', COLUMNS);
  expect(!read.ok && read.problems[0]?.message).toBe('line 2 seems to be a total: “Total, 100”');
});
