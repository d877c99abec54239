import { expect, test } from 'vitest';
import { newSheet, type Sheet } from './sheet.ts';

function pathOf(sheet: Sheet, name: string): unknown {
  const reading = sheet.read(name);
  if (reading.status !== 'problem') throw new Error(`${name} is ${reading.status}`);
  expect(reading.problem.code).toBe('loop');
  return reading.problem.data.path;
}

test('a loop names its path, from its first cell by name, in every cell of it', () => {
  const sheet = newSheet();
  for (const name of ['a', 'b', 'c']) sheet.declare(name);
  sheet.calc('b', 'c + 1');
  sheet.calc('c', 'a * 2');
  sheet.calc('a', '1 + b');
  sheet.calc('after', 'a + 1');
  sheet.run();
  for (const name of ['a', 'b', 'c']) expect(pathOf(sheet, name)).toEqual(['s.a', 's.b', 's.c', 's.a']);
  expect(sheet.read('a')).toMatchObject({ problem: { from: 4, to: 5 } });
  expect(sheet.read('after')).toMatchObject({ status: 'waiting', problem: { code: 'waiting-on' } });
});

test('a cell that reads itself is a loop', () => {
  const sheet = newSheet();
  sheet.declare('a');
  sheet.calc('a', 'a + 1');
  sheet.run();
  expect(pathOf(sheet, 'a')).toEqual(['s.a', 's.a']);
});

test('a loop opens when one of its formulas changes, and closes again', () => {
  const sheet = newSheet();
  sheet.declare('a');
  sheet.declare('b');
  sheet.calc('a', 'b + 1');
  sheet.calc('b', 'a + 1');
  sheet.run();
  sheet.calc('b', '5');
  expect([...sheet.run()].sort()).toEqual(['s.a', 's.b']);
  expect(sheet.read('a')).toEqual({ status: 'ok', value: 6 });
  sheet.calc('b', 'a + 2');
  sheet.run();
  expect(pathOf(sheet, 'b')).toEqual(['s.a', 's.b', 's.a']);
});

test('a loop through a whole column, and through the rows of a table', () => {
  const sheet = newSheet();
  sheet.declare('total');
  sheet.declare('p.z');
  sheet.declare('t.share');
  sheet.table('t', 2);
  sheet.column('t.x', [1, 2]);
  sheet.calcColumn('t.share', 'x / total');
  sheet.calc('total', 'SUM(t.share)');
  sheet.declare('length');
  sheet.series('p.z', 'SERIES(0; length; 1)');
  sheet.calc('length', 'MAX(p.z) + 1');
  sheet.run();
  expect(pathOf(sheet, 'total')).toEqual(['s.t.share', 's.total', 's.t.share']);
  expect(sheet.rows('t.share')).toEqual(['loop', 'loop']);
  expect(pathOf(sheet, 'length')).toEqual(['s.length', 's.p.z', 's.length']);
  expect(sheet.engine.readColumn('s.p.z').problem).toBeDefined();
});

test('columns that need one another on the same row are a loop; through ABOVE they are not', () => {
  const sheet = newSheet();
  sheet.table('t', 2);
  for (const name of ['t.a', 't.b', 't.c']) sheet.declare(name);
  sheet.calcColumn('t.a', 'b + ABOVE(c; 0)');
  sheet.calcColumn('t.b', 'a + 1');
  sheet.calcColumn('t.c', 'a');
  sheet.run();
  expect(sheet.rows('t.a')).toEqual(['loop', 'loop']);
  expect(sheet.engine.readColumn('s.t.c').problem?.data).toEqual({ path: ['s.t.a', 's.t.b', 's.t.a'] });
  sheet.calcColumn('t.b', 'ABOVE(a; 10) + 1');
  sheet.run();
  expect(sheet.rows('t.a')).toEqual([11, 23]);
  expect(sheet.rows('t.b')).toEqual([11, 12]);
});

test('ABOVE does not open a loop through an aggregate of the whole column', () => {
  const sheet = newSheet();
  sheet.table('t', 2);
  sheet.declare('t.a');
  sheet.declare('t.b');
  sheet.calcColumn('t.a', 'ABOVE(b; 0) + 1');
  sheet.calcColumn('t.b', 'SUM(t.a)');
  sheet.run();
  expect(sheet.rows('t.a')).toEqual(['loop', 'loop']);
  expect(sheet.engine.readColumn('s.t.b').problem?.data).toEqual({ path: ['s.t.b', 's.t.a', 's.t.b'] });
});

test('a loop of ten thousand cells is told with its middle left out', () => {
  const sheet = newSheet();
  const count = 10_000;
  for (let at = 0; at < count; at += 1) sheet.declare(`x${at}`);
  for (let at = 0; at < count; at += 1) sheet.calc(`x${at}`, `x${(at + 1) % count} + 1`);
  sheet.run();
  expect(pathOf(sheet, 'x0')).toEqual([
    ...['s.x0', 's.x1', 's.x2', 's.x3', 's.x4', 's.x5', 's.x6', 's.x7', '…', 's.x9998', 's.x9999', 's.x0'],
  ]);
  expect(sheet.codeOf('x5000')).toBe('loop');
  sheet.calc('x9999', '1');
  sheet.run();
  expect(sheet.read('x0')).toEqual({ status: 'ok', value: count });
});
