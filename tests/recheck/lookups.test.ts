import { expect, test } from 'vitest';
import type { Column } from '../../src/document/index.ts';
import { lowerBook, recheck } from '../../src/recheck/index.ts';
import { bookOf, calc, computed, given, instead, table } from './books.ts';

const ROWS = 300;
/** Keys in no order; 7919 and 601 have no common factor, so that none stands twice. */
const keyAt = (row: number): number => (row * 7919) % 601;
const rows = <T>(of: (row: number) => T): T[] => Array.from({ length: ROWS }, (_, row) => of(row));
const texts = (name: string, cells: readonly string[]): Column => ({
  id: `g-${name}`,
  kind: 'given',
  name,
  type: 'text',
  optional: true,
  chunks: [cells],
});

/** A list of keys with a weight each, and a table that asks for every key, the last row first. */
const list = table(
  'list',
  ROWS,
  given('k', '-', rows(keyAt)),
  given(
    'w',
    'kip',
    rows((row) => row + 1),
  ),
);
const asked = (keys: readonly number[], ...columns: readonly Column[]) =>
  table('asks', keys.length, given('k', '-', keys), ...columns);

// Findings count rows from 1.
test('an exact look-up in 300 rows from 300 rows is rechecked, and every value agrees', async () => {
  const { program, values } = computed(
    bookOf(
      { 'W [kip]': '=SUM(LOOKUP(asks.k; list.k; list.w; "exact"))' },
      list,
      asked(
        rows((row) => keyAt(ROWS - 1 - row)),
        calc('w', 'LOOKUP(k; list.k; list.w; "exact")', 'kip'),
        calc('m', 'MATCH(k; list.k; "first")'),
      ),
    ),
  );
  const report = await recheck(program, values);
  expect(report).toMatchObject({ findings: [], notRechecked: [], withoutValue: 0 });
  // Two entered columns of the list, one entered and two calculated of the other table, and the sum.
  expect(report.agree).toBe(5 * ROWS + 1);

  const wrong = await recheck(
    program,
    instead(values, { 's.asks.w 7': (values('s.asks.w', 8) as number) * 2, 's.asks.m 9': 1 }),
  );
  expect(wrong.findings.map(({ id, row }) => [id, row])).toEqual([
    ['s.asks.w', 8],
    ['s.asks.m', 10],
  ]);
});

test('a value the engine has for a key that stands twice, or nowhere, is found', async () => {
  const keys = rows((row) => (row === 250 ? keyAt(20) : keyAt(row)));
  const doubled = table(
    'list',
    ROWS,
    given('k', '-', keys),
    given(
      'w',
      'kip',
      rows((row) => row + 1),
    ),
  );
  const { program, values } = computed(
    bookOf(
      {},
      doubled,
      asked(
        [keyAt(20), 1000, keyAt(30)],
        calc('w', 'LOOKUP(k; list.k; list.w; "exact")', 'kip'),
        calc('m', 'MATCH(k; list.k; "first")'),
      ),
    ),
  );
  expect([0, 1, 2].map((row) => values('s.asks.m', row))).toEqual([21, undefined, 31]);
  expect([0, 1].map((row) => values('s.asks.w', row))).toEqual([undefined, undefined]);
  expect((await recheck(program, values)).findings).toEqual([]);
  const claimed = instead(values, { 's.asks.w 0': 21, 's.asks.w 1': 5, 's.asks.m 0': 251 });
  expect((await recheck(program, claimed)).findings.map(({ id, row }) => [id, row])).toEqual([
    ['s.asks.w', 1],
    ['s.asks.w', 2],
    ['s.asks.m', 1],
  ]);
});

test('a look-up is not taken for proved where the engine has other keys than the book', async () => {
  const { program, values } = computed(
    bookOf({}, list, asked([keyAt(3), keyAt(4)], calc('w', 'LOOKUP(k; list.k; list.w; "exact")', 'kip'))),
  );
  // The engine takes the key of row 4 for that of row 3 and the other way round, and looks up accordingly.
  const swapped = instead(values, {
    's.list.k 3': keyAt(4),
    's.list.k 4': keyAt(3),
    's.asks.w 0': values('s.asks.w', 1),
    's.asks.w 1': values('s.asks.w', 0),
  });
  const { findings } = await recheck(program, swapped);
  expect(findings.map(({ id, row }) => [id, row])).toEqual([
    ['s.asks.w', 1],
    ['s.asks.w', 2],
    ['s.list.k', 4],
    ['s.list.k', 5],
  ]);
});

test('texts are looked up without case, and keys equal within the tolerance are one', async () => {
  const piles = table(
    'piles',
    ROWS,
    texts(
      'mark',
      rows((row) => `P${row}`),
    ),
    given(
      'd',
      'ft',
      rows((row) => row),
    ),
  );
  const near = table('near', 12, given('k', '-', [5, 9, 7 * (1 + 4e-13), 1, 7, 3, 2, 8, 11, 12, 13, 14]));
  const { program, values } = computed(
    bookOf(
      {
        'd [ft]': '=LOOKUP("p17"; piles.mark; piles.d; "exact")',
        seven: '7',
        at: '=MATCH(seven; near.k; "first")',
      },
      piles,
      near,
    ),
  );
  expect(values('s.at')).toBe(3);
  expect(values('s.d')).toBeCloseTo(17 * 0.3048, 12);
  expect(await recheck(program, values)).toMatchObject({ findings: [], notRechecked: [], withoutValue: 0 });
});

