import { describe, expect, test } from 'vitest';
import { chanceOf } from './random-book.ts';
import { newSheet } from './sheet.ts';

const FORMS = [
  'a * b + c',
  '(a - b) / (c + 0.5) * k',
  'k - a * (b - k) / 3',
  '-(a) + SQRT(ABS(b)) - c^2',
  'IF(a > b; a - c; IF(b > c; SQRT(b); a / c))',
  'IFS(a < b; a; b < c; b; c < a; c / (a - 2))',
  'LESSER(a; b; c) + GREATER(a; k)',
  'MIN(a; b; k) * MAX(c; 1) + SUM(a; b)',
  'IF(AND(a > 0; OR(b > c; c = 2)); 1; 0)',
  'SUM(LESSER(a; u.x) * u.y - k) + b',
  'SUM(u.y) * a + AVERAGE(u.x)',
  'COUNTIF(u.x > a) + MAX(u.y * b)',
  'INTERPOLATE(a; u.x; u.y; "hold") * 2',
  'SUM(INTERPOLATE(u.x; v.x; v.y; "hold") * a)',
  'SUM(u.x * a - (u.y + u.x) * b) * SUM(v.y)',
  'IF(ISBLANK(c); a; b / c)',
  '1 / (a - 1) + 1 / (b - 2)',
  'ROUND(a * 1.37; 1) + MOD(b; 3)',
];

// Two blocks and a part of a third.
const ROWS = 2500;
const SAMPLE = 150;

describe.each(FORMS)('%s', (formula) => {
  test('comes out in blocks of rows as it does one value at a time', () => {
    const chance = chanceOf(formula.length);
    const draw = () => (chance.oneIn(15) ? null : chance.below(24) / 4 - 1);
    const columns = { a: draws(draw), b: draws(draw), c: draws(draw) };
    const sheet = newSheet();
    const line = newSheet();
    for (const one of [sheet, line]) {
      one.given('k', 1.25);
      one.table('u', 4);
      one.column('u.x', [-1, 0.5, 2, 4]);
      one.column('u.y', [3, 1, 4, 1.5]);
      one.table('v', 3);
      one.column('v.x', [0, 1, 3]);
      one.column('v.y', [2, 7, 1]);
    }
    sheet.table('t', ROWS);
    for (const [name, values] of Object.entries(columns)) sheet.column(`t.${name}`, values);
    sheet.calcColumn('t.result', formula);
    sheet.run();
    for (const name of ['a', 'b', 'c']) line.given(name, 0);
    line.calc('result', formula);
    const rows = sheet.engine.readColumn('s.t.result');
    let values = 0;
    for (let sample = 0; sample < SAMPLE; sample += 1) {
      const row = sample < 3 ? ([0, 1023, 1024][sample] ?? 0) : chance.below(ROWS);
      for (const [name, column] of Object.entries(columns)) line.given(name, column[row] ?? null);
      line.run();
      const one = line.read('result');
      const other = rows.at(row);
      if (one.status === 'ok') values += 1;
      if ('problem' in one && 'problem' in other) expect(other.problem.code).toBe(one.problem.code);
      else expect(other).toEqual(one);
    }
    expect(values).toBeGreaterThan(SAMPLE / 3);
  });
});

function draws(draw: () => number | null): readonly (number | null)[] {
  return Array.from({ length: ROWS }, draw);
}
