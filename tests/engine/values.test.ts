import { describe, expect, test } from 'vitest';
import { newSheet, type Sheet } from './sheet.ts';

const GIVENS = { a: 6, b: 4, z: 0, n: -8, s: 'sand', Q: 'Sand ', yes: true } as const;

/** The formula as a line of a sheet, and on each of three rows of a table. */
function bothWays(formula: string): readonly (number | string | boolean)[] {
  const line = newSheet();
  for (const [name, value] of Object.entries(GIVENS)) line.given(name, value, '');
  line.calc('result', formula);
  line.run();
  return [shown(line), ...columnOf(formula).rows('t.result')];
}

function columnOf(formula: string): Sheet {
  const sheet = newSheet();
  sheet.table('t', 3);
  for (const [name, value] of Object.entries(GIVENS)) {
    sheet.column(`t.${name}`, [value, value, value], typeof value === 'string' ? 'text' : '');
  }
  sheet.calcColumn('t.result', formula);
  sheet.run();
  return sheet;
}

function shown(sheet: Sheet): number | string | boolean {
  const reading = sheet.read('result');
  return reading.status === 'ok' ? reading.value : sheet.codeOf('result');
}

// Worked by hand from a = 6, b = 4, z = 0, n = -8, s = "sand", Q = "Sand ", yes = TRUE.
const cases: readonly (readonly [formula: string, value: number | string | boolean])[] = [
  ['a + b', 10],
  ['a - b', 2],
  ['a * b', 24],
  ['a / b', 1.5],
  ['-(a)', -6],
  ['0 * n', 0],
  ['(a)%', 0.06],
  ['7%', 0.07],
  ['a^2', 36],
  ['b^0.5', 2],
  ['2^b', 16],
  ['n^(1/3)', 'power-domain'],
  ['n^3', -512],
  ['z^(-1)', 'power-domain'],
  ['a^(b - b)', 1],
  ['SQRT(b)', 2],
  ['SQRT(n)', 'outside-domain'],
  ['a / z', 'division-by-zero'],
  ['z / z', 'division-by-zero'],
  ['1.5e308 * a', 'too-large'],
  ['a = b', false],
  ['a <> b', true],
  ['a < b', false],
  ['a <= b', false],
  ['a > b', true],
  ['a >= b', true],
  ['0.1 + 0.2 = 0.3', true],
  ['a < 6.000000000001', false],
  ['a >= 6.000000000001', true],
  ['a < 6.00000000001', true],
  ['a - 3 * 2 <= 0', true],
  ['yes = (a > b)', true],
  ['s = Q', true],
  ['s <> Q', false],
  ['s = "sandy"', false],
  ['"alpha" < "Beta"', true],
  ['s & Q', 'sandSand '],
  ['LEN(Q)', 5],
  ['UPPER(s)', 'SAND'],
  ['MID(s; 2; 2)', 'an'],
  ['LEFT(s; n)', 'outside-domain'],
  ['MIN(a; b; n)', -8],
  ['MAX(a; b; n)', 6],
  ['SUM(a; b; n)', 2],
  ['COUNT(a; b; n)', 3],
  ['LESSER(a; b)', 4],
  ['GREATER(a; b; n)', 6],
  ['AND(a > b; yes)', true],
  ['OR(a < b; NOT(yes))', false],
  ['XOR(a > b; yes)', false],
  ['NOT(yes)', false],
  ['IF(a > b; a; b)', 6],
  ['IF(yes; s; "none")', 'sand'],
  ['IFS(a < b; 1; a > b; 2)', 2],
  ['IFS(a < b; 1; b > a; 2)', 'no-branch'],
  ['IFS(a < b; 1; b > a; 2; TRUE; 3)', 3],
  ['SWITCH(s; "clay"; 1; "SAND"; 2; 3)', 2],
  ['SWITCH(s; "clay"; 1; "silt"; 2)', 'no-branch'],
  ['CHOOSE(3; a; b; n)', -8],
  ['CHOOSE(4; a; b; n)', 'no-branch'],
  ['ROUND(a / b * 1.01; 1)', 1.5],
  ['MOD(n; b - 1)', 1],
  ['ABS(n)', 8],
  ['PI() * 0 + 1', 1],
  ['LN(z)', 'outside-domain'],
  ['DATE(2026; 11; 25) - DATE(2026; 11; 24)', 86400],
];

describe.each(cases)('%s', (formula, value) => {
  test(`is ${value}, on a line and on every row`, () => {
    const close = typeof value === 'number' ? expect.closeTo(value, 12) : value;
    expect(bothWays(formula)).toEqual([close, close, close, close]);
  });
});

test('a formula without columns fills every row of its column', () => {
  const sheet = newSheet();
  sheet.given('a', 5);
  sheet.table('t', 3);
  sheet.calcColumn('t.same', 'a * 2');
  sheet.calcColumn('t.text', '"m"');
  sheet.run();
  expect(sheet.rows('t.same')).toEqual([10, 10, 10]);
  expect(sheet.rows('t.text')).toEqual(['m', 'm', 'm']);
});

test('a single value is spread over the rows it is combined with', () => {
  const sheet = newSheet();
  sheet.given('rate', 2);
  sheet.table('t', 4);
  sheet.column('t.x', [1, 2, 3, 4]);
  sheet.calcColumn('t.up', 'x * rate + 1');
  sheet.calcColumn('t.down', 'rate / x');
  sheet.calcColumn('t.less', '10 - x');
  sheet.calcColumn('t.pow', 'rate^x');
  sheet.run();
  expect(sheet.rows('t.up')).toEqual([3, 5, 7, 9]);
  expect(sheet.rows('t.down')).toEqual([2, 1, 2 / 3, 0.5]);
  expect(sheet.rows('t.less')).toEqual([9, 8, 7, 6]);
  expect(sheet.rows('t.pow')).toEqual([2, 4, 8, 16]);
});

test('values are kept in SI and points are points', () => {
  const sheet = newSheet();
  sheet.given('d', 12, 'ft');
  sheet.given('t', 20, 'degC');
  sheet.given('e', 10, 'ft MLLW');
  sheet.calc('warm', 't + 5 K');
  sheet.calc('half', 'd / 2');
  sheet.calc('high', 'e > e - 1 ft');
  sheet.run();
  expect(sheet.read('half')).toEqual({ status: 'ok', value: expect.closeTo(1.8288, 12) });
  expect(sheet.read('warm')).toEqual({ status: 'ok', value: expect.closeTo(298.15, 9) });
  expect(sheet.read('high')).toEqual({ status: 'ok', value: true });
});
