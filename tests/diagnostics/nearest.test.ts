import { expect, test } from 'vitest';
import { nearest } from '../../src/diagnostics/index.ts';

const names = ['thickness', 'thick', 'depth', 'D', 'd_pile', 'Q_a', 'Q_s', 'layers'];

test.each([
  { name: 'thikness', found: ['thickness'] },
  { name: 'thicknes', found: ['thickness'] },
  { name: 'THICKNESS', found: ['thickness'] },
  { name: 'dpeth', found: ['depth'] },
  { name: 'Q_b', found: ['Q_a', 'Q_s'] },
  { name: 'd', found: ['D'] },
  { name: 'zzzzzz', found: [] },
  { name: '', found: [] },
])('$name is near $found', ({ name, found }) => {
  expect(nearest(name, names)).toEqual(found);
});

test('equal but for case comes first, then fewer steps, then the order given', () => {
  expect(nearest('kn', ['kxy', 'knn', 'kN', 'in'])).toEqual(['kN', 'knn', 'in']);
});

test('two neighbours swapped are one step', () => {
  expect(nearest('ab', ['ba'])).toEqual(['ba']);
  expect(nearest('abcd', ['badc', 'abdc'])).toEqual(['abdc']);
});

test('no more than asked', () => {
  expect(nearest('a1', ['a2', 'a3', 'a4', 'a5'], 2)).toEqual(['a2', 'a3']);
  expect(nearest('a1', ['a2', 'a3', 'a4', 'a5'])).toHaveLength(3);
});
