import { expect, test } from 'vitest';
import { lowerBook, recheck } from '../../src/recheck/index.ts';
import { bookOf, calc, computed, given, instead, table } from './books.ts';

const layers = table(
  'layers',
  3,
  given('thickness', 'ft', ['12 ft', 20, '3 m']),
  given('f', 'ksf', [0.5, '40 kPa', 1.2]),
  calc('top', 'ABOVE(bottom; 0 ft)', 'ft'),
  calc('bottom', 'top + thickness', 'ft'),
  calc('share', 'thickness / SUM(layers.thickness)'),
  calc('run', 'RUNNINGSUM(thickness * f)', 'klf'),
);
const profile = table(
  'profile',
  undefined,
  calc('z', 'SERIES(0 ft; 40 ft; 5 ft)', 'ft'),
  calc('q', 'SUM(GREATER(0; LESSER(z; layers.bottom) - layers.top) * layers.f)', 'klf'),
);

test('rows, running sums, rows above, and aggregates over another table for each row agree', async () => {
  const { program, values } = computed(bookOf({ 'Q [klf]': '=MAX(profile.q)' }, layers, profile));
  const report = await recheck(program, values);
  // Six columns of three rows, two of nine, one line.
  expect(report).toEqual({
    agree: 6 * 3 + 2 * 9 + 1,
    entries: 2 * 3,
    withoutValue: 0,
    findings: [],
    indeterminate: [],
    notRechecked: [],
    resting: [],
  });
});

test('a row that is off is found with its number', async () => {
  const { program, values } = computed(bookOf({}, layers, profile));
  const at = values('s.profile.q', 4) as number;
  const { findings } = await recheck(program, instead(values, { 's.profile.q 4': at * 1.01 }));
  // By hand at 20 ft: 12 ft · 0.5 ksf + 8 ft · 40 kPa, 1 ksf = 47.88025898034 kPa: 12.6833389546 klf.
  expect(findings.map(({ id, row, message }) => [id, row, message])).toEqual([
    ['s.profile.q', 5, 's.profile.q, row 5: the book has 12.8101723442 klf, the recheck 12.6833389546 klf'],
  ]);
});

test('the number of rows of a series is rechecked', async () => {
  const { program, values } = computed(bookOf({}, layers, profile));
  const tables = program.tables.map((each) => (each.id === 's.profile' ? { ...each, rows: 8 } : each));
  const { findings } = await recheck({ ...program, tables }, values);
  expect(findings.map(({ message }) => message)).toContain(
    's.profile, its number of rows: the book has 8, the recheck 9',
  );
});

test('a series without a value makes no rows in either engine', async () => {
  const bad = table('profile', undefined, calc('z', 'SERIES(0 ft; 40 ft; x)', 'ft'));
  const { program, values } = computed(bookOf({ 'x [ft]': '0 ft', n: '=COUNT(profile.z)' }, bad));
  expect(program.tables).toEqual([{ id: 's.profile', rows: 0, failed: true }]);
  expect(await recheck(program, values)).toMatchObject({ agree: 1, withoutValue: 1, findings: [] });
});

test('a blank row leaves aggregates without a value, except over KNOWN rows', async () => {
  const gappy = table(
    't',
    3,
    given('w', 'kip', [2, null, 5]),
    calc('twice', '2 * w', 'kip'),
    calc('failing', 'w / (w - 5 kip)'),
  );
  const lines = {
    'all [kip]': '=SUM(t.w)',
    'some [kip]': '=SUM(KNOWN(t.w))',
    'double [kip]': '=SUM(KNOWN(t.twice))',
    n: '=COUNT(KNOWN(t.w))',
    none: '=SUM(KNOWN(t.failing))',
    'third [kip]': '=INDEX(t.w; 3)',
  };
  const { program, values } = computed(bookOf(lines, gappy));
  expect(
    ['all', 'some', 'double', 'n', 'none', 'third'].map((name) => values(`s.${name}`) !== undefined),
  ).toEqual([false, true, true, true, false, true]);
  expect((await recheck(program, values)).findings).toEqual([]);
});

test('a column without a filled row adds nothing, on a line and on each row', async () => {
  const blank = table(
    't',
    2,
    given('w', 'kip', [null, null]),
    calc('n', 'COUNT(ROW(); KNOWN(t.w))'),
    calc('total', 'SUM(ROW() * 1 kip; KNOWN(t.w))', 'kip'),
  );
  const { program, values } = computed(bookOf({ n: '=COUNT(KNOWN(t.w))' }, blank));
  expect([values('s.n'), values('s.t.n', 1)]).toEqual([0, 1]);
  expect(await recheck(program, values)).toMatchObject({ agree: 5, withoutValue: 2, findings: [] });
});

test('a formula that would take too many cells is not rechecked, and says so', async () => {
  const long = table(
    't',
    600,
    given(
      'w',
      'kip',
      Array.from({ length: 600 }, (_, row) => (row * 7919) % 601),
    ),
  );
  const { program, values } = computed(
    bookOf({ 'middle [kip]': '=MEDIAN(t.w)', 'twice [kip]': '=2 * middle' }, long),
  );
  const report = await recheck(program, values);
  expect(report.notRechecked).toEqual([
    { id: 's.middle', reason: 'too large: it would take more than 50000 helper cells', values: 1 },
  ]);
  expect(report).toMatchObject({ agree: 601, findings: [] });
});

test('a book that would take too many cells is rechecked up to its longest tables', () => {
  const rows = 90_000;
  const cells = Array.from({ length: rows }, (_, row) => row % 100);
  const chunks = Array.from({ length: Math.ceil(rows / 1024) }, (_, at) =>
    cells.slice(at * 1024, (at + 1) * 1024),
  );
  const entered = { ...given('w', 'kip', []), chunks };
  const columns = ['a', 'b', 'c', 'd', 'e'].map((name) => calc(name, 'w * 2', 'kip'));
  const { program, values } = computed(
    bookOf({ 'W [kip]': '=SUM(t.w)' }, table('t', rows, entered, ...columns)),
  );
  expect([...lowerBook(program, values).borrowed]).toEqual([
    ['s.t.b', 'too large: the book would take more than 200000 cells'],
    ['s.t.c', 'too large: the book would take more than 200000 cells'],
    ['s.t.d', 'too large: the book would take more than 200000 cells'],
    ['s.t.e', 'too large: the book would take more than 200000 cells'],
  ]);
});

test('a column that cannot be read at all leaves every aggregate over it without a value, branches or not', async () => {
  const bad = table(
    't',
    2,
    given('w', 'kip', [1, 2]),
    calc('v', 'w + 1 m', 'kip'),
    calc('u', 'w * 2', 'kip'),
  );
  const { program, values } = computed(
    bookOf({ a: '=SUM(IF(TRUE; t.w; t.v))', b: '=SUM(IF(TRUE; t.w; t.u))' }, bad),
  );
  expect([values('s.a'), values('s.b') !== undefined]).toEqual([undefined, true]);
  expect((await recheck(program, values)).findings).toEqual([]);
});
