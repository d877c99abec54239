import { expect, test } from 'vitest';
import { parseFormula } from '../../src/language/index.ts';
import { type Markup, writeMarkup } from '../../src/markup/index.ts';
import { formulaMath, numbersMath, symbolMath } from '../../src/record/index.ts';

/** What the markup of mathematics reads as: powers and indices marked, fractions with a bar of colons. */
function read(markup: Markup): string {
  return writeMarkup(markup)
    .replace(/<mspace[^>]*\/>/g, ' ')
    .replace(/<mo[^>]*stretchy="false"[^>]*>([()|])<\/mo>/g, '$1')
    .replace(/<mo form="(?:prefix|postfix)" *>([()|])<\/mo>/g, 'tall$1')
    .replace(/<(mfrac|msup|msub|msqrt|mroot)>/g, '$1[')
    .replace(/<\/(mfrac|msup|msub|msqrt|mroot)>/g, ']')
    .replace(/<[^>]*>/g, '')
    .replaceAll('\u2061', '');
}

const symbols = (formula: string): string => read(formulaMath(parseFormula(formula).syntax));

const values: Readonly<Record<string, { readonly number: string; readonly unit: string }>> = {
  E: { number: '883.2', unit: 'kN·m' },
  f: { number: '0.526', unit: '' },
  x: { number: '−3', unit: 'm' },
  α: { number: '84', unit: '°' },
  s: { number: '6.5\u202f×\u202f10⁻⁶', unit: '' },
};
const numbers = (formula: string): string =>
  read(numbersMath(parseFormula(formula).syntax, ({ name }) => values[name]));

test('a sheet or table in front of a name keeps to it', () => {
  expect(writeMarkup(symbolMath('ship.L_BP'))).toContain('<mi class="u">ship.</mi>');
});

test.each([
  [
    'a parenthesis is as tall as a fraction, not as an index',
    '(a_1 + b) * (c / d + 1)',
    '(msub[a1]+b)·tall(mfrac[cd]+1tall)',
  ],
  ['a fraction within a fraction stands on the line', 'a / (b / c)', 'mfrac[ab/c]'],
  ['and keeps the parentheses it needs there', 'a / (b / (c / d))', 'mfrac[ab/(c/d)]'],
  ['an exponent too', 'a^(2 / 7)', 'msup[a2/7]'],
  ['the power of a function stands at its name', 'SIN(θ)^2', 'msup[sin2](θ)'],
  ['that of a choice of several does not', 'MAX(a; b)^2', 'msup[max(a;b)2]'],
  ['nor a power that is no plain number', 'SIN(θ)^n', 'msup[sin(θ)n]'],
  ['joined conditions that are denied keep parentheses', 'NOT(OR(a; b))', 'not (a or b)'],
  ['a root of a root is set as one', '0.5 / SQRT(SQRT(ψ))', 'mfrac[0.5mroot[ψ4]]'],
  ['with parentheses between them, and by the sign of a root', '√(√((SQRT(a + b))))', 'mroot[a+b8]'],
  ['a root within what a root is taken of is not', 'SQRT(a * SQRT(b))', 'msqrt[a·msqrt[b]]'],
  ['a percent sign keeps off its number', '5% * a', '5 %·a'],
  ['a degree sign does not', '5 deg + α', '5°+α'],
  ['thousands are apart in what is written in a formula', 'a / 1200000', 'mfrac[a1\u202f200\u202f000]'],
  ['and small numbers are powers of ten', '0.0000065 * a', '6.5\u202f×\u202f10⁻⁶·a'],
])('%s', (_, formula, set) => {
  expect(symbols(formula)).toBe(set);
});

test.each([
  ['a product of numbers has a cross, for the dot is the units’', 'E * f', '883.2 kN·m×0.526'],
  ['a negative number stands in parentheses', 'f - x', '0.526−(−3 m)'],
  ['so does a quantity with a power', 'E^2', 'msup[(883.2 kN·m)2]'],
  ['and a power of ten with one', 's^2', 'msup[(6.5\u202f×\u202f10⁻⁶)2]'],
  ['an angle has its sign', 'SIN(α)', 'sin(84°)'],
])('%s', (_, formula, set) => {
  expect(numbers(formula)).toBe(set);
});
