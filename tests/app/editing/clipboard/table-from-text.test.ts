import { expect, test } from 'vitest';
import { insertTableFor } from '../../../../src/app/editing/clipboard/table-from-text.ts';
import { openNotebook, tryCells } from '../../../../src/notebook/index.ts';
import { readTable } from '../../../../src/tables/index.ts';
import { bookOf } from '../../../make-book.ts';
import { after } from '../applied.ts';

const book = bookOf({ s: [] });

/** The columns of the table that a text gets on a sheet that has nothing, each with its name, label, type and unit. */
function columnsFor(text: string): readonly (readonly unknown[])[] | undefined {
  const change = insertTableFor(openNotebook(book), 's', undefined, text);
  const [part] = change ? (after(book, change.edit).sheets[0]?.parts ?? []) : [];
  if (part?.kind !== 'table') return undefined;
  expect(part.length).toBe(0);
  return part.columns.map((column) => [
    column.name,
    column.label,
    column.kind === 'given' && column.type,
    'unit' in column ? column.unit : undefined,
  ]);
}

test('each heading becomes a column of numbers or words, with its unit', () => {
  expect(
    columnsFor('Item No\tDescription\tVolume (m³)\tRate, USD/m^3\n1.10\tslab\t12.5\t85\n1.20\tcap\t3\t90'),
  ).toEqual([
    ['item_no', 'Item No', 'text', undefined],
    ['description', 'Description', 'text', undefined],
    ['volume', 'Volume', 'number', 'm³'],
    ['rate', 'Rate', 'number', 'USD/m^3'],
  ]);
});

test('a row of units, commas and semicolons, and units beside the numbers are read', () => {
  expect(columnsFor('pile\tlength\tload\n\tft\tkip\nA1\t62\t180\nA2\t64\t175')?.slice(1)).toEqual([
    ['length', 'length', 'number', 'ft'],
    ['load', 'load', 'number', 'kip'],
  ]);
  expect(columnsFor('pile;length\nA1;62 ft\nA2;64 ft')?.[1]).toEqual(['length', 'length', 'number', 'ft']);
  expect(columnsFor('pile,length m\nA1,62\nA2,64')?.[1]).toEqual(['length_m', 'length m', 'number', 'm']);
});

test('names of functions, signs and equal headings get names that formulas can write', () => {
  expect(columnsFor('Sum\t%\tV_s\tV_s\nx\ty\t1\t2')?.map(([name]) => name)).toEqual([
    'column_1',
    'column_2',
    'V_s',
    'V_s_2',
  ]);
});

/** What the table that is made for a text reads of it: its rows, and what is pointed out or refused. */
function readBack(text: string) {
  const notebook = openNotebook(book);
  const change = insertTableFor(notebook, 's', undefined, text);
  if (!change || !notebook.apply(change.edit).ok) throw new Error('no table is made for the text');
  const [part] = notebook.book.sheets[0]?.parts ?? [];
  if (part?.kind !== 'table') throw new Error('a table is made');
  const { registry } = notebook.model;
  return readTable(text, part.columns, { registry, check: tryCells(notebook, `s.${part.name}`) });
}

test.each([
  ['V_s (m3)', 'V_s', 'm^3'],
  ['V_s (m³)', 'V_s', 'm³'],
  ['V_s (cy)', 'V_s', 'cy'],
  ['V_s [m³]', 'V_s', 'm³'],
  ['V_s, m3', 'V_s', 'm^3'],
  ['V_s m3', 'V_s', 'm^3'],
  ['h_h (mm)', 'h_h', 'mm'],
  ['Volume (m³)', 'volume', 'm³'],
  // A letter that is also a unit is a part of the name.
  ['V_s', 'V_s', '-'],
  ['q_t', 'q_t', '-'],
])('under “%s” a column %s in %s is made, and takes the numbers', (heading, name, unit) => {
  for (const text of [
    `item\t${heading}\na\t12.5\nb\t7.25\n`,
    `item\tmaterial\t${heading}\na\tconcrete\t12.5\nb\tconcrete\t7.25\n`,
  ]) {
    const made = columnsFor(text)?.at(-1);
    expect([made?.[0], made?.[2], made?.[3]]).toEqual([name, 'number', unit]);
    const read = readBack(text);
    const beside = unit === '-' ? '' : ` ${unit}`;
    expect(read.ok ? read.value.cells[name]?.map(String) : read.problems).toEqual([
      `12.5${beside}`,
      `7.25${beside}`,
    ]);
    expect(read.ok && read.value.problems).toEqual([]);
  }
});

test.each([
  ['item\tV_s (m³)\na\t12\nb\tTBC\nc\t8\n', ['12 m³', 'TBC', '8 m³']],
  ['item\tV_s (m³)\na\t12\nb\tl2\n', ['12 m³', 'l2']],
  ['item\tV_s (m³)\na\tTBC\nb\tTBC\nc\t8\n', ['TBC', 'TBC', '8 m³']],
  ['item\tV_s\na\t12\nb\tTBC\nc\t8\n', [12, 'TBC', 8]],
])('%j makes a column of numbers, in which what is none is marked', (text, cells) => {
  const read = readBack(text);
  expect(read.ok ? read.value.cells.V_s : read.problems).toEqual(cells);
  const words = cells.filter((cell) => /^(?:TBC|l2)$/.test(`${cell}`));
  expect(read.ok && read.value.problems.map(({ code }) => code)).toEqual(words.map(() => 'cell-unread'));
});

test('words under a heading that ends like a unit stay words', () => {
  const text = 'item\tRemark (t)\tplace in\na\tas built\tyard\nb\tcut\tshed\n';
  expect(columnsFor(text)?.map(([, , type]) => type)).toEqual(['text', 'text', 'text']);
});

test('a list of one column under its heading is a table like one of two', () => {
  expect(columnsFor('V_s (cy)\n380\n20')).toEqual([['V_s', 'V_s', 'number', 'cy']]);
  expect(columnsFor('item\ndeck slab\ncurb')).toEqual([['item', 'item', 'text', undefined]]);
  expect(columnsFor('380\n20')).toBeUndefined();
});

test.each([
  ['one row', 'a\tb\tc'],
  ['no headings', '1\t2\n3\t4'],
  ['headings alone', 'a\tb\n\t\n'],
  ['nothing', ''],
])('%s is no table', (_, text) => {
  expect(columnsFor(text)).toBeUndefined();
});
