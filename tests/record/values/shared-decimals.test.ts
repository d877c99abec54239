import { describe, expect, test } from 'vitest';
import { blankBook, type Table } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { columnSummed } from '../../../src/record/index.ts';
import { columnSum, columnView } from '../../../src/record/values/cell-view.ts';
import { printedRowsWords } from '../../../src/record/values/printed-rows.ts';
import type { UnitsView } from '../../../src/record/values/units-view.ts';

function table(unit: string, cells: readonly number[]) {
  const part: Table = {
    id: 'p',
    kind: 'table',
    name: 't',
    length: cells.length,
    columns: [
      { id: 'a', kind: 'given', name: 'a', unit, chunks: [cells] },
      { id: 'k', kind: 'calc', name: 'k', formula: 'a * 1', unit },
    ],
  };
  const notebook = openNotebook({ ...blankBook(), sheets: [{ key: 's', title: '', parts: [part] }] });
  const texts = (column: number) => {
    const one = part.columns[column];
    if (!one) throw new Error('no such column');
    const { at } = columnView(notebook, `s.t.${one.name}`, one, 'written');
    return cells.map((_, row) => at(row).text.replace(/\u202f/g, ' '));
  };
  return {
    typed: texts(0),
    shown: texts(1),
    sum: columnSum(notebook, 's.t.k', 'written')?.replace(/[\u202f\u00a0]/g, ' '),
  };
}

describe('the numbers of a calculated column', () => {
  test('are amounts with cents where one has cents, and add to their sum', () => {
    expect(table('USD', [4548, 933.01, 12_000.5])).toEqual({
      typed: ['4548', '933.01', '12 000.5'],
      shown: ['4548.00', '933.01', '12 000.50'],
      sum: '17 481.51 USD',
    });
    expect(table('USD', [4548, 933]).shown).toEqual(['4548', '933']);
  });

  test('of which a sum that their rounded values do not give says so', () => {
    // Three times 1/3 of a dollar are a dollar, and three times 33 cents are not.
    expect(table('USD', [1 / 3, 1 / 3, 1 / 3]).sum).toBe(
      '1.00 USD, rounded; the rows as they are rounded add to 0.99',
    );
  });

  test('are never made nothing by their cents', () => {
    expect(table('USD', [0.0012, 5.5]).shown).toEqual(['0.0012', '5.50']);
  });

  test('have the decimals of the one with most, unless these are many', () => {
    expect(table('m', [1.25, 4, 2000]).shown).toEqual(['1.25', '4.00', '2000.00']);
    expect(table('m', [3, 4]).shown).toEqual(['3', '4']);
    expect(table('m', [0.000_012, 4]).shown).toEqual(
      ['1.2 × 10⁻⁵', '4'].map((text) => text.replace(/ /g, ' ')),
    );
  });
});

describe('a line that is the sum of a column', () => {
  const lines = [
    { id: 'r1', kind: 'calc', name: 'all', formula: 'SUM(t.k)', unit: 'm' },
    { id: 'r2', kind: 'calc', name: 'typed', formula: 'SUM(t.a)', unit: 'm' },
    { id: 'r3', kind: 'calc', name: 'far', formula: 'SUM(t.k)', unit: 'ft' },
    { id: 'r4', kind: 'calc', name: 'twice', formula: '2 * SUM(t.k)', unit: 'm' },
    { id: 'r5', kind: 'calc', name: 'most', formula: 'MAX(t.k)', unit: 'm' },
  ] as const;
  const wordsOf = (cells: readonly number[], name: string, view: UnitsView = 'written') => {
    const table: Table = {
      id: 'p',
      kind: 'table',
      name: 't',
      length: cells.length,
      columns: [
        { id: 'a', kind: 'given', name: 'a', unit: 'm', chunks: [cells] },
        { id: 'k', kind: 'calc', name: 'k', formula: 'a / 3', unit: 'm' },
      ],
    };
    const rows = { id: 'q', kind: 'rows', title: '', rows: lines } as const;
    const notebook = openNotebook({
      ...blankBook(),
      sheets: [{ key: 's', title: '', parts: [rows, table] }],
    });
    const result = notebook.result(`s.${name}`);
    const item = notebook.model.items.get(`s.${name}`);
    const column = item && columnSummed(item);
    if (result.status !== 'ok' || result.value.kind !== 'number') throw new Error(`${name} is no number`);
    return column && printedRowsWords(notebook, column, view, result.value);
  };

  test('says what its rows add to as they are printed, where that is not what is printed as the sum', () => {
    // 333.3, 333.3 and 333.3 add to 999.9; their sum is 1000.
    expect(wordsOf([1000, 1000, 1000], 'all')).toBe('rounded; the rows as they are rounded add to 999.9');
    expect(wordsOf([3, 6, 9], 'all')).toBeUndefined();
    // Rows of one decimal that are whole together.
    expect(wordsOf([1.5, 4.5, 3], 'all')).toBeUndefined();
  });

  test('says of rows that stand as they were typed what they add to, where the sum is rounded', () => {
    // 12 345.67 + 0.01 has one digit more than a sum is printed with.
    expect(wordsOf([12_345.67, 0.01], 'typed')).toMatch(/^rounded; the rows add to 12.345\.68$/);
    expect(wordsOf([12, 0.5], 'typed')).toBeUndefined();
  });

  test('says nothing in another unit, or of what is no plain sum', () => {
    expect(wordsOf([1000, 1000, 1000], 'far')).toBeUndefined();
    expect(wordsOf([1000, 1000, 1000], 'twice')).toBeUndefined();
    expect(wordsOf([1000, 1000, 1000], 'most')).toBeUndefined();
    // In the other system both are shown in one unit, and both are rounded.
    const all = wordsOf([1000, 1000, 1000], 'all', 'US');
    expect(all).toContain('the rows as they are rounded add to');
    expect(wordsOf([1000, 1000, 1000], 'far', 'US')).toBe(all);
  });
});
