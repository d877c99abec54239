import { expect, test } from 'vitest';
import { createEngine } from '../../src/engine/index.ts';
import { newSheet } from './sheet.ts';

const sorted = (ids: Iterable<string>) => [...ids].sort();

test('an edit changes what depends on it and nothing else', () => {
  const sheet = newSheet();
  sheet.given('a', 1);
  sheet.given('b', 2);
  sheet.calc('c', 'a + 1');
  sheet.calc('d', 'b + 1');
  sheet.calc('e', 'c + d');
  sheet.run();
  sheet.given('a', 5);
  expect(sorted(sheet.run())).toEqual(['s.a', 's.c', 's.e']);
  sheet.given('a', 5);
  expect(sheet.run().size).toBe(0);
});

test('a value that comes out the same ends the propagation', () => {
  const sheet = newSheet();
  sheet.given('a', 1);
  sheet.calc('sign', 'SIGN(a)');
  sheet.calc('after', 'sign * 100');
  sheet.run();
  sheet.given('a', 7);
  expect(sorted(sheet.run())).toEqual(['s.a']);
  sheet.given('a', -7);
  expect(sorted(sheet.run())).toEqual(['s.a', 's.after', 's.sign']);
});

test('several edits are one recalculation', () => {
  const sheet = newSheet();
  sheet.given('a', 1);
  sheet.given('b', 1);
  sheet.calc('c', 'a - b');
  sheet.run();
  sheet.given('a', 4);
  sheet.given('b', 4);
  expect(sorted(sheet.run())).toEqual(['s.a', 's.b']);
});

test('formulas may come before what they read, and what is taken away is missed', () => {
  const sheet = newSheet();
  sheet.declare('a');
  sheet.calc('b', 'a + 1');
  sheet.run();
  expect(sheet.read('b')).toMatchObject({
    status: 'waiting',
    problem: { code: 'waiting-on', data: { because: 'there is no “s.a” any more' } },
  });
  sheet.given('a', 1);
  sheet.run();
  expect(sheet.read('b')).toEqual({ status: 'ok', value: 2 });
  sheet.engine.remove('s.a');
  expect(sorted(sheet.run())).toEqual(['s.a', 's.b']);
  expect(sheet.codeOf('a')).toBe('nothing-there');
  expect(sheet.engine.read('s.never')).toMatchObject({ problem: { code: 'nothing-there' } });
});

test('one row edited changes one row of what is computed row by row', () => {
  const rows = 3000;
  const sheet = newSheet();
  sheet.table('t', rows);
  sheet.column(
    't.x',
    Array.from({ length: rows }, (_, row) => row),
  );
  sheet.calcColumn('t.y', 'x * 2');
  sheet.calcColumn('t.above', 'ABOVE(y; 0) + 1');
  sheet.calcColumn('t.sum', 'RUNNINGSUM(y)');
  sheet.calcColumn('t.even', 'MOD(x; 2)');
  sheet.calc('most', 'MAX(t.even)');
  sheet.calc('total', 'SUM(t.y)');
  sheet.run();
  sheet.patch('t.x', 1500, [1502]);
  expect(sorted(sheet.run())).toEqual(['s.t.above', 's.t.sum', 's.t.x', 's.t.y', 's.total']);
  const y = Array.from({ length: rows }, (_, row) => (row === 1500 ? 3004 : row * 2));
  expect(sheet.rows('t.y')).toEqual(y);
  expect(sheet.rows('t.above')).toEqual(y.map((_, row) => (y[row - 1] ?? 0) + 1));
  let running = 0;
  expect(sheet.rows('t.sum')).toEqual(
    y.map((value) => {
      running += value;
      return running;
    }),
  );
  expect(sheet.read('total')).toEqual({ status: 'ok', value: rows * (rows - 1) + 4 });
});

