import fc from 'fast-check';
import { expect, test } from 'vitest';
import { turnedTable } from '../../../../src/app/sheet/table/turned-table.ts';
import type { ColumnView } from '../../../../src/record/values/cell-view.ts';
import { numbers } from '../../../make-book.ts';

const ROOM = 796;

function view(name: string, text: string): ColumnView {
  return {
    column: { ...numbers(name, 'kN', []), label: `load of part ${name}` },
    unit: 'kN',
    at: () => ({ text, state: 'computed' }),
  };
}

test('turned tables side by side fit the paper, and leave each description its least width', () => {
  const columns = fc.array(fc.integer({ min: 1, max: 999_999 }), { minLength: 2, maxLength: 80 });
  fc.assert(
    fc.property(columns, fc.integer({ min: 1, max: 30 }), (values, rows) => {
      const views = values.map((value, at) => view(`q_${at}`, String(value)));
      const turned = turnedTable(
        views,
        Array.from({ length: rows }, (_, row) => row),
        ROOM,
        true,
      );
      if (!turned) return;
      const { abreast, symbol, label, unit, values: widths } = turned;
      const one = symbol + label + unit + widths.reduce((sum, width) => sum + width, 0);
      expect(abreast * one).toBeLessThanOrEqual(ROOM);
      expect(label).toBeGreaterThanOrEqual(100);
    }),
    { seed: 20_261, numRuns: 200 },
  );
});

test('four rows stand side by side, and forty have no room', () => {
  const views = Array.from({ length: 20 }, (_, at) => view(`q_${at}`, '12.5'));
  const rows = (count: number): readonly number[] => Array.from({ length: count }, (_, row) => row);
  expect(turnedTable(views, rows(4), ROOM, true)?.abreast).toBe(2);
  expect(turnedTable(views, rows(40), ROOM, true)).toBeUndefined();
});

test('symbols alone stand closer, and none of their tables has a column for descriptions', () => {
  const views = Array.from({ length: 20 }, (_, at) => view(`q_${at}`, '12.5'));
  expect(turnedTable(views, [0, 1, 2, 3], ROOM, false)).toMatchObject({ abreast: 3, label: 0 });
});
