import { expect, test } from 'vitest';
import { emptiedColumns, type Table } from '../../src/document/index.ts';
import { readTable, type TableColumn } from '../../src/tables/index.ts';

/** Names that every object of the language inherits or keeps for itself. */
const NAMES = ['constructor', 'toString', 'valueOf', 'hasOwnProperty', '__proto__'];

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  ...NAMES.map((name) => ({ name, kind: 'given', unit: 'm' }) as const),
];

test('columns, headers, units and words called like what every object has are like all others', () => {
  const text = `item;${NAMES.join(';')}\ntoString;1;2;3;4;5\n__proto__;6;7;8;9;10.5\n`;
  const read = readTable(text, COLUMNS);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('; '));
  expect(read.value.cells.item).toEqual(['toString', '__proto__']);
  for (const [at, name] of NAMES.entries())
    expect(Object.getOwnPropertyDescriptor(read.value.cells, name)?.value).toEqual([
      at + 1,
      at === 4 ? 10.5 : at + 6,
    ]);
});

test.each(NAMES)('a unit “%s” is none', (name) => {
  const inHeader = readTable(`item;constructor (${name})\na;1\n`, COLUMNS);
  expect(!inHeader.ok && inHeader.problems.map(({ code }) => code)).toEqual(['column-unit-unread']);
  const beside = readTable(`item;constructor\na;1 ${name}\n`, COLUMNS);
  expect(beside.ok && Object.getOwnPropertyDescriptor(beside.value.cells, 'constructor')?.value).toEqual([
    `1 ${name}`,
  ]);
});

test.each(NAMES)('a header “%s” that no column has is asked for', (name) => {
  const read = readTable(`item;${name}\na;1\n`, [{ name: 'item', kind: 'given', type: 'text' }]);
  expect(!read.ok && read.problems.map(({ code }) => code)).toEqual(['column-unknown']);
});

test('a column called so that a text lacks would become blank', () => {
  const table = {
    kind: 'table',
    id: 't1',
    name: 'takeoff',
    length: 1,
    columns: NAMES.map((name, at) => ({
      id: `c${at}`,
      kind: 'given',
      name,
      chunks: [[1]],
    })),
  } as unknown as Table;
  const read = readTable('item\na\n', COLUMNS);
  if (!read.ok) throw new Error('not read');
  expect(emptiedColumns(table, read.value).map(({ name }) => name)).toEqual(NAMES);
});
