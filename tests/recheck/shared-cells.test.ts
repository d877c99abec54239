import { expect, test } from 'vitest';
import type { Book } from '../../src/document/index.ts';
import { lowerBook, recheck } from '../../src/recheck/index.ts';
import { spreadReaders } from '../../src/recheck/spread-readers.ts';
import { bookOf, calc, computed, given, instead, table } from './books.ts';

const layers = table('layers', 4, given('top', 'm', [0, 2, 5, 9]), given('f', 'kPa', [10, 20, 40, 15]), {
  id: 'g-soil',
  kind: 'given',
  name: 'soil',
  type: 'text',
  chunks: [['clay', 'sand', 'clay', 'rock']],
});
const piles = (...columns: readonly ReturnType<typeof calc>[]) =>
  table('piles', 3, given('L', 'm', [1, 6, 10]), ...columns);
const condition = 'AND(layers.top < L; L - layers.top > 0.5 m)';

/** The formulas on the grid of a book. */
function formulasOf(book: Book): readonly string[] {
  const { program, values } = computed(book);
  const { sheets } = lowerBook(program, values).grid;
  return sheets.flatMap(({ rows }) =>
    rows.flatMap((row) => row.filter((cell): cell is string => typeof cell === 'string')),
  );
}

test('aggregates with one condition over the same rows have its cells in common', async () => {
  const sums = ['SUMIF', 'MINIF', 'MAXIF'].map((name) =>
    calc(`by_${name}`, `${name}(${condition}; layers.f)`),
  );
  const formulas = formulasOf(bookOf({}, layers, piles(...sums)));
  // Of each of three rows: four rows of layers by two comparisons and their AND.
  expect(formulas.filter((formula) => formula.startsWith('=((MIN(IF('))).toHaveLength(3 * 4);
  expect(new Set(formulas).size).toBe(formulas.length);
  const { program, values } = computed(bookOf({}, layers, piles(...sums)));
  expect(values('s.piles.by_SUMIF', 2)).toBe(85e3);
  expect(await recheck(program, values)).toMatchObject({ agree: 12 + 3 + 9, findings: [] });
});

test('what no row of the formula changes is written once for all of them', () => {
  const product = calc('P', 'SUMIF(layers.top < L; layers.f * layers.top)');
  const formulas = formulasOf(bookOf({}, layers, piles(product)));
  expect(formulas.filter((formula) => formula.includes('*Table1!$'))).toHaveLength(4);
});

test('a condition on the edge of rounding leaves every value that rests on it undecided', async () => {
  const edge = 'layers.n = CEILING(x; 1)';
  const book = bookOf(
    { x: '3.000000001' },
    table('layers', 2, given('n', '', [3, 4]), given('f', '', [10, 20])),
    table('t', 2, calc('a', `SUMIF(${edge}; layers.f)`), calc('b', `COUNTIF(${edge})`)),
  );
  const { program, values } = computed(book);
  const { indeterminate, findings } = await recheck(program, values);
  expect(indeterminate.map(({ id, row }) => [id, row])).toEqual([
    ['s.t.a', 1],
    ['s.t.a', 2],
    ['s.t.b', 1],
    ['s.t.b', 2],
  ]);
  expect(findings).toEqual([]);
});

test('what was written for a formula that is given up is not read by another', async () => {
  const givenUp = calc('a', `SUMIF(${condition}; layers.f * LEN(layers.soil))`);
  const after = calc('b', `SUMIF(${condition}; layers.f)`);
  const { program, values } = computed(bookOf({}, layers, piles(givenUp, after)));
  const report = await recheck(program, values);
  expect(report.notRechecked.map(({ id }) => id)).toEqual(['s.piles.a']);
  expect(report).toMatchObject({ agree: 12 + 3 + 3, findings: [] });
  const wrong = instead(values, { 's.piles.b 1': (values('s.piles.b', 1) as number) + 1 });
  expect((await recheck(program, wrong)).findings.map(({ id, row }) => [id, row])).toEqual([
    ['s.piles.b', 2],
  ]);
});

test('formulas whose values are known are not written again', () => {
  const { program, values } = computed(bookOf({ a: '3', b: '=a + 1', c: '=b * 2' }));
  const known = { has: (id: string) => id === 's.b', at: () => 40 };
  const [cells] = lowerBook(program, values, known).grid.sheets;
  expect(cells?.rows).toEqual([
    [null, 3],
    [null, 40],
    [null, '=(Cells!$B$2*Numbers!$A$1)'],
  ]);
});

test('a cell that hundreds of formulas read is read by copies, each by those of every 64th row', () => {
  const reader = (at: number) => `=(Numbers!$A$1*Table1!$A${at + 1})+SUM(Numbers!$A$1:$A$2)+Numbers!$A$12`;
  const rows = Array.from({ length: 300 }, (_, at) => [at, reader(at)]);
  const few = [{ name: 'Table1', rows: rows.slice(0, 200) }];
  expect(spreadReaders(few)).toBe(few);
  const [copies, table1] = spreadReaders([{ name: 'Table1', rows }]);
  expect(copies).toEqual({
    name: 'Copies',
    rows: Array.from({ length: 64 }, () => ['=Numbers!$A$1', '=Numbers!$A$12']),
  });
  expect(table1?.rows[0]).toEqual([0, '=(Copies!$A1*Table1!$A1)+SUM(Numbers!$A$1:$A$2)+Copies!$B1']);
  expect(table1?.rows[65]?.[1]).toBe('=(Copies!$A2*Table1!$A66)+SUM(Numbers!$A$1:$A$2)+Copies!$B2');
});

test('values computed through copies are those of the cells', async () => {
  const many = table(
    'many',
    400,
    given(
      'x',
      '',
      Array.from({ length: 400 }, (_, at) => at),
    ),
    calc('y', 'x * k + k'),
  );
  const { program, values } = computed(bookOf({ k: '7' }, many));
  expect(await recheck(program, values)).toMatchObject({ agree: 801, findings: [] });
  const wrong = instead(values, { 's.many.y 399': 7 * 400 + 1 });
  expect((await recheck(program, wrong)).findings.map(({ row, recheck: second }) => [row, second])).toEqual([
    [400, 2800],
  ]);
});
