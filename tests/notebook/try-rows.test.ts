import { expect, test } from 'vitest';
import { blankBook, type Column } from '../../src/document/index.ts';
import { openNotebook, unitProblems, unreadCells } from '../../src/notebook/index.ts';

const columns: readonly Column[] = [
  { id: 'a', kind: 'given', name: 'item', type: 'text', chunks: [] },
  { id: 'b', kind: 'given', name: 'V_s', unit: 'cy', chunks: [] },
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

const words = (problems: ReturnType<typeof unreadCells>) =>
  problems.map(({ message, hints }) => [message, ...hints].join('; '));

test('cells that would have no value are told row by row, as the notebook reads them', () => {
  const unread = unreadCells(notebook, 's.demo', {
    item: ['slab', '(35)', '-', null],
    V_s: [1250.5, '(35)', '12 m^3', '-'],
    price: ['$1250.50/lf', '#REF!', null, '$5'],
    wet: ['yes', 'TRUE', null, null],
    lifts: ['2 lift', '3 ft', 1, 2],
  });
  expect(new Set(unread.map(({ code }) => code))).toEqual(new Set(['cell-unread']));
  expect(words(unread)).toEqual([
    'row 1, wet: “yes” is neither TRUE nor FALSE',
    'row 2, V_s: “(35)” is in parentheses, which may mean a negative number; write -35, or leave the parentheses out',
    expect.stringMatching(/^row 2, price: “#REF!” is not a number/),
    expect.stringMatching(/^row 4, V_s: “-” is not a number/),
    expect.stringMatching(/^row 4, price: “\$5” is an amount of money/),
  ]);
});

test.each([
  ['V_s', 'm3', '“m3” has digits straight after a symbol; write m^3 for the power'],
  ['price', 'USD/LF', '“LF” is not a unit here; write “lf”'],
])('the unit of %s (%s) is refused with the nearest', (column, unit, reason) => {
  expect(words(unitProblems(notebook, 's.demo', { [column]: unit }))).toEqual([
    `the unit “${unit}” stated for the column “${column}” cannot be taken: ${reason}`,
  ]);
});

test('a unit of another kind is refused', () => {
  const [found = '', ...more] = words(unitProblems(notebook, 's.demo', { V_s: 'kN', price: 'USD/ft' }));
  expect(found).toMatch(/^the unit “kN” stated for the column “V_s” cannot be taken: .* is a force/);
  expect(more).toEqual([]);
});

test('units of the book itself are read', () => {
  expect(unitProblems(notebook, 's.demo', { lifts: 'lift' })).toEqual([]);
});
