import { expect, test } from 'vitest';
import { moveCursor } from '../../../../src/app/sheet/place/cursor-movement.ts';
import { type GridMap, gridMap, placeAt } from '../../../../src/app/sheet/place/grid-map.ts';
import { cellsInRange, isWholeRows, rangeBetween } from '../../../../src/app/sheet/place/range.ts';
import { at, smallBook } from '../../small-book.ts';

function beam(rows = 3): GridMap {
  const [sheet] = smallBook().sheets;
  if (!sheet) throw new Error('the book has no sheet');
  return gridMap(sheet, () => rows);
}

const line = ['reference', 'name', 'label', 'value', 'unit'];

test('rows of the grid: prose, title, lines, table title, head, rows, its formulas, the untitled block', () => {
  const map = beam();
  const rows = Array.from({ length: map.count }, (_, index) => map.rowAt(index));
  expect(rows.map((row) => `${row?.part}/${row?.item}`)).toEqual([
    'p1/',
    'p2/',
    'p2/r1',
    'p2/r2',
    'p2/r3',
    'p2/r4',
    'p3/',
    'p3/head',
    'p3/r0',
    'p3/r1',
    'p3/r2',
    'p3/k3',
    'p4/r5',
  ]);
  expect(rows[2]?.fields).toEqual(line);
  expect(rows[8]?.fields).toEqual(['k1', 'k2', 'k3']);
});

test('a block whose title is blank has its row where that is to be typed', () => {
  const [sheet] = smallBook().sheets;
  if (!sheet) throw new Error('the book has no sheet');
  const map = gridMap(sheet, () => 3, new Set(['p4']));
  expect(map.count).toBe(beam().count + 1);
  expect(map.rowAt(map.count - 2)).toEqual({ part: 'p4', item: '', fields: ['title'] });
  expect(map.rowAt(map.count - 1)).toEqual({ part: 'p4', item: 'r5', fields: line });
});

test('every row is found again by its place', () => {
  const map = beam(100_000);
  for (const index of [0, 1, 7, 8, 9, 50_007, 100_007, 100_008, 100_009]) {
    const row = map.rowAt(index);
    expect(row && map.indexOf(row)).toBe(index);
  }
  expect(map.rowAt(map.count)).toBeUndefined();
  expect(map.rowAt(-1)).toBeUndefined();
  expect(map.indexOf({ part: 'p9', item: '' })).toBe(-1);
});

test('a table whose rows are not known yet has none', () => {
  const map = beam(0);
  expect(map.rowAt(8)).toMatchObject({ item: 'k3' });
});

test.each([
  ['down', at('p2', 'r1', 'unit'), 'unit', at('p2', 'r2', 'unit')],
  ['down', at('p2', 'r4', 'value'), 'unit', at('p3', '', 'title')],
  ['down', at('p3', 'head', 'k2'), 'k2', at('p3', 'r0', 'k2')],
  ['down', at('p3', 'r2', 'k2'), 'unit', at('p3', 'k3', 'unit')],
  ['up', at('p1', '', 'text'), 'value', at('p1', '', 'text')],
  ['page down', at('p2', 'r1', 'value'), 'value', at('p4', 'r5', 'value')],
  ['right', at('p2', 'r1', 'unit'), '', at('p2', 'r1', 'unit')],
  ['left', at('p2', 'r1', 'unit'), '', at('p2', 'r1', 'value')],
  ['row start', at('p2', 'r1', 'unit'), '', at('p2', 'r1', 'reference')],
  ['row end', at('p3', 'r1', 'k1'), '', at('p3', 'r1', 'k3')],
  ['first', at('p3', 'r1', 'k1'), '', at('p1', '', 'text')],
  ['last', at('p1', '', 'text'), '', at('p4', 'r5', 'unit')],
  ['next', at('p2', 'r1', 'unit'), '', at('p2', 'r2', 'reference')],
  ['previous', at('p2', 'r1', 'reference'), '', at('p2', '', 'title')],
] as const)('%s from %o', (motion, from, wanted, to) => {
  expect(moveCursor(beam(), from, motion, wanted, 20)).toEqual(to);
});

test('beyond the last cell there is no next one', () => {
  expect(moveCursor(beam(), at('p4', 'r5', 'unit'), 'next', '', 5)).toBeUndefined();
});

test('a row without the field wanted is entered at its value, or its first cell', () => {
  expect(placeAt(beam(), 5, 'unit')).toEqual(at('p2', 'r4', 'value'));
  expect(placeAt(beam(), 8, 'unit')).toEqual(at('p3', 'r0', 'k1'));
});

test('a range is the block between two cells, whichever comes first', () => {
  const map = beam();
  const range = rangeBetween(map, at('p2', 'r3', 'value'), at('p2', 'r1', 'unit'));
  expect(range).toEqual({ top: 2, bottom: 4, left: 3, right: 4 });
  expect(
    range && cellsInRange(map, range).map((row) => row.map(({ item, field }) => `${item}.${field}`)),
  ).toEqual([
    ['r1.value', 'r1.unit'],
    ['r2.value', 'r2.unit'],
    ['r3.value', 'r3.unit'],
  ]);
});

test('whole rows are those with all their fields', () => {
  const map = beam();
  expect(isWholeRows(map, { top: 2, bottom: 5, left: 0, right: 4 })).toBe(true);
  expect(isWholeRows(map, { top: 2, bottom: 5, left: 0, right: 3 })).toBe(false);
});
