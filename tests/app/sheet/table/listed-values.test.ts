import { expect, test } from 'vitest';
import { isListed } from '../../../../src/app/sheet/table/listed-values.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { bookOf, calcColumn, numbers, tableOf } from '../../../make-book.ts';

test('a column lists its values where nothing but constants and a unit stands in its formula', () => {
  const formulas = {
    bare: ['CHOOSE(ROW(); 1; 2; 3)', '-', true],
    p: ['1 kPa*CHOOSE(ROW(); 1; -2; 3)', 'kPa', true],
    soil: ['CHOOSE(ROW(); "a"; "b"; "c")', undefined, true],
    doubled: ['2 kPa*CHOOSE(ROW(); 1; 2; 3)', 'kPa', false],
    other: ['CHOOSE(ROW(); 1; n; 3)', '-', false],
    by_n: ['CHOOSE(n; 1; 2; 3)', '-', false],
  } as const;
  const columns = Object.entries(formulas).map(([name, [formula, unit]]) =>
    calcColumn(name, { formula, ...(unit !== undefined && { unit }) }),
  );
  const notebook = openNotebook(bookOf({ s: [tableOf('t', 3, numbers('n', '-', [1, 2, 3]), ...columns)] }));
  for (const [name, [, , lists]] of Object.entries(formulas))
    expect([name, isListed(notebook, `s.t.${name}`)]).toEqual([name, lists]);
  expect(isListed(notebook, 's.t.n')).toBe(false);
});
