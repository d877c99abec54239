import { expect, test } from 'vitest';
import { columnWidth } from '../../../../src/app/sheet/table/column-width.ts';
import type { CellView, ColumnView } from '../../../../src/record/values/cell-view.ts';

function view(label: string, texts: readonly string[], unit = ''): ColumnView {
  return {
    column: { id: 'k', kind: 'calc', name: 'x', label, formula: '1', unit: '' },
    unit,
    at: (row): CellView => ({ text: texts[row] ?? '', state: 'computed' }),
  };
}

test('a column is as wide as what it shows needs, calculated or not', () => {
  const short = columnWidth(view('n', ['1', '2']), 2);
  const long = columnWidth(view('n', ['1', '123 456 789.5']), 2);
  // Thirteen digits of 7.5 px.
  expect(long).toBeGreaterThanOrEqual(13 * 7.5);
  expect(short).toBeLessThan(70);
});

test('a digit more does not move the columns beside it', () => {
  expect(columnWidth(view('n', ['12345']), 1)).toBe(columnWidth(view('n', ['123456']), 1));
});

// Widths of the page's own typeface as Chromium measures them without hinting: 13 px in heads, 15 px in cells.
test.each([
  ['demand', 45.33],
  ['deducted', 51.64],
  ['compression', 69.78],
])('“%s” stays whole in a head, on paper as well', (word, px) => {
  expect(columnWidth(view(`${word} a b`, []), 0) - 18).toBeGreaterThanOrEqual(px * 1.01);
});

test.each([
  ['dense sand', 71.08],
  ['medium sand', 85.88],
  ['unusual', 50.36],
])('“%s” is seen whole in a cell of words', (text, px) => {
  const words: ColumnView = {
    ...view('n', [text]),
    column: { id: 'k', kind: 'given', name: 'x', type: 'text', chunks: [[text]] },
  };
  expect(columnWidth(words, 1) - 18).toBeGreaterThanOrEqual(px);
});

test('a long heading is set on three lines, and its longest word on one', () => {
  const three = columnWidth(view('loose volume of one bank yard', []), 0);
  expect(three).toBeLessThan(110);
  expect(columnWidth(view('reinforcement', []), 0)).toBeGreaterThanOrEqual(13 * 6.5);
});

test('the unit has room behind the symbol', () => {
  const without = columnWidth(view('n', []), 0);
  expect(columnWidth(view('n', [], 'lbm/lcy·month'), 0)).toBeGreaterThan(without);
});

test('of a long table rows from first to last are looked at', () => {
  const texts = Array.from({ length: 960 }, (_, row) => (row === 940 ? '1234567890123456' : '1'));
  expect(columnWidth(view('n', texts), 960)).toBeGreaterThanOrEqual(16 * 7.5);
});
