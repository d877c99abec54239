import { expect, test } from 'vitest';
import { readUnit, standardUnits } from '../../src/units/index.ts';
import { expectClose, expectProblems, fixtureFile, workOut } from './fixture.ts';

test.each(fixtureFile('unit-texts/read.txt'))('reads $columns', ({ place, columns }) => {
  const [text = '', dimension = '', factor = '', angle = '', point] = columns;
  const unit = readUnit(text, standardUnits);
  if (!unit.ok) throw new Error(`${place}: ${unit.problems[0]?.message}`);
  expect(unit.value.dimension.key).toBe(dimension);
  expectClose(unit.value.factor, workOut(factor), place);
  expect(unit.value.angle).toBe(angle === 'angle');
  expect(unit.value.point).toBe(point);
});

test.each(fixtureFile('unit-texts/refused.txt'))('refuses $columns', ({ place, columns }) => {
  const [text = '', expectation = ''] = columns;
  const unit = readUnit(text, standardUnits);
  if (unit.ok) throw new Error(`${place}: read as ${unit.value.dimension.key}`);
  expectProblems(unit.problems, expectation, place);
});

test('a unit that is too long is refused', () => {
  const unit = readUnit('m·'.repeat(100), standardUnits);
  expect(unit.ok ? [] : unit.problems.map((p) => p.code)).toEqual(['unit-too-long']);
});

test('a unit of 120 characters is not', () => {
  const unit = readUnit(`${'m·'.repeat(59)}mm`, standardUnits);
  expect(unit.ok && unit.value.dimension.key).toBe('L^60');
});

test('every factor of a product is counted', () => {
  const unit = readUnit('m·m·m·s/(s·s)', standardUnits);
  expect(unit.ok && unit.value.dimension.key).toBe('L^3 T^-1');
});
