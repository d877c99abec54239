import { expect, test } from 'vitest';
import { type Check, findSheet, type Part } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { governingLines } from '../../../src/record/lines/governing-lines.ts';
import { blockOf, bookOf, calc, given } from '../../make-book.ts';

const check = (name: string, formula: string): Check => ({ id: name, kind: 'check', name, formula });

function governing(
  parts: readonly Part[],
  others: Readonly<Record<string, readonly Part[]>> = {},
): readonly string[] {
  const notebook = openNotebook(bookOf({ s: parts, ...others }));
  const sheet = findSheet(notebook.book, 's');
  if (!sheet) throw new Error('there is no sheet');
  return [...governingLines(notebook, sheet)].toSorted();
}

test('the check nearest to its limit governs with two steps back, and each that fails', () => {
  const lines = blockOf(
    'b',
    given('a', '2', 'm'),
    calc('deep', { formula: 'a * 1', unit: 'm' }),
    calc('middle', { formula: 'deep * 1', unit: 'm' }),
    calc('near', { formula: 'middle * 1', unit: 'm' }),
    calc('apart', { formula: 'a * 3', unit: 'm' }),
    check('loose', 'a <= 20 m'),
    check('tight', 'near <= 2.5 m'),
    check('fails', 'apart <= 5 m'),
  );
  // tight is used to 80 %, loose to 10 %, fails to 120 %: `deep` is three steps from `tight`, `a` one from `apart`.
  expect(governing([lines])).toEqual(['s.a', 's.apart', 's.fails', 's.middle', 's.near', 's.tight']);
});

test('lines of other sheets have their working there', () => {
  const here = blockOf('b', check('holds', 'o.load <= 4 m'));
  const there = blockOf('c', calc('load', { formula: '3 m', unit: 'm' }));
  expect(governing([here], { o: [there] })).toEqual(['s.holds']);
});

test('a sheet without a check has none', () => {
  expect(governing([blockOf('b', given('a', '2', 'm'))])).toEqual([]);
});
