import { expect, test } from 'vitest';
import { readTable, type TableColumn } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
];

test.each([
  ['1,23,456.50', '123456.50'],
  ['12,34,567', 1234567],
  ['1,23,456 m³', '123456 m³'],
  ["1'234.50", '1234.50'],
  ['1´234.50', '1234.50'],
  ['1`234', 1234],
  ['1.234,-', 1234],
  ['50,--', 50],
  ['50,- m³', '50 m³'],
  ['\u200e12.5\u200e', 12.5],
  ['\u202a1,234.5\u202c', '1,234.5'],
  ['12.5-', '-12.5'],
])('%j is %j', (written, cell) => {
  const read = readTable(`item;V_s\nslab;${written}\n`, COLUMNS);
  expect(
    read.ok ? read.value.cells.V_s?.map((one) => (one === -12.5 ? '-12.5' : one)) : read.problems,
  ).toEqual([cell]);
});
