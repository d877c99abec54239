import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CheckedFormula, checkFormula, parseFormula, printSyntax } from '../../src/language/index.ts';
import { type Random, randomFrom, worldScope } from './generate/index.ts';
import { SEED } from './seed.ts';
import { templateFormulas } from './template-formulas.ts';

const scopes = [worldScope(), worldScope('layers')];

/** Reads and checks a text in every way there is; what it says must point into the text and its tree must print. */
function survive(text: string): readonly CheckedFormula[] {
  const parsed = parseFormula(text);
  if (parsed.text.length !== text.length) throw new Error(`the text changes its length: ${text}`);
  printSyntax(parsed.syntax);
  return scopes.map((scope) => {
    const checked = checkFormula(text, scope);
    for (const { from, to, message, fixes } of checked.problems) {
      if (!(from >= 0 && from <= to && to <= text.length))
        expect({ text, from, to }).toEqual('a place in the text');
      if (!/\S/.test(message) || /undefined|NaN|\[object/.test(message))
        expect({ text, message }).toEqual('a sentence');
      for (const fix of fixes)
        if (!(fix.from >= 0 && fix.from <= fix.to && fix.to <= text.length))
          expect({ text, fix }).toEqual('a place');
    }
    const failed = checked.problems.some(({ severity }) => severity === 'error');
    if (failed !== (checked.typed.type.kind === 'unknown'))
      expect({ text, failed }).toEqual('no type with problems only');
    return checked;
  });
}

const tokens = [
  ...'()+-*/^%&=<>;,."\'_√²³·÷≤≠°$€#!?@[]{}|~\\:`\n\t',
  '<=',
  '>=',
  '<>',
  '==',
  '1',
  '0',
  '2.5',
  '1e5',
  '1e999',
  '12 ft',
  '5 (kN/m)',
  '5 (',
  'm/s',
  'ft',
  'kN',
  'deg',
  'x_1',
  'y_3',
  'α_1',
  'z_mud',
  'T_air',
  'start',
  'soil',
  'wet',
  'layers',
  'layers.f',
  'layers.kind',
  'rates.size',
  'f',
  'n',
  'SUM(',
  'IF(',
  'LOOKUP(',
  'KNOWN(',
  'ABOVE(',
  'SERIES(',
  'TEXT(',
  'POWER(',
  'IFS(',
  'SWITCH(',
  'CHOOSE(',
  'ISBLANK(',
  'INDEX(',
  'ROW()',
  'PI()',
  'nosuch(',
  '"exact"',
  '"at or below"',
  '"kN"',
  'TRUE',
  'FALSE',
  '; ',
  ' ',
  '  ',
];

function soup(random: Random): string {
  return Array.from({ length: 1 + random.below(14) }, () => random.pick(tokens)).join(random.pick(['', ' ']));
}

test('never throws on any characters', () => {
  const characters = fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => void survive(text));
  fc.assert(characters, { seed: SEED, numRuns: 3000 });
});

test('never throws on tokens in any order', () => {
  const random = randomFrom(SEED + 5);
  for (let n = 0; n < 10_000; n += 1) survive(soup(random));
});

test('never throws on a half-written or mistyped formula of a template', { timeout: 300_000 }, () => {
  const random = randomFrom(SEED + 6);
  expect(templateFormulas.length).toBeGreaterThan(100);
  // Each third one, for many are alike.
  const some = [...new Set(templateFormulas)].filter((_, at) => at % 3 === 0);
  for (const formula of some) {
    for (let length = 0; length < formula.length; length += 1 + random.below(24))
      survive(formula.slice(0, length));
    for (let n = 0; n < 2; n += 1) {
      const at = random.below(formula.length);
      survive(formula.slice(0, at) + formula.slice(at + 1 + random.below(3)));
      survive(formula.slice(0, at) + random.pick(tokens) + formula.slice(at));
    }
  }
});

test.each([
  ['open parentheses', '('.repeat(9000)],
  ['nested parentheses', `${'('.repeat(4000)}1${')'.repeat(4000)}`],
  ['minus signs', `${'-'.repeat(9000)}1`],
  ['roots', `${'√'.repeat(9000)}4`],
  ['percent signs', `1${'%'.repeat(9000)}`],
  ['nested calls', `${'ABS('.repeat(2000)}1${')'.repeat(2000)}`],
  ['half-written calls', 'IF(x_1 > y_1; '.repeat(600)],
  ['a long sum', `x_1${' + x_1'.repeat(1500)}`],
  ['a long product', `x_0${'*x_0'.repeat(2000)}`],
  ['a long chain of powers', `x_0${'^2'.repeat(4000)}`],
  ['a long chain of comparisons', `1${'<1'.repeat(4000)}`],
  ['roots of a quantity in calls', `${'SQRT('.repeat(90)}x_1${')'.repeat(90)}`],
  ['powers of a quantity in groups', `${'('.repeat(60)}x_1${'^99)'.repeat(60)}`],
  ['digits', '9'.repeat(9000)],
  ['zeros after the point', `0.${'0'.repeat(9000)}1`],
  ['a long exponent', `1e${'9'.repeat(9000)}`],
  ['commas between digits', '1,'.repeat(4500)],
  ['feet marks', "1'".repeat(4500)],
  ['inches', '6" '.repeat(3000)],
  ['quotation marks', '"'.repeat(9999)],
  ['a long name', 'x'.repeat(9000)],
  ['a name of many parts', 'x.'.repeat(4500)],
  ['words side by side', 'x_1 '.repeat(2200)],
  ['numbers side by side', '1 '.repeat(4500)],
  ['a long unit', `1 (${'m·'.repeat(3000)}m)`],
  ['a unit in many parentheses', `1 ${'('.repeat(3000)}m${')'.repeat(3000)}`],
  ['spaces', ' '.repeat(9999)],
  ['a long text', `"${'clay '.repeat(1500)}"`],
  ['separators', `MAX(${';'.repeat(5000)})`],
  ['many arguments', `MAX(${'1; '.repeat(2500)}1)`],
  ['a megabyte', 'x_1 + '.repeat(180_000)],
  ['names of objects', '__proto__ + constructor + toString(1) + hasOwnProperty + valueOf()'],
  ['half a character', 'x_1 + \ud83d'],
  ['a null character', 'x_1 \u0000 + 1'],
])('%s end in problems or a value', (_, text) => {
  for (const { problems, typed } of survive(text))
    expect(problems.length > 0 || typed.type.kind !== 'unknown').toBe(true);
});
