import { expect, test } from 'vitest';
import { parseFormula, printSyntax } from '../../../src/language/index.ts';
import { formulaLines } from '../../../src/record/math/formula-lines.ts';
import { formulaWidth } from '../../../src/record/math/formula-width.ts';

/** The lines of a formula as text, indented by two spaces an em and a half. */
function set(formula: string, most: number): readonly string[] {
  const { syntax } = parseFormula(formula);
  return formulaLines(syntax, most).map(({ indent, pieces }) => {
    const text = pieces
      .map((piece) => (piece.kind === 'node' ? printSyntax(piece.node) : piece.text))
      .join(' ');
    return `${'  '.repeat(Math.round(indent / 1.5))}${text.trim()}`;
  });
}

test('what fits stays on one line', () => {
  expect(set('a + b', 20)).toEqual(['a + b']);
});

test('a sum breaks in front of its signs, as few times as it can', () => {
  expect(set('alpha_1 + beta_2 - gamma_3 + delta_4', 9)).toEqual(['alpha_1 + beta_2', '− gamma_3 + delta_4']);
});

test('a comparison breaks in front of its sign', () => {
  expect(set('alpha_1 + beta_2 <= gamma_3 + delta_4', 9)).toEqual([
    'alpha_1 + beta_2',
    '≤ gamma_3 + delta_4',
  ]);
});

test('cases stand one after another, inner ones further in', () => {
  expect(set('IF(ISBLANK(stated); IF(k = "long name"; first; second); stated)', 14)).toEqual([
    'if  ISBLANK(stated) :',
    '  if  k = "long name" :   first',
    '  otherwise   second',
    'otherwise   stated',
  ]);
});

test('a factor that is a choice stands in parentheses when it breaks', () => {
  expect(set('n * IF(ISBLANK(stated); first_value; second_value) * k', 13)).toEqual([
    'n',
    '· ( if  ISBLANK(stated) :',
    '  first_value',
    'otherwise   second_value ) · k',
  ]);
});

test('arguments of a long call break after a semicolon', () => {
  expect(set('LOOKUP(first_key; table_1.column_a; table_1.column_b; "exact")', 13)).toEqual([
    'LOOKUP ( first_key ;',
    '  table_1.column_a ;',
    '  table_1.column_b ; "exact" )',
  ]);
});

test('the arguments of a call that has no room beside its name stand below it', () => {
  expect(set('EXP(INTERPOLATE(LN(ship.mass); data.curve_1.x; data.curve_1.y))', 15)).toEqual([
    'exp ( INTERPOLATE (',
    '    LN(ship.mass) ;',
    '    data.curve_1.x ;',
    '    data.curve_1.y ) )',
  ]);
});

test('conditions break in front of their words, and inner ones keep their parentheses', () => {
  expect(set('AND(rule = "one way"; OR(kind = "second"; NOT(third > 4)))', 13)).toEqual([
    'rule = "one way"',
    'and  ( kind = "second"',
    'or  NOT(third > 4) )',
  ]);
});

test('what stands between bars, and a power of parentheses, break inside them', () => {
  expect(set('ABS(alpha_1 + beta_2 - gamma_3)', 8)).toEqual(['| alpha_1 + beta_2', '− gamma_3 |']);
  expect(set('-(alpha_1 + beta_2 - gamma_3)^2', 9)).toEqual(['− ( alpha_1 + beta_2', '− gamma_3 )']);
});

test('a case whose text has no room beside its subject breaks in front of the equals sign', () => {
  expect(set('SWITCH(INDEX(layers.rule; k); "as in the manual"; a; b)', 14)).toEqual([
    'if  INDEX(layers.rule; k)',
    '= "as in the manual" :   a',
    'otherwise   b',
  ]);
});

test('a text with no room for all of its words breaks between them', () => {
  expect(set('IF(zone = "sea, low water and splash"; a; b)', 11)).toEqual([
    'if  zone',
    '= “sea, low water',
    'and splash” :   a',
    'otherwise   b',
  ]);
});

test('a fraction is as wide as its wider half, and breaks at its bar only where it must', () => {
  const { syntax } = parseFormula('(a + b + c + d) / e');
  expect(set('(a + b + c + d) / e', 8)).toHaveLength(1);
  expect(set('(alpha + beta + gamma + delta) / epsilon', 13)).toEqual([
    '( alpha + beta + gamma',
    '+ delta ) / epsilon',
  ]);
  expect(formulaWidth(syntax)).toBeCloseTo(formulaWidth(parseFormula('a + b + c + d').syntax) + 0.3, 9);
});

test('numbers put in are judged by their own text', () => {
  const { syntax } = parseFormula('a + b');
  expect(formulaWidth(syntax, () => '123 456 kN')).toBeGreaterThan(2 * formulaWidth(syntax));
});

/** How often the width of a name is asked for while a formula is broken: the work, without a clock. */
function workOf(formula: string, most: number): number {
  let work = 0;
  formulaLines(parseFormula(formula).syntax, most, ({ name }) => {
    work += 1;
    return name;
  });
  return work;
}

const nested = (depth: number, around: (inner: string, at: number) => string): string =>
  Array.from({ length: depth }).reduce<string>((inner, _, at) => around(inner, at), 'a');

test.each([
  ['choices', 40, (inner: string, at: number) => `IF(n > ${at}; b + ${at}; ${inner})`],
  ['choices within a product', 40, (inner: string, at: number) => `n * IF(n > ${at}; b; ${inner})`],
  [
    'conditions',
    40,
    (inner: string, at: number) => (at % 2 ? `AND(n > ${at}; ${inner})` : `OR(n > ${at}; ${inner})`),
  ],
  ['calls', 40, (inner: string, at: number) => `MAX(${inner}; n + ${at})`],
])('%s within each other take no more work for each level than for the last', (_, depth, around) => {
  for (const most of [12, 30, 60]) {
    const names = 3 * depth;
    // The width of what stands within is judged anew at each level, and in each of the tries there are.
    expect(workOf(nested(depth, around), most)).toBeLessThan(names * names * 4 + 60 * names * 4);
  }
});

test('200 conditions in pairs are broken at once', () => {
  const pairs = Array.from({ length: 200 }, (_, at) => `AND(x_${at} > 1; y_${at} < 2)`);
  expect(workOf(`OR(${pairs.join('; ')})`, 30)).toBeLessThan(400 * 20);
});