test('the cells of a look-up on every row grow with the rows, whether keys are there, nowhere, twice or blank', () => {
  const cellsOf = (count: number, formula: string): number => {
    const many = <T>(of: (row: number) => T): T[] => Array.from({ length: count }, (_, row) => of(row));
    const { program, values } = computed(
      bookOf(
        {},
        table(
          'list',
          count,
          given(
            'k',
            '-',
            many((row) => (row * 7919) % 100_003),
          ),
          given(
            'twice',
            '-',
            many((row) => row % (count / 2)),
          ),
          given(
            'up',
            '-',
            many((row) => 2 * row),
          ),
          given(
            'blank',
            '-',
            many((row) => (row === 3 ? null : row)),
          ),
          given(
            'w',
            '-',
            many((row) => row),
          ),
        ),
        table(
          'asks',
          count,
          given(
            'k',
            '-',
            many((row) => row),
          ),
          calc('found', formula),
        ),
      ),
    );
    const { grid, borrowed } = lowerBook(program, values);
    expect([...borrowed]).toEqual([]);
    const formulas = grid.sheets.flatMap(({ rows }) =>
      rows.flat().filter((cell) => typeof cell === 'string'),
    );
    return formulas.length;
  };
  for (const formula of [
    'LOOKUP(k; list.k; list.w; "exact")',
    'LOOKUP(k + 0.5; list.k; list.w; "exact")',
    'LOOKUP(k; list.twice; list.w; "exact")',
    'MATCH(k; list.twice; "first")',
    'LOOKUP(k; list.blank; list.w; "exact")',
    'LOOKUP(k; list.up; list.w; "at or below")',
    'MATCH(k; list.up; "at or above")',
    'INTERPOLATE(k; list.up; list.w)',
    'INDEX(list.w; 1 + MOD(k; 7))',
  ]) {
    const [few, many] = [cellsOf(100, formula), cellsOf(1000, formula)];
    expect(many / few, formula).toBeLessThan(10.5);
  }
});

// Keys that are equal within the tolerance only are counted, others searched for.
test.each([
  ['equal', 10],
  ['equal within the tolerance', 10.000000000000002],
])(
  'keys below, between, above, twice, blank and near are found among others, where two are %s',
  async (_, last) => {
    const keys = [40, 10, 30, 30, 20, 70, 60, 50, 80, 90, 100, last];
    const rising = [10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 110, 120];
    const sought = [5, 10, 10 * (1 + 5e-13), 10 * (1 - 5e-13), 15, 20, 30, 99.9, 100, 100.1, 120, 121, null];
    const list = table(
      'list',
      keys.length,
      given('k', '-', keys),
      given('up', '-', rising),
      given(
        'w',
        'kip',
        rising.map((_, row) => row * row),
      ),
    );
    const { program, values } = computed(
      bookOf(
        {},
        list,
        table(
          'asks',
          sought.length,
          given('k', '-', sought),
          calc('exact', 'LOOKUP(k; list.k; list.w; "exact")', 'kip'),
          calc('first', 'MATCH(k * 1; list.k; "first")'),
          calc('below', 'LOOKUP(k; list.up; list.w; "at or below")', 'kip'),
          calc('up_to', 'MATCH(k; list.up; "at or above")'),
          calc('between', 'INTERPOLATE(k; list.up; list.w)', 'kip'),
          calc('held', 'INTERPOLATE(k; list.up; list.w; "hold")', 'kip'),
          calc('unordered', 'LOOKUP(k; list.k; list.w; "at or below")', 'kip'),
        ),
      ),
    );
    const matched = (id: string) => sought.map((_, row) => values(`s.asks.${id}`, row));
    const none = undefined;
    // Rows counted from 1; 10 stands in rows 2 and 12, 30 in rows 3 and 4.
    expect(matched('first')).toEqual([none, 2, 2, 2, none, 5, 3, none, 11, none, none, none, none]);
    expect(matched('up_to')).toEqual([1, 1, 1, 1, 2, 2, 3, 10, 10, 11, 12, none, none]);
    expect(matched('unordered').every((value) => value === none)).toBe(true);
    const report = await recheck(program, values);
    expect(report.findings).toEqual([]);
    expect(report.notRechecked).toEqual([]);

    // A value claimed where there is none, and a row that is the neighbour's.
    const claimed = instead(values, {
      's.asks.exact 0': 1,
      's.asks.exact 1': 1,
      's.asks.first 1': 12,
      's.asks.below 0': 0,
      's.asks.up_to 11': 12,
      's.asks.unordered 5': 1,
    });
    expect((await recheck(program, claimed)).findings.map(({ id, row }) => `${id} ${row}`)).toEqual([
      's.asks.exact 1',
      's.asks.exact 2',
      's.asks.below 1',
      's.asks.up_to 12',
      's.asks.unordered 6',
      's.asks.first 2',
    ]);
  },
);
