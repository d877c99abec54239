import { expect, test } from 'vitest';
import { problem } from '../../src/diagnostics/index.ts';
import type { Reading } from '../../src/engine/index.ts';
import { newSheet } from './sheet.ts';

function problemOf(reading: Reading) {
  if (!('problem' in reading)) throw new Error(`it is ${reading.status}`);
  return { status: reading.status, ...reading.problem };
}

test('a blank is missing, never zero, and what needs it waits', () => {
  const sheet = newSheet();
  sheet.given('N', null, 'kN');
  sheet.calc('twice', 'N * 2');
  sheet.calc('more', 'twice * 2');
  sheet.run();
  expect(sheet.read('N')).toEqual({ status: 'missing' });
  expect(problemOf(sheet.read('twice'))).toMatchObject({
    status: 'waiting',
    code: 'blank-cell',
    message: '“N” is blank',
    from: 0,
    to: 1,
  });
  expect(problemOf(sheet.read('more'))).toMatchObject({
    status: 'waiting',
    code: 'waiting-on',
    message: 'waits on “twice”, which has no value',
    hints: ['fill in s.N'],
  });
  sheet.given('N', 3, 'kN');
  expect([...sheet.run()].sort()).toEqual(['s.N', 's.more', 's.twice']);
  expect(sheet.read('more')).toEqual({ status: 'ok', value: 12000 });
});

test('ISBLANK may look at a blank; the stated value goes before the computed one', () => {
  const sheet = newSheet();
  sheet.given('stated', null, 'm');
  sheet.given('depth', 4, 'm');
  sheet.calc('used', 'IF(ISBLANK(stated); depth / 2; stated)');
  sheet.run();
  expect(sheet.read('used')).toEqual({ status: 'ok', value: 2 });
  sheet.given('stated', 9, 'm');
  sheet.run();
  expect(sheet.read('used')).toEqual({ status: 'ok', value: 9 });
});

test('ISBLANK waits on a cell that fails, which is neither blank nor filled', () => {
  const sheet = newSheet();
  sheet.given('z', 0);
  sheet.calc('bad', '1 / z');
  sheet.calc('seen', 'ISBLANK(bad)');
  sheet.calc('calc', 'ISBLANK(z)');
  sheet.run();
  expect(problemOf(sheet.read('seen'))).toMatchObject({ code: 'waiting-on', data: { name: 'bad' } });
  expect(sheet.read('calc')).toEqual({ status: 'ok', value: false });
});

test('an aggregate over blank rows has no value and tells the known part', () => {
  const sheet = newSheet();
  sheet.table('t', 5);
  sheet.column('t.cost', [10, null, 20, null, 30], 'USD');
  sheet.calc('total', 'SUM(t.cost)');
  sheet.calc('most', 'MAX(t.cost)');
  sheet.calc('known', 'SUM(KNOWN(t.cost))');
  sheet.calc('count', 'COUNT(KNOWN(t.cost))');
  sheet.calc('share', '10 USD / total');
  sheet.run();
  expect(problemOf(sheet.read('total'))).toMatchObject({
    status: 'waiting',
    code: 'rows-blank',
    message: 'SUM: 2 rows of “t.cost” are blank, the first of them row 2; the 3 filled give 60.00 USD',
    hints: ['fill in row 2'],
    data: {
      known_part: 60,
      known_rows: 3,
      blank_rows: 2,
      first_row: 2,
      blanks: [
        { cell: 's.t.cost', row: 2 },
        { cell: 's.t.cost', row: 4 },
      ],
    },
  });
  expect(problemOf(sheet.read('most'))).toMatchObject({ data: { known_part: 30 } });
  expect(sheet.read('known')).toEqual({ status: 'ok', value: 60 });
  expect(sheet.read('count')).toEqual({ status: 'ok', value: 3 });
  expect(problemOf(sheet.read('share'))).toMatchObject({ status: 'waiting', code: 'waiting-on' });
});

test('rows that are computed from blanks count as blank, by the column that is', () => {
  const sheet = newSheet();
  sheet.given('rate', 2);
  sheet.table('t', 4);
  sheet.column('t.q', [1, null, 3, 4]);
  sheet.calcColumn('t.cost', 'q * rate');
  sheet.calcColumn('t.so_far', 'RUNNINGSUM(q)');
  sheet.calc('total', 'SUM(t.cost * 1)');
  sheet.calc('running', 'SUM(t.so_far)');
  sheet.calc('known', 'SUM(KNOWN(t.cost))');
  sheet.run();
  expect(problemOf(sheet.read('total'))).toMatchObject({
    code: 'rows-blank',
    data: { name: 's.t.q', known_part: 16, known_rows: 3, blank_rows: 1, first_row: 2 },
  });
  expect(problemOf(sheet.read('running'))).toMatchObject({
    data: { blank_rows: 1, known_rows: 1, known_part: 1 },
  });
  expect(sheet.read('known')).toEqual({ status: 'ok', value: 16 });
});

