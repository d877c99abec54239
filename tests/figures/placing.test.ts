import { describe, expect, test } from 'vitest';
import { decimate } from '../../src/figures/charts/decimate.ts';
import { dimensionLine } from '../../src/figures/svg/dimension-line.ts';
import { createLabels } from '../../src/figures/svg/labels.ts';
import { coordinate } from '../../src/figures/svg/markup.ts';
import { spread } from '../../src/figures/svg/spread.ts';
import { symbol, text } from '../../src/figures/svg/words.ts';
import { writeMarkup } from '../../src/markup/index.ts';
import { lengthOf, shapesOf } from './picture.ts';

describe('spread', () => {
  test('leaves places that are apart alone', () => {
    expect(spread([10, 50, 90], 16, 0, 100)).toEqual([10, 50, 90]);
  });

  test('moves places that meet apart about where they were, in their order', () => {
    expect(spread([50, 50, 50], 10, 0, 100)).toEqual([40, 50, 60]);
    expect(spread([60, 52], 20, 0, 100)).toEqual([66, 46]);
  });

  test('keeps all between the ends, closer together where there is too little room', () => {
    expect(spread([0, 0, 0], 10, 0, 100)).toEqual([0, 10, 20]);
    expect(spread([99, 100, 98], 10, 0, 100)).toEqual([90, 100, 80]);
    expect(spread([1, 2, 3, 4, 5], 50, 0, 100)).toEqual([0, 25, 50, 75, 100]);
    expect(spread([], 10, 0, 100)).toEqual([]);
  });
});

describe('decimate', () => {
  test('keeps the ends, the least, the greatest and a gap', () => {
    const values = Array.from({ length: 5000 }, (_, at) => Math.sin(at / 50));
    values[1234] = 9;
    values[4321] = -9;
    values[777] = Number.NaN;
    const rows = decimate(values, 500);
    expect(rows.length).toBeLessThanOrEqual(500);
    expect(rows).toEqual(expect.arrayContaining([0, 777, 1234, 4321, 4999]));
    expect([...rows].sort((a, b) => a - b)).toEqual(rows);
  });

  test('leaves few rows alone', () => {
    expect(decimate([3, Number.NaN, 1], 500)).toEqual([0, 1, 2]);
  });
});

test('a label goes to the first spot with room, and is left out where there is none', () => {
  const labels = createLabels(200, 100);
  labels.keepFree({ x: 0, y: 0, width: 200, height: 60 });
  const placed = shapesOf(
    writeMarkup(
      labels.put(text('word'), [
        { x: 10, y: 40 },
        { x: 10, y: 90 },
      ]),
    ),
  );
  expect(placed[0]?.n('y')).toBe(90);
  expect(labels.putIfRoom(text('word'), [{ x: 12, y: 92 }])).toBeUndefined();
});

test('a dimension line is as long as what it measures and stands off it', () => {
  const shapes = shapesOf(
    writeMarkup(dimensionLine({ x: 10, y: 50 }, { x: 110, y: 50 }, -20, text('100 m'))),
  );
  const line = shapes.find(({ attributes }) => attributes.class === 'dim');
  expect(line && lengthOf(line)).toBe(100);
  expect(line?.n('y1')).toBe(70);
  expect(shapes.filter(({ attributes }) => attributes.class === 'dim-tick')).toHaveLength(2);
});

test('names are set as symbols with what stands below, words as words', () => {
  expect(symbol("f'_c")).toEqual([
    { text: 'f′', set: 'symbol' },
    { text: 'c', set: 'below' },
  ]);
  expect(symbol('ship.L_BP_1')).toEqual([
    { text: 'L', set: 'symbol' },
    { text: 'BP, 1', set: 'below' },
  ]);
  expect(symbol('bent')).toEqual([{ text: 'bent', set: 'text' }]);
});

test('numbers are rounded', () => {
  expect([1.005, -0.001, 1 / 3, Number.NaN].map(coordinate)).toEqual(['1', '0', '0.33', '0']);
});
