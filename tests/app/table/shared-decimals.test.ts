import { describe, expect, test } from 'vitest';
import { columnSum, columnView } from '../../../src/app/table/cell-view.ts';
import { blankBook, type Table } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';

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