test('KNOWN leaves out no row that fails, and none that waits on a blank elsewhere', () => {
  const sheet = newSheet();
  sheet.given('rate', null);
  sheet.table('t', 3);
  sheet.column('t.q', [1, 0, null]);
  sheet.calcColumn('t.inverse', '1 / q');
  sheet.calcColumn('t.cost', 'q * rate');
  sheet.calc('a', 'SUM(KNOWN(t.inverse))');
  sheet.calc('b', 'SUM(KNOWN(t.cost))');
  sheet.run();
  expect(problemOf(sheet.read('a'))).toMatchObject({
    code: 'aggregate-row-fails',
    message: 'SUM: row 2 of “s.t” fails: “q” is zero, and “1 / q” divides by it',
  });
  expect(problemOf(sheet.read('b'))).toMatchObject({ code: 'aggregate-row-fails', data: { row: 1 } });
});

test('a row that fails takes the value from the aggregate, which names it', () => {
  const sheet = newSheet();
  sheet.table('layers', 8);
  sheet.column('layers.f', [1, 2, 3, 4, 5, 6, -7, null]);
  sheet.calcColumn('layers.root', 'SQRT(f)');
  sheet.calc('sum', 'SUM(layers.root)');
  sheet.calc('direct', 'SUM(10 / (layers.f - 3))');
  sheet.run();
  expect(problemOf(sheet.read('sum'))).toMatchObject({
    status: 'waiting',
    code: 'aggregate-row-fails',
    data: { table: 's.layers', row: 7 },
  });
  expect(problemOf(sheet.read('direct'))).toMatchObject({ code: 'aggregate-row-fails', data: { row: 3 } });
});

test('a fault that passes through tables is told where it begins, not at the sound lines between', () => {
  const sheet = newSheet();
  const wrong = problem('nothing-there', { from: 0, to: 0 }, { name: 'x' });
  sheet.engine.setInput('s.rate', { failed: wrong });
  sheet.declare('rate');
  sheet.table('combos', 2);
  sheet.column('combos.f', [1, 2]);
  sheet.calcColumn('combos.load', 'f * rate');
  sheet.calc('worst', 'MAX(combos.load)');
  sheet.table('lines', 2);
  sheet.column('lines.share', [0.4, 0.6]);
  sheet.calcColumn('lines.pull', 'share * worst');
  sheet.calc('sum', 'SUM(lines.pull)');
  sheet.calc('direct', 'SUM(lines.share * worst)');
  sheet.calc('after', 'sum + 1');
  sheet.run();
  const { message } = wrong;
  expect(problemOf(sheet.read('worst'))).toMatchObject({
    message: `MAX: row 1 of “s.combos” fails: ${message}`,
    hints: ['mend s.rate'],
  });
  expect(problemOf(sheet.read('sum'))).toMatchObject({
    message: `SUM: row 1 of “s.lines” fails: ${message}`,
    hints: ['mend s.rate'],
  });
  expect(problemOf(sheet.read('direct'))).toMatchObject({ hints: [`mend s.rate: ${message}`] });
  expect(problemOf(sheet.read('after'))).toMatchObject({
    message: 'waits on “sum”, which has no value',
    hints: [`mend s.rate: ${message}`],
  });
});

test('nothing is to be mended where a formula says nothing for the case there is', () => {
  const sheet = newSheet();
  sheet.given('n', 7);
  sheet.calc('R', 'IFS(n < 2; 10; n < 5; 20)');
  sheet.calc('after', 'R + 1');
  sheet.table('t', 2);
  sheet.column('t.n', [1, 7]);
  sheet.calcColumn('t.R', 'IFS(n < 2; 10; n < 5; 20)');
  sheet.calc('sum', 'SUM(t.R)');
  sheet.calc('after_sum', 'sum + 1');
  sheet.run();
  const because = 'the formula says nothing for where none of “n < 2” and “n < 5” holds: n is 7';
  const remedy = (id: string) => `change what ${id} goes by, or have its formula say what holds otherwise`;
  expect(problemOf(sheet.read('after')).hints).toEqual([`${remedy('s.R')}: ${because}`]);
  expect(problemOf(sheet.read('sum')).hints).toEqual([remedy('row 2 of s.t.R')]);
  expect(problemOf(sheet.read('after_sum')).hints).toEqual([`${remedy('row 2 of s.t.R')}: ${because}`]);
});

