import { expect, test } from 'vitest';
import type { Column } from '../../src/document/index.ts';
import { recheck } from '../../src/recheck/index.ts';
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
