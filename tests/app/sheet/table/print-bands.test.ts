import fc from 'fast-check';
import { expect, test } from 'vitest';
import { printBands } from '../../../../src/app/sheet/table/print-bands.ts';

test('a table that fits stands as it is', () => {
  expect(printBands([150, 80, 80], 34)).toEqual({ bands: [[0, 1, 2]], fit: 1 });
});

test('a wider one is set smaller, as long as it can be read', () => {
  const { bands, fit } = printBands([150, 300, 300], 34);
  expect(bands).toEqual([[0, 1, 2]]);
  expect(fit).toBeCloseTo(670 / 784, 10);
});

test('one wider still stands in bands, each with the first column', () => {
  expect(printBands([200, 400, 400, 400, 310], 30).bands).toEqual([
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
      const { bands, fit } = printBands(columns, 34);
      const others = bands.flatMap((band) => band.filter((column) => column > 0));
      expect(others).toEqual(columns.map((_, at) => at).slice(1));
      expect(fit).toBeGreaterThanOrEqual(0.72);
      for (const band of bands) {
        expect(band[0]).toBe(0);
        const width = band.reduce((sum, column) => sum + (columns[column] ?? 0), 34);
        expect(width * fit).toBeLessThanOrEqual(670 + 1e-9);
      }
    }),
    { seed: 20_261, numRuns: 300 },
  );
});