test('where no row meets a condition, the condition is to be changed or the table to go on, not the formula', () => {
  const sheet = newSheet();
  sheet.given('F', 50, 'kN');
  sheet.table('t', 1);
  sheet.column('t.R', [40], 'kN');
  sheet.table('none', 0);
  sheet.column('none.R', [], 'kN');
  sheet.calc('least', 'MINIF(t.R >= F; t.R)');
  sheet.calc('after', 'least / 2');
  sheet.calc('empty', 'MAXIF(none.R >= F; none.R)');
  sheet.run();
  const because = 'there is no least “t.R”: the only row does not meet “t.R >= F” (F is 50 kN)';
  expect(problemOf(sheet.read('least'))).toMatchObject({
    code: 'no-row-meets',
    message: because,
    hints: ['change what the condition compares, or let the table go on until a row meets it'],
  });
  expect(problemOf(sheet.read('after')).hints).toEqual([
    `change what s.least goes by, or have its formula say what holds otherwise: ${because}`,
  ]);
  expect(problemOf(sheet.read('empty')).message).toBe(
    'there is no greatest “none.R”: the table has no rows to meet “none.R >= F” (F is 50 kN)',
  );
});

test('a row of a table at fault is told by its row and column, and a blank behind a table is to be filled in', () => {
  const sheet = newSheet();
  sheet.given('rate', null);
  sheet.table('t', 2);
  sheet.column('t.q', [1, null]);
  sheet.column('t.d', [1, 0]);
  sheet.calcColumn('t.inverse', '1 / d');
  sheet.calcColumn('t.cost', 'd * rate');
  for (const name of ['q', 'inverse', 'cost']) {
    sheet.calc(`sum_${name}`, `SUM(t.${name})`);
    sheet.calc(`after_${name}`, `sum_${name} + 1`);
  }
  sheet.run();
  expect(problemOf(sheet.read('after_inverse')).hints).toEqual([
    'mend row 2 of s.t.inverse: “d” is zero, and “1 / d” divides by it',
  ]);
  expect(problemOf(sheet.read('sum_cost')).hints).toEqual(['fill in s.rate']);
  expect(problemOf(sheet.read('after_cost')).hints).toEqual(['fill in s.rate']);
  expect(problemOf(sheet.read('after_q')).hints).toEqual(['fill in row 2 of s.t.q']);
});

test('what is the same for all rows is blamed itself, not the rows', () => {
  const sheet = newSheet();
  sheet.given('rate', null);
  sheet.table('t', 3);
  sheet.column('t.q', [1, 2, 3]);
  sheet.calc('total', 'SUM(t.q * rate)');
  sheet.run();
  expect(problemOf(sheet.read('total'))).toMatchObject({
    code: 'blank-cell',
    data: { name: 'rate', row: null },
  });
});

test('an entry that could not be read is wrong, not blank', () => {
  const sheet = newSheet();
  const wrong = problem('nothing-there', { from: 0, to: 0 }, { name: 'x' });
  sheet.engine.setInput('s.a', { failed: wrong });
  sheet.table('t', 3);
  sheet.column('t.x', [1, null, null]);
  sheet.engine.patchColumn('s.t.x', 1, Float64Array.of(Number.NaN), { failed: new Map([[0, wrong]]) });
  sheet.declare('a');
  sheet.calc('b', 'a + 1');
  sheet.calc('blank', 'ISBLANK(a)');
  sheet.calcColumn('t.y', 'x * 2');
  sheet.calcColumn('t.z', 'ISBLANK(x)');
  sheet.calc('sum', 'SUM(KNOWN(t.x))');
  sheet.run();
  expect(sheet.read('a')).toEqual({ status: 'problem', problem: wrong });
  expect(sheet.codeOf('b')).toBe('waiting-on');
  expect(sheet.codeOf('blank')).toBe('waiting-on');
  expect(sheet.rows('t.x')).toEqual([1, 'nothing-there', 'missing']);
  expect(sheet.rows('t.y')).toEqual([2, 'waiting-on', 'blank-cell']);
  expect(sheet.rows('t.z')).toEqual([false, 'waiting-on', true]);
  expect(sheet.codeOf('sum')).toBe('aggregate-row-fails');
});

test('without rows SUM and COUNT are 0, and MIN, MAX and AVERAGE are problems', () => {
  const sheet = newSheet();
  sheet.table('t', 0);
  sheet.column('t.x', []);
  for (const fn of ['SUM', 'COUNT', 'MIN', 'MAX', 'AVERAGE']) sheet.calc(fn.toLowerCase(), `${fn}(t.x)`);
  sheet.run();
  expect(sheet.read('sum')).toEqual({ status: 'ok', value: 0 });
  expect(sheet.read('count')).toEqual({ status: 'ok', value: 0 });
  for (const name of ['min', 'max', 'average']) expect(sheet.codeOf(name)).toBe('outside-domain');
});

test('an aggregate over a column that fails as a whole fails, even without rows', () => {
  const sheet = newSheet();
  const broken = problem('formula-broken', { from: 0, to: 1 }, {});
  sheet.table('t', 0);
  sheet.declare('t.x');
  sheet.engine.setFailed('s.t.x', broken, { table: 's.t' });
  sheet.calc('sum', 'SUM(t.x)');
  sheet.run();
  expect(problemOf(sheet.read('sum'))).toMatchObject({
    code: 'waiting-on',
    data: { name: 't.x', row: null },
  });
  expect(sheet.engine.readColumn('s.t.x').problem).toEqual(broken);
});
