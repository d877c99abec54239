import { describe, expect, test } from 'vitest';
import { newSheet, type Sheet } from './sheet.ts';

function sheetWith(formula: string): Sheet {
  const sheet = newSheet();
  sheet.given('A', -4, 'm^2');
  sheet.given('a', 4, 'ft');
  sheet.given('b', 0, 'ft');
  sheet.given('F', 1.7e305, 'kN');
  sheet.given('n', 5);
  sheet.given('kind', 'clay');
  sheet.given('angle', 200, 'deg');
  sheet.given('t', 20, 'degC');
  sheet.given('blank', null, 'kN');
  sheet.table('curve', 3);
  sheet.column('curve.x', [1, 2, 3], 'ft');
  sheet.column('curve.y', [10, 20, 30], 'kN');
  sheet.column('curve.soil', ['sand', 'silt', 'peat']);
  sheet.calc('result', formula);
  sheet.run();
  return sheet;
}

// What is written, in the units it is written in; the span points at the operand or argument at fault.
const cases: readonly (readonly [formula: string, at: string, message: string])[] = [
  ['12 kN / b', 'b', '“b” is zero, and “12 kN / b” divides by it'],
  ['1 / (n - 5)', 'n - 5', '“n - 5” is zero, and “1 / (n - 5)” divides by it'],
  ['SQRT(A)', 'A', 'SQRT: a square root needs a number that is not negative (“A” is -4 m^2)'],
  ['A^0.5', 'A^0.5', '“A^0.5” has no value: “A” is -4 m^2, and the exponent is 0.5'],
  ['b^(-1)', 'b^(-1)', '“b^(-1)” has no value: “b” is 0 ft, and the exponent is -1'],
  ['F * 10', 'F * 10', '“F * 10” is too large a number to hold'],
  ['LN(n - 5)', 'n - 5', 'LN: a logarithm needs a number above zero (“n - 5” is 0)'],
  [
    'IFS(n < 0; 1; n > 9; 2)',
    'IFS(n < 0; 1; n > 9; 2)',
    'the formula says nothing for where none of “n < 0” and “n > 9” holds: n is 5',
  ],
  [
    'IFS(b >= a; 1)',
    'IFS(b >= a; 1)',
    '“b”, 0 ft, is less than “a”, 4 ft, and the formula has no value for that',
  ],
  [
    'IFS(a <= b; 1)',
    'IFS(a <= b; 1)',
    '“a”, 4 ft, is more than “b”, 0 ft, and the formula has no value for that',
  ],
  [
    'IFS(a < b; 1)',
    'IFS(a < b; 1)',
    '“a”, 4 ft, is no less than “b”, 0 ft, and the formula has no value for that',
  ],
  [
    'IFS(b > a; 1)',
    'IFS(b > a; 1)',
    '“b”, 0 ft, is no more than “a”, 4 ft, and the formula has no value for that',
  ],
  [
    'IFS(MAX(curve.x) < b; 1)',
    'IFS(MAX(curve.x) < b; 1)',
    'the formula says nothing for where “MAX(curve.x) < b” does not hold: b is 0 ft',
  ],
  [
    'MINIF(curve.y >= n * 10 kN; curve.x)',
    'MINIF(curve.y >= n * 10 kN; curve.x)',
    'there is no least “curve.x”: none of the 3 rows meets “curve.y >= n * 10 kN” (n is 5)',
  ],
  [
    'n + MAXIF(AND(curve.soil = kind; curve.x > b); curve.x / 1 ft)',
    'MAXIF(AND(curve.soil = kind; curve.x > b); curve.x / 1 ft)',
    'there is no greatest “curve.x / 1 ft”: none of the 3 rows meets “AND(curve.soil = kind; curve.x > b)” (kind is "clay" and b is 0 ft)',
  ],
  [
    'AVERAGEIF(curve.soil = "rock"; curve.y)',
    'AVERAGEIF(curve.soil = "rock"; curve.y)',
    'there is no mean “curve.y”: none of the 3 rows meets “curve.soil = "rock"”',
  ],
  ['SWITCH(n; 1; 2; 3; 4)', 'SWITCH(n; 1; 2; 3; 4)', 'the formula says nothing for this case of “n”: n is 5'],
  ['CHOOSE(n; 1; 2)', 'CHOOSE(n; 1; 2)', 'CHOOSE: the index “n” is the place of none of its values: n is 5'],
  [
    'LOOKUP(9 ft; curve.x; curve.y; "exact")',
    '9 ft',
    '9 ft stands in no row of “curve.x”; the nearest there is 3 ft',
  ],
  [
    'LOOKUP(kind; curve.soil; curve.y; "exact")',
    'kind',
    '“kind” is "clay", which stands in no row of “curve.soil” (there: "sand", "silt" and "peat")',
  ],
  ['LOOKUP(1 m; curve.x; curve.y; "at or above")', '1 m', 'LOOKUP: the value is above the last key, 0.914 m'],
  ['MATCH(b; curve.x; "at or below")', 'b', 'MATCH: the value is below the first key, 1 ft (“b” is 0 ft)'],
  [
    'INTERPOLATE(n * 1 ft; curve.x; curve.y)',
    'n * 1 ft',
    'INTERPOLATE: the table ends at 3 ft, and more is wanted; change what it is looked up for, or add the rows that its source has there (“n * 1 ft” is 5 ft)',
  ],
  [
    'INTERPOLATE(b; curve.x; curve.y)',
    'b',
    'INTERPOLATE: the table begins at 1 ft, and less is wanted; change what it is looked up for, or add the rows that its source has there (“b” is 0 ft)',
  ],
  [
    'INTERPOLATE2(b; 1 ft; curve.x; curve.x; curve.y)',
    'b',
    'INTERPOLATE2: the table covers x from 1 ft to 3 ft, and the value wanted lies outside; change what it is looked up for, or add the rows that its source has there (“b” is 0 ft)',
  ],
  ['INDEX(curve.y; n)', 'n', 'INDEX: row 5 is asked for, and the rows are 1 to 3 (“n” is 5)'],
  ['blank * 2', 'blank', '“blank” is blank'],
  ['IF(kind = "sand"; 1 kN; blank)', 'blank', '“blank” is blank'],
];

describe.each(cases)('%s', (formula, at, message) => {
  test(`says: ${message}`, () => {
    const reading = sheetWith(formula).read('result');
    if (!('problem' in reading)) throw new Error(`it is ${reading.status}`);
    expect(reading.problem.message).toBe(message);
    expect(formula.slice(reading.problem.from, reading.problem.to)).toBe(at);
    expect(reading.problem.hints.length).toBeLessThanOrEqual(1);
  });
});

test('where two names are compared, the hint says which is too small and what to do', () => {
  const reading = sheetWith('IFS(a <= b; 1)').read('result');
  if (!('problem' in reading)) throw new Error(`it is ${reading.status}`);
  expect(reading.problem.hints).toEqual([
    '“b” is too small or “a” too large: change what they come from, or have the formula say what holds then, as its last argument',
  ]);
});
