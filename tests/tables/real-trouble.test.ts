import { expect, test } from 'vitest';
import { type ReadOptions, readTable, type TableColumn } from '../../src/tables/index.ts';
import { readEntry, readUnit, standardUnits } from '../../src/units/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
];

const volume = readUnit('cy', standardUnits);
const check: NonNullable<ReadOptions['check']> = (name, cell) => {
  if (name === 'item' || !volume.ok) return undefined;
  const read = readEntry(`${cell}`, standardUnits, volume.value);
  return read.ok ? undefined : read.problems[0];
};

/** What is said of one cell of volumes. */
function saidOf(cell: string): string {
  const read = readTable(`item\tV_s\nslab\t${cell}\n`, COLUMNS, { check });
  const [found] = read.ok ? read.value.problems : read.problems;
  return [found?.message, ...(found?.hints ?? [])].join('; ');
}

test.each([
  ['12 SY', '“12 SY” is an area (sy), and this line takes a volume (cy)'],
  ['40 sq. ft.', '“40 sq. ft.” is an area (sf), and this line takes a volume (cy)'],
  ['40 CY bank', '“bank” is not a unit'],
])('“%s” among volumes is told by what keeps it from being read', (cell, words) => {
  expect(saidOf(cell)).toContain(words);
  expect(saidOf(cell)).not.toContain('is not a unit here');
});

test('a unit that would be read is offered', () => {
  expect(saidOf('12 mc')).toMatch(/“mc” is not a unit here; write “m\^3”$/);
  expect(saidOf('12 cu yards')).not.toContain('is an area');
});

test('a cell is quoted as the text has it, with its decimal comma', () => {
  expect(saidOf('$ 3,5/m')).toContain('“$ 3,5/m” is a price or rate');
});
