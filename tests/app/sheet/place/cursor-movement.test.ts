import { expect, test } from 'vitest';
import { moveCursor } from '../../../../src/app/sheet/place/cursor-movement.ts';
import { fieldToFill } from '../../../../src/app/sheet/place/field-to-fill.ts';
import { gridMap } from '../../../../src/app/sheet/place/grid-map.ts';
import type { CellPlace } from '../../../../src/app/view-model/place.ts';
import { at, smallBook } from '../../small-book.ts';

const [sheet] = smallBook().sheets;
if (!sheet) throw new Error('the small book has a sheet');
const map = gridMap(sheet, () => 3);
const tab = (from: CellPlace) => moveCursor(map, from, 'next', '', 1, (row) => fieldToFill(sheet, row));

test('Tab goes along a line, and behind its unit to the next value to fill in', () => {
  expect(tab(at('p2', 'r1', 'name'))).toEqual(at('p2', 'r1', 'label'));
  expect(tab(at('p2', 'r1', 'value'))).toEqual(at('p2', 'r1', 'unit'));
  expect(tab(at('p2', 'r1', 'unit'))).toEqual(at('p2', 'r2', 'value'));
});

test('formulas that are written, titles and headings are passed over', () => {
  expect(tab(at('p2', 'r2', 'unit'))).toEqual(at('p3', 'r0', 'k1'));
  expect(tab(at('p1', '', 'text'))).toEqual(at('p2', 'r1', 'value'));
});

test('in a table it goes on to the next row, and from the last one to the next value', () => {
  expect(tab(at('p3', 'r0', 'k3'))).toEqual(at('p3', 'r1', 'k1'));
  expect(tab(at('p3', 'r2', 'k3'))).toEqual(at('p4', 'r5', 'value'));
});

test('behind the last value it leaves the page', () => {
  expect(tab(at('p4', 'r5', 'unit'))).toBeUndefined();
});
