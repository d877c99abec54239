import { expect, test } from 'vitest';
import { runFormula } from '../../src/cli/pages/run-formula.ts';
import { parseFormula } from '../../src/language/index.ts';

const codesOf = (formula: string) => parseFormula(formula).problems.map(({ code }) => code);
const nested = (depth: number) => `${'('.repeat(depth)}x${')'.repeat(depth)}`;
const sum = (terms: number) => Array.from({ length: terms }, () => 'x').join(' + ');

test('a formula has at most 10000 characters', () => {
  expect(codesOf(`x${' '.repeat(9999)}`)).toEqual([]);
  expect(codesOf(`x${' '.repeat(10_000)}`)).toEqual(['formula-too-long']);
});

test('a formula has at most 1000 signs', () => {
  expect(codesOf(`MAX(${'x; '.repeat(990)}x)`)).toEqual([]);
  expect(codesOf(`MAX(${'x; '.repeat(1000)}x)`)).toEqual(['formula-too-many-parts']);
});

test('parts stand at most 250 deep in one another, and a formula as deep as that computes', () => {
  expect(codesOf(nested(260))).toEqual(['formula-too-deep']);
  expect(codesOf(sum(260))).toEqual(['formula-too-deep']);
  for (const formula of [nested(240), sum(240)]) {
    const expected = formula.startsWith('(') ? 2 : 480;
    expect(runFormula({ formula, given: { x: '2 m' }, unit: 'm' })).toEqual({
      value: expected,
      unit: 'm',
      problems: [],
    });
  }
});
