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

test.each([
  ['1O', '“1O” has a letter where a digit seems to be meant; write “10” if'],
  ['12O.5', 'write “120.5” if'],
  ['1l0', 'write “110” if'],
  ['l2', 'write “12” if'],
  ['4-Mar', '“4-Mar” is a date, and spreadsheets make dates of numbers'],
  ['Mar-04', 'is a date'],
  ['2026-03-04', 'is a date'],
  [
    '8""',
    '“8""” has the mark for inches twice, as it is written within a cell in quotation marks alone; write “8"” if',
  ],
  ['12\'-6""', 'write “12\'-6"” if'],
  ['1,00,00', '“1,00,00” has commas where none part thousands; look up the number'],
  [
    '12 BCY',
    '“12 BCY” is said of a cubic yard in the bank, before it is dug, and what is taken here is in cy',
  ],
])('of “%s” the slip is said that it looks like', (cell, words) => {
  expect(saidOf(cell)).toContain(words);
});

test.each(['10 sy', 'lot', 'about 5', 'Oak'])('“%s” looks like no slip', (cell) => {
  expect(saidOf(cell)).not.toMatch(/letter|is a date|commas|twice|said of/);
});

test('a unit that would be read is offered', () => {
  expect(saidOf('12 mc')).toMatch(/“mc” is not a unit here; write “m\^3”$/);
  expect(saidOf('12 cu yards')).not.toContain('is an area');
});

test('a cell is quoted as the text has it, with its decimal comma', () => {
  expect(saidOf('$ 3,5/m')).toContain('“$ 3,5/m” is a price or rate');
});
