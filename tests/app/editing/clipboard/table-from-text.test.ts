import { expect, test } from 'vitest';
import { insertTableFor } from '../../../../src/app/editing/clipboard/table-from-text.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
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

test.each([
  ['one row', 'a\tb\tc'],
  ['one column', 'a\n1\n2'],
  ['no headings', '1\t2\n3\t4'],
  ['headings alone', 'a\tb\n\t\n'],
  ['nothing', ''],
])('%s is no table', (_, text) => {
  expect(columnsFor(text)).toBeUndefined();
});
