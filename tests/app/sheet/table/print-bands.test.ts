import fc from 'fast-check';
import { expect, test } from 'vitest';
import { printBands } from '../../../../src/app/sheet/table/print-bands.ts';

const ROOM = 670;

test('a table that fits stands as it is', () => {
  expect(printBands([150, 80, 80], 34, ROOM)).toEqual([[0, 1, 2]]);
});

test('a wider one stands in bands, each with the first column', () => {
  // 30 + 200 + 400 = 630 fits, and no two of the others.
  expect(printBands([200, 400, 400, 400, 310], 30, ROOM)).toEqual([
    [0, 1],
    [0, 2],
    [0, 3],
    [0, 4],
  ]);
});

test('every column is printed once, and every band fits the paper', () => {
  const widths = fc.array(fc.integer({ min: 50, max: 260 }), { minLength: 1, maxLength: 60 });
  fc.assert(
    fc.property(widths, (columns) => {
      const bands = printBands(columns, 34, ROOM);
      const others = bands.flatMap((band) => band.filter((column) => column > 0));
      expect(others).toEqual(columns.map((_, at) => at).slice(1));
      for (const band of bands) {
        expect(band[0]).toBe(0);
        const width = band.reduce((sum, column) => sum + (columns[column] ?? 0), 34);
        expect(width).toBeLessThanOrEqual(ROOM);
      }
    }),
    { seed: 20_261, numRuns: 300 },
  );
});
