import { expect, test } from 'vitest';
import { newSheet } from './sheet.ts';

test('what fails in the branch not taken does not count', () => {
  const sheet = newSheet();
  sheet.given('a', 2);
  sheet.given('b', 0);
  sheet.given('c', null);
  sheet.calc('quotient', 'IF(b > 0; a / b; 0)');
  sheet.calc('blank', 'IF(a > 1; a; c)');
  sheet.calc('taken', 'IF(b > 0; 0; a / b)');
  sheet.calc('condition', 'IF(c > 0; a; a)');
  sheet.run();
  expect(sheet.read('quotient')).toEqual({ status: 'ok', value: 0 });
  expect(sheet.read('blank')).toEqual({ status: 'ok', value: 2 });
  expect(sheet.codeOf('taken')).toBe('division-by-zero');
  expect(sheet.codeOf('condition')).toBe('blank-cell');
});

test('rows take their branches one by one', () => {
  const sheet = newSheet();
  sheet.table('t', 5);
  sheet.column('t.x', [4, 0, -9, null, 1]);
  sheet.calcColumn('t.inverse', 'IF(x <> 0; 1 / x; 0)');
  sheet.calcColumn('t.root', 'IFS(x > 1; SQRT(x); x < 0; SQRT(-x); TRUE; x / 0)');
  sheet.calcColumn('t.some', 'IFS(x > 1; 10; x < 0; 20)');
  sheet.run();
  expect(sheet.rows('t.inverse')).toEqual([0.25, 0, -1 / 9, 'blank-cell', 1]);
  expect(sheet.rows('t.root')).toEqual([2, 'division-by-zero', 3, 'blank-cell', 'division-by-zero']);
  expect(sheet.rows('t.some')).toEqual([10, 'no-branch', 20, 'blank-cell', 'no-branch']);
});

test('one condition for all rows takes one branch for all', () => {
  const sheet = newSheet();
  sheet.given('method', 'API');
  sheet.table('t', 3);
  sheet.column('t.x', [1, 2, 0]);
  sheet.calcColumn('t.q', 'IF(method = "api"; x * 10; 1 / x)');
  sheet.run();
  expect(sheet.rows('t.q')).toEqual([10, 20, 0]);
  sheet.given('method', 'other');
  sheet.run();
  expect(sheet.rows('t.q')).toEqual([1, 0.5, 'division-by-zero']);
});

test('AND and OR look at all their arguments', () => {
  const sheet = newSheet();
  sheet.given('a', 1);
  sheet.given('b', null);
  sheet.calc('both', 'AND(a > 2; b > 0)');
  sheet.calc('either', 'OR(a > 0; b > 0)');
  sheet.run();
  expect(sheet.codeOf('both')).toBe('blank-cell');
  expect(sheet.codeOf('either')).toBe('blank-cell');
});

test('a reference in a branch not taken still makes a loop', () => {
  const sheet = newSheet();
  sheet.given('a', 1);
  sheet.declare('y');
  sheet.calc('x', 'IF(a > 0; 1; y)');
  sheet.calc('y', 'x + 1');
  sheet.run();
  expect(sheet.codeOf('x')).toBe('loop');
  expect(sheet.codeOf('y')).toBe('loop');
});

test('a branch across a block of rows keeps every row in its place', () => {
  const count = 5000;
  const sheet = newSheet();
  sheet.table('t', count);
  sheet.column(
    't.x',
    Array.from({ length: count }, (_, row) => (row * 37) % 101),
  );
  sheet.calcColumn('t.y', 'IF(x > 60; x - 60; IF(x > 20; -x; IF(x = 0; 1000; x * 2)))');
  sheet.run();
  const expected = Array.from({ length: count }, (_, row) => {
    const x = (row * 37) % 101;
    return x > 60 ? x - 60 : x > 20 ? -x : x === 0 ? 1000 : x * 2;
  });
  expect(sheet.rows('t.y')).toEqual(expected);
});
