import { expect, test } from 'vitest';
import { cellValueText } from '../../../../src/app/editing/cells/cell-value-text.ts';
import { tableCsv } from '../../../../src/app/sheet/table/table-csv.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { numberOfLine } from '../../../../src/record/values/like-lines.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf } from '../../../make-book.ts';

const table = tableOf(
  't',
  2,
  numbers('a', 'mm', [12_000, 0.000012]),
  calcColumn('b', { formula: 'a^2 * 100', unit: 'mm^2' }),
);
const notebook = openNotebook(
  bookOf({
    s: [
      blockOf(
        'b',
        given('n', '14333660904', 'mm^4'),
        calc('I', { formula: '2 * n', unit: 'mm^4' }),
        calc('L', { formula: 'L_0 / 4', unit: 'mm' }),
        given('L_0', '49383.5', 'mm'),
      ),
      table,
    ],
  }),
);
const place = (item: string) => ({ sheet: 's', part: 'b', item, field: 'value' });

// 2 × 14 333 660 904 = 28 667 321 808, and 49 383.5 / 4 = 12 345.875.
test.each([
  ['I', '28.67\u202f×\u202f10⁹', '28667321808'],
  ['L', '12\u202f346', '12345.875'],
])('%s is shown as %s and copied as %s', (name, shown, copied) => {
  const item = notebook.model.items.get(`s.${name}`);
  expect(item && numberOfLine(notebook, item, 'written')?.number).toBe(shown);
  expect(cellValueText(notebook, place(name))).toBe(copied);
});

test('a table saved as CSV has numbers that any program reads', () => {
  // 12 000² × 100 = 1.44 × 10¹⁰, and 0.000012² × 100 = 1.44 × 10⁻⁸.
  const [, first, second] = tableCsv(notebook, 's', table).trim().split(/\r?\n/);
  expect(first).toBe('12000,14400000000');
  expect(second?.split(',').map(Number)).toEqual([0.000012, 1.44e-8]);
});
