import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import { unit as mathjsUnit } from 'mathjs';
import { expect, test } from 'vitest';
import { readUnit, standardUnits, type Unit } from '../../src/units/index.ts';
import { UNIT_TABLE } from '../../src/units/unit-table.ts';
import { ORACLE_TABLE } from './oracle-table.ts';

// Both libraries work in float64 through several factors: a few units in the last place (2.2e-16 each) are lost.
const ROUNDING = 3e-15;
const ucum = UcumLhcUtils.getInstance();

const withUcum = ORACLE_TABLE.flatMap(({ unit, ucum: code }) => (code === undefined ? [] : [{ unit, code }]));
const withMathjs = ORACLE_TABLE.filter((row) => row.mathjs !== undefined);

test.each(withUcum)('$unit agrees with UCUM $code', ({ unit, code: [code, si] }) => {
  const converted = ucum.convertUnitTo(code, 1, si);
  expect(converted.status).toBe('succeeded');
  expect(relativeError(unitOf(unit).factor, Number(converted.toVal))).toBeLessThanOrEqual(ROUNDING);
});

test.each(withMathjs)('$unit agrees with mathjs $mathjs', ({ unit, mathjs, mathjsTolerance }) => {
  const [expression = '', si = ''] = mathjs ?? [];
  const converted = mathjsUnit(/^\d/.test(expression) ? expression : `1 ${expression}`).toNumber(si);
  const tolerance = mathjsTolerance?.relative ?? ROUNDING;
  expect(relativeError(unitOf(unit).factor, converted), mathjsTolerance?.reason).toBeLessThanOrEqual(
    tolerance,
  );
});

test.each(withMathjs.filter((row) => row.mathjsTolerance !== undefined))(
  'the wider tolerance of $unit against mathjs is needed',
  ({ unit, mathjs }) => {
    const [expression = '', si = ''] = mathjs ?? [];
    expect(relativeError(unitOf(unit).factor, mathjsUnit(`1 ${expression}`).toNumber(si))).toBeGreaterThan(
      ROUNDING,
    );
  },
);

test.each([
  { text: 'degF', code: '[degF]', x: 68 },
  { text: 'degF', code: '[degF]', x: -40 },
  { text: 'degC', code: 'Cel', x: 21.5 },
])('$x $text agrees with UCUM as a temperature', ({ text, code, x }) => {
  const { factor, offset } = unitOf(text);
  expect(
    relativeError(x * factor + offset, Number(ucum.convertUnitTo(code, x, 'K').toVal)),
  ).toBeLessThanOrEqual(ROUNDING);
});

test('every unit but the coherent and the counted ones has an oracle', () => {
  const compared = new Set(ORACLE_TABLE.map((row) => row.unit));
  const alone = UNIT_TABLE.filter((row) => row.point === undefined && !compared.has(row.symbol));
  expect(alone.map((row) => row.symbol).sort()).toEqual(
    ['J', 'K', 'N', 'Pa', 'W', 'ea', 'kg', 'ls', 'm', 'rad', 's', 'ΔdegC', 'ΔdegF'].sort(),
  );
});

function relativeError(actual: number, expected: number): number {
  return Math.abs(actual - expected) / Math.abs(expected);
}

function unitOf(text: string): Unit {
  const unit = readUnit(text, standardUnits);
  if (!unit.ok) throw new Error(`no unit ${text}`);
  return unit.value;
}