test('a column set again with the same values changes nothing', () => {
  const sheet = newSheet();
  sheet.table('t', 3);
  sheet.column('t.x', [1, 2, 3]);
  sheet.calcColumn('t.y', 'x * 2');
  sheet.run();
  sheet.column('t.x', [1, 2, 3]);
  expect(sheet.run().size).toBe(0);
});

test('rows that are added are blank, and rows that remain keep their values', () => {
  const sheet = newSheet();
  sheet.table('t', 2);
  sheet.column('t.x', [1, 2]);
  sheet.calcColumn('t.y', 'x * 2');
  sheet.calc('count', 'COUNT(KNOWN(t.x))');
  sheet.run();
  sheet.table('t', 3);
  expect(sorted(sheet.run())).toEqual(['s.t', 's.t.x', 's.t.y']);
  expect(sheet.rows('t.y')).toEqual([2, 4, 'blank-cell']);
  sheet.table('t', 1);
  sheet.run();
  expect(sheet.rows('t.y')).toEqual([2]);
  expect(sheet.read('count')).toEqual({ status: 'ok', value: 1 });
});

test('a chain of ten thousand cells, set from its end, needs no stack', () => {
  const sheet = newSheet();
  const count = 10_000;
  for (let at = 0; at < count; at += 1) sheet.declare(`x${at}`);
  for (let at = count - 1; at > 0; at -= 1) sheet.calc(`x${at}`, `x${at - 1} + 1`);
  sheet.given('x0', 1);
  sheet.run();
  expect(sheet.read(`x${count - 1}`)).toEqual({ status: 'ok', value: count });
  sheet.given('x0', null);
  expect(sheet.run().size).toBe(count);
  expect(sheet.read(`x${count - 1}`)).toMatchObject({ problem: { hints: ['fill in s.x0'] } });
});

test('rows waiting on the row above, a hundred thousand of them, need no stack', () => {
  const sheet = newSheet();
  const rows = 100_000;
  sheet.table('t', rows);
  sheet.column('t.x', [null, ...new Array(rows - 1).fill(1)]);
  sheet.declare('t.y');
  sheet.calcColumn('t.y', 'ABOVE(y; 0) + x');
  sheet.calc('sum', 'SUM(t.y)');
  sheet.run();
  const problem = sheet.engine.readColumn('s.t.y').problemAt(rows - 1);
  expect(problem).toMatchObject({ code: 'waiting-on', data: { row: rows - 1, origin: 'row 1 of s.t.x' } });
  expect(sheet.read('sum')).toMatchObject({ problem: { code: 'rows-blank', data: { blank_rows: 1 } } });
});

test('what makes no sense is refused at once', () => {
  const engine = createEngine();
  engine.setTableLength('s.t', 2);
  expect(() => engine.setInput('s.a', Number.NaN)).toThrow(RangeError);
  expect(() => engine.setInput('s.a', Number.POSITIVE_INFINITY)).toThrow(RangeError);
  expect(() => engine.setTableLength('s.t', -1)).toThrow(RangeError);
  expect(() => engine.setTableLength('s.t', 1.5)).toThrow(RangeError);
  expect(() => engine.setColumn('s.t.x', 's.t', Float64Array.of(1))).toThrow(RangeError);
  expect(() => engine.setColumn('s.t.x', 's.t', Float64Array.of(1, Number.NEGATIVE_INFINITY))).toThrow(
    RangeError,
  );
  engine.setColumn('s.t.x', 's.t', Float64Array.of(1, Number.NaN));
  expect(() => engine.patchColumn('s.t.x', 1, Float64Array.of(1, 2))).toThrow(RangeError);
  expect(() => engine.patchColumn('s.t.y', 0, Float64Array.of(1))).toThrow('s.t.y');
  expect(() => engine.setColumn('s.t.x', 's.u', Float64Array.of())).toThrow('s.t.x');
  expect(() => engine.read('s.t.x')).toThrow('readColumn');
  expect(() => engine.readColumn('s.a')).toThrow('s.a');
  engine.recalculate();
  expect(() => engine.readColumn('s.t.x').at(2)).toThrow(RangeError);
});
