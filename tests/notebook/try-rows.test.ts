import { expect, test } from 'vitest';
import { blankBook, type Cell, type Column } from '../../src/document/index.ts';
import { openNotebook, tryCells } from '../../src/notebook/index.ts';

const columns: readonly Column[] = [
  { id: 'a', kind: 'given', name: 'item', type: 'text', chunks: [] },
  { id: 'b', kind: 'given', name: 'V_s', unit: 'cy', range: { min: '0 cy', max: '2000 m^3' }, chunks: [] },
  { id: 'c', kind: 'given', name: 'price', unit: 'USD/lf', chunks: [] },
  { id: 'd', kind: 'given', name: 'wet', type: 'truth', chunks: [] },
  { id: 'e', kind: 'given', name: 'lifts', unit: 'lift', chunks: [] },
];
const blank = blankBook();
const notebook = openNotebook({
  ...blank,
  settings: { ...blank.settings, units: [{ symbol: 'lift', definition: '5 ft' }] },
  sheets: [{ key: 's', title: 'S', parts: [{ id: 't', kind: 'table', name: 'demo', length: 0, columns }] }],
});
const check = tryCells(notebook, 's.demo');

test.each<[string, Cell, RegExp]>([
  ['wet', 'yes', /^“yes” is neither TRUE nor FALSE$/],
  ['V_s', '(35)', /^“\(35\)” is in parentheses/],
  ['V_s', '-', /^“-” is not a number/],
  ['V_s', '3 kN', /“3 kN” is a force/],
  ['price', '#REF!', /^“#REF!” is not a number/],
  ['price', '$5', /^“\$5” is an amount of money in USD/],
])('a cell of %s with %j has no value, as the notebook reads it', (column, cell, words) => {
  expect(check(column, cell)).toMatchObject({
    severity: 'error',
    message: expect.stringMatching(words) as string,
  });
});

test.each<[string, Cell]>([
  ['item', '(35)'],
  ['V_s', 1250.5],
  ['V_s', '12 m^3'],
  ['V_s', null],
  ['price', '$1250.50/lf'],
  ['wet', 'TRUE'],
  ['lifts', '2 lift'],
  ['lifts', '3 ft'],
])('a cell of %s with %j is as it should be', (column, cell) => {
  expect(check(column, cell)).toBeUndefined();
});

test.each<[Cell, string, string]>([['2000.1 m^3', '2000 m^3', 'most']])(
  '%j is beyond the permitted range of its column, which is a warning',
  (cell, limit, end) => {
    expect(check('V_s', cell)).toMatchObject({
      severity: 'warning',
      code: 'out-of-range',
      data: { limit, end },
    });
  },
);

test('a cell of the sign that the range leaves out is no cell of its column', () => {
  expect(check('V_s', -1)).toMatchObject({ severity: 'error', code: 'sign-excluded' });
});
