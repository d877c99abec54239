import { expect, test } from 'vitest';
import { readTable, type TableColumn } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
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
  'All deck,100',
  ',100',
])('“%s” is asked for as a total', (row) => {
  expect(under(row)).toEqual(['row-total']);
});

test('the sum of a single row without words is asked for as a total', () => {
  const read = readTable('item,V_s\nslab,100\n,100\n', COLUMNS);
  expect(!read.ok && read.problems.map(({ code }) => code)).toEqual(['row-total']);
});

test.each(['All-round brace,7', 'Allowance,100', 'Carriageway,100', 'wall,100'])('“%s” is a row', (row) => {
  expect(under(row)).toBe(3);
});
