import { expect, test } from 'vitest';
import { findSheet, type Part } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { reviewSheet } from '../../../src/record/paper/review-sheet.ts';
import {
  blockOf,
  bookOf,
  calc,
  calcColumn,
  check,
  choice,
  given,
  numbers,
  tableOf,
} from '../../make-book.ts';

/** What a reviewer reads of the sheet `s`, by name, columns behind the name of their table, and what that leaves out. */
function read(
  parts: readonly Part[],
  others: Readonly<Record<string, readonly Part[]>> = {},
  listed = false,
) {
  const notebook = openNotebook(bookOf({ s: parts, ...others }));
  const whole = findSheet(notebook.book, 's');
  if (!whole) throw new Error('there is no sheet');
  const { sheet, leftOut } = reviewSheet(notebook, whole, listed);
  const names = sheet.parts.flatMap((part): readonly string[] => {
    if (part.kind === 'rows') return part.rows.map(({ name }) => name);
    return part.kind === 'table' ? part.columns.map(({ name }) => `${part.name}.${name}`) : [part.kind];
  });
  return { names, leftOut };
}

const working = blockOf(
  'b',
  given('a', '2', 'm'),
  { ...given('unused', '', 'm'), optional: true },
  choice('way', 'dry', 'wet'),
  calc('deep', { formula: 'a * 1', unit: 'm' }),
  calc('middle', { formula: 'deep * 1', unit: 'm' }),
  calc('near', { formula: 'middle * 1', unit: 'm' }),
  calc('far', { formula: 'deep * 2', unit: 'm' }),
  calc('side', { formula: 'far * 1', unit: 'm' }),
  calc('end', { formula: 'far + 1 m', unit: 'm' }),
  check('tight', 'near <= 2.5 m'),
  check('loose', 'side <= 20 m'),
  { ...check('wet', 'near <= 1 m'), applies: 'way = "wet"' },
);

test('the reviewer reads entries, results and the working of the check that governs', () => {
  // `deep` is three steps from `tight`, which governs; `far` is on the way to results alone.
  expect(read([working])).toEqual({
    names: ['a', 'way', 'middle', 'near', 'side', 'end', 'tight', 'loose'],
    leftOut: { lines: 4, columns: 0 },
  });
});

test('where all checks are listed beside the sheet, it has those that govern', () => {
  const { names, leftOut } = read([working], {}, true);
  expect(names).toEqual(['a', 'way', 'middle', 'near', 'side', 'end', 'tight']);
  expect(leftOut.lines).toBe(5);
});

test('nothing that is stated, fails or wants an entry is left out', () => {
  const lines = blockOf(
    'b',
    given('a', '2', 'm'),
    given('wanted', '', 'm'),
    { ...calc('c', { formula: 'a * 2', unit: 'm' }), stated: { entry: '5 m', reason: 'measured' } },
    calc('d', { formula: 'a + 1 s', unit: 'm' }),
    calc('e', { formula: 'c + d + wanted', unit: 'm' }),
    check('fails', 'c <= 4 m'),
    check('holds', 'c <= 40 m'),
  );
  const { names } = read([lines]);
  expect(names).toEqual(expect.arrayContaining(['wanted', 'c', 'd', 'fails']));
});

test('a table has the columns that are entered, and those behind what governs', () => {
  const table = tableOf(
    't',
    2,
    numbers('x', 'm', [1, 2]),
    numbers('nothing', 'm', [null, null]),
    calcColumn('y', { formula: 'x * 2', unit: 'm' }),
    calcColumn('z', { formula: 'x * 3', unit: 'm' }),
  );
  const lines = blockOf('b', calc('most', { formula: 'MAX(t.y)', unit: 'm' }), check('c', 'most <= 5 m'));
  expect(read([table, lines])).toEqual({
    names: ['t.x', 't.y', 'most', 'c'],
    leftOut: { lines: 0, columns: 2 },
  });
});

test('of a sheet of factors it has what a governing check takes', () => {
  const named = (name: string, reference: string) =>
    tableOf(name, 2, { ...numbers('k', undefined, [1, 2]), reference }, numbers('v', undefined, [3, 4]));
  const factors = [named('used', 'handbook, table 1'), named('other', 'handbook, table 2')];
  const there = blockOf(
    'b',
    calc('f', 'INTERPOLATE(1.5; s.used.k; s.used.v; "refuse")'),
    calc('g', 'INTERPOLATE(1.5; s.other.k; s.other.v; "refuse")'),
    calc('h', 'g * 2'),
    check('c', 'f <= 4'),
  );
  expect(read(factors, { o: [there] })).toEqual({
    names: ['used.k', 'used.v'],
    leftOut: { lines: 0, columns: 2 },
  });
  // What names no source is entered for the job.
  const own = [named('used', ''), named('other', '')];
  expect(read(own, { o: [there] }).names).toEqual(['used.k', 'used.v', 'other.k', 'other.v']);
});
