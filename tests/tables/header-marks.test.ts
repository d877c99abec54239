import { expect, test } from 'vitest';
import { readTable, type TableColumn } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'L', label: 'length', kind: 'given', unit: 'ft' },
  { name: 'thick', label: 'thickness', kind: 'given', unit: 'in' },
  { name: 'V_s', label: 'volume', kind: 'given', unit: 'cy' },
];

function cellsUnder(header: string) {
  const read = readTable(`item\t${header}\nslab\t12\n`, COLUMNS);
  if (!read.ok) return read.problems.map(({ code }) => code);
  return Object.fromEntries(Object.entries(read.value.cells).filter(([name]) => name !== 'item'));
}

test.each([
  ['thick ("")', 'thick', '12 in'],
  ['thick (″)', 'thick', '12 in'],
  ["length (')", 'L', '12 ft'],
  ['length (′)', 'L', '12 ft'],
  ['V_s *', 'V_s', 12],
  ['V_s* (m³)', 'V_s', '12 m³'],
  ['V_s (m³)*', 'V_s', '12 m³'],
  ['Volume:', 'V_s', 12],
  ['Volume †', 'V_s', 12],
  ['Vs (m³)', 'V_s', '12 m³'],
])('under %s', (header, column, cell) => {
  const marked = header.includes('"') ? `"${header}"` : header;
  expect(cellsUnder(marked)).toEqual({ [column]: [cell] });
});

test.each(['vs (m³)', 'Vss', '*', "volume (')"])('%s names no column or unit', (header) => {
  expect(cellsUnder(header)).toHaveLength(1);
});

test('a name without its underscore that two columns may have is no name', () => {
  const two: readonly TableColumn[] = [
    ...COLUMNS,
    { name: 'a_bc', kind: 'given', unit: 'm' },
    { name: 'ab_c', kind: 'given', unit: 'm' },
  ];
  const read = readTable('item,abc\nslab,12\n', two);
  expect(!read.ok && read.problems.map(({ code }) => code)).toEqual(['column-unknown']);
});

test('a mark for inches under the unit of another row is no unit', () => {
  const read = readTable('item,length,Unit\nslab,12,m\ncaps,3,"""" \n', COLUMNS);
  expect(read.ok).toBe(false);
});

test('constants that programs write as formulas are their words and numbers', () => {
  const read = readTable('="item",="volume"\n="0012 ""A""",="12.5"\ncaps,="12" & "3"\n', COLUMNS);
  expect(read.ok && read.value.cells).toEqual({ item: ['0012 "A"', 'caps'], V_s: [12.5, '="12" & "3"'] });
});
