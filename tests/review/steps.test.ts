import { expect, test } from 'vitest';
import { openNotebook } from '../../src/notebook/index.ts';
import { keyOfStep, stepsTo } from '../../src/review/index.ts';
import { blockOf, bookOf, calc, calcColumn, check, given, numbers, tableOf } from '../make-book.ts';

/** R rests on a and b, b on a and c; the table's sum runs down its rows. */
const notebook = openNotebook(
  bookOf({
    s: [
      blockOf(
        'b1',
        given('a', '2 m', 'm'),
        given('c', '3 m', 'm'),
        calc('b', { formula: 'a + c', unit: 'm' }),
        calc('R', { formula: 'b + a', unit: 'm' }),
        { ...calc('S', { formula: 'a + c', unit: 'm' }), stated: { entry: '9 m', reason: 'measured' } },
        check('holds', 'R + S <= SUM(t.run)'),
      ),
      tableOf(
        't',
        3,
        numbers('h', 'm', [1, 2, 3]),
        calcColumn('run', { formula: 'ABOVE(run; 0 m) + h + a', unit: 'm' }),
      ),
    ],
  }),
);

const steps = (id: string, most: number, row?: number): readonly string[] => {
  const item = notebook.model.items.get(id);
  if (!item) throw new Error(`no ${id}`);
  return stepsTo(notebook, row === undefined ? { item } : { item, row }, most).map(
    (step) => `${keyOfStep(step)} ${step.away}`,
  );
};

test('a result comes with what it rests on, each before its own grounds, by how far away it is', () => {
  expect(steps('s.R', 0)).toEqual(['s.R 0']);
  expect(steps('s.R', 1)).toEqual(['s.R 0', 's.b 1', 's.a 1']);
  expect(steps('s.R', 2)).toEqual(['s.R 0', 's.b 1', 's.a 1', 's.c 2']);
});

test('what is stated rests on nothing', () => {
  expect(steps('s.S', 9)).toEqual(['s.S 0']);
});

test('a cell goes on to the cells of its row and of the rows above that it reads', () => {
  expect(steps('s.t.run', 1, 2)).toEqual(['s.t.run#2 0', 's.t.h#2 1', 's.t.run#1 1', 's.a 1']);
  expect(steps('s.t.run', 9, 2)).toHaveLength(1 + 2 + 3 + 1);
});

test('of a column that a line reads as a whole the steps go by columns', () => {
  expect(steps('s.holds', 1)).toEqual(['s.holds 0', 's.R 1', 's.S 1', 's.t.run 1']);
});

test('a running sum of many rows is followed to its end', () => {
  const long = openNotebook(
    bookOf({
      s: [
        tableOf(
          't',
          3000,
          numbers(
            'h',
            'm',
            Array.from({ length: 3000 }, () => 1),
          ),
          calcColumn('run', { formula: 'ABOVE(run; 0 m) + h', unit: 'm' }),
        ),
      ],
    }),
  );
  const item = long.model.items.get('s.t.run');
  if (!item) throw new Error('no column');
  expect(stepsTo(long, { item, row: 2999 }, Number.POSITIVE_INFINITY)).toHaveLength(6000);
});
