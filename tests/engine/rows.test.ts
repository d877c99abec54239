import { describe, expect, test } from 'vitest';
import { newSheet } from './sheet.ts';

test('ABOVE is the row before, and the first value on the first row', () => {
  const sheet = newSheet();
  sheet.table('t', 4);
  sheet.column('t.bottom', [2, 5, null, 9], 'm');
  sheet.calcColumn('t.top', 'ABOVE(bottom; 0 m)');
  sheet.calcColumn('t.thickness', 'bottom - ABOVE(bottom; 0 m)');
  sheet.run();
  expect(sheet.rows('t.top')).toEqual([0, 2, 5, 'blank-cell']);
  expect(sheet.rows('t.thickness')).toEqual([2, 3, 'blank-cell', 'blank-cell']);
});

test('a circle of columns through ABOVE is computed row by row', () => {
  const sheet = newSheet();
  sheet.table('t', 4);
  sheet.column('t.thickness', [2, 3, 4, 1], 'm');
  sheet.declare('t.bottom', 'm');
  sheet.calcColumn('t.top', 'ABOVE(bottom; 0 m)');
  sheet.calcColumn('t.bottom', 'top + thickness');
  sheet.run();
  expect(sheet.rows('t.top')).toEqual([0, 2, 5, 9]);
  expect(sheet.rows('t.bottom')).toEqual([2, 5, 9, 10]);
  sheet.patch('t.thickness', 2, [null], 'm');
  sheet.run();
  expect(sheet.rows('t.bottom')).toEqual([2, 5, 'blank-cell', 'waiting-on']);
  sheet.patch('t.thickness', 2, [6], 'm');
  sheet.run();
  expect(sheet.rows('t.bottom')).toEqual([2, 5, 11, 12]);
});

test('a column may be its own row above', () => {
  const sheet = newSheet();
  sheet.given('start', 1);
  sheet.table('t', 20);
  sheet.declare('t.f');
  sheet.declare('t.g');
  sheet.calcColumn('t.f', 'ABOVE(f; 1) + ABOVE(g; 0)');
  sheet.calcColumn('t.g', 'ABOVE(f; start)');
  sheet.run();
  // Fibonacci: f(n) = f(n-1) + f(n-2).
  const f: number[] = [];
  const g: number[] = [];
  for (let row = 0; row < 20; row += 1) {
    f.push(row === 0 ? 1 : (f[row - 1] as number) + (g[row - 1] as number));
    g.push(row === 0 ? 1 : (f[row - 1] as number));
  }
  expect(f.slice(0, 6)).toEqual([1, 2, 3, 5, 8, 13]);
  expect(sheet.rows('t.f')).toEqual(f);
  expect(sheet.rows('t.g')).toEqual(g);
});

test('aggregates, lookups and running functions stand inside such a circle', () => {
  const sheet = newSheet();
  sheet.table('u', 3);
  sheet.column('u.x', [1, 2, 4]);
  sheet.table('t', 4);
  sheet.column('t.w', [1, 1, 2, 2]);
  sheet.declare('t.s');
  sheet.declare('t.r');
  sheet.calcColumn('t.r', 'RUNNINGSUM(w * ABOVE(s; 1))');
  sheet.calcColumn('t.s', 'r + SUM(u.x * w) + SUM(u.x)');
  sheet.run();
  const s: number[] = [];
  const r: number[] = [];
  for (const [row, w] of [1, 1, 2, 2].entries()) {
    r.push((r[row - 1] ?? 0) + w * (s[row - 1] ?? 1));
    s.push((r[row] as number) + 7 * w + 7);
  }
  expect(sheet.rows('t.r')).toEqual(r);
  expect(sheet.rows('t.s')).toEqual(s);
  sheet.patch('t.w', 2, [5]);
  sheet.run();
  expect(sheet.rows('t.r').slice(0, 2)).toEqual(r.slice(0, 2));
  expect(sheet.rows('t.r')[2]).toBe((r[1] as number) + 5 * (s[1] as number));
});

test('a running value goes on below a row where nothing shows', () => {
  const sheet = newSheet();
  sheet.table('t', 5);
  sheet.column('t.x', [1, 2, 3, 4, 5]);
  sheet.column('t.show', [1, 0, 0, 0, 1]);
  sheet.declare('t.y');
  sheet.calcColumn('t.y', 'IF(show = 1; RUNNINGSUM(x); 0) + 0 * ABOVE(y; 0)');
  sheet.run();
  expect(sheet.rows('t.y')).toEqual([1, 0, 0, 0, 15]);
  sheet.patch('t.x', 1, [12]);
  sheet.run();
  expect(sheet.rows('t.y')).toEqual([1, 0, 0, 0, 25]);
});

test('running functions follow the rows and stop at one without a value', () => {
  const sheet = newSheet();
  sheet.table('t', 5);
  sheet.column('t.x', [3, 1, 4, null, 5]);
  sheet.calcColumn('t.sum', 'RUNNINGSUM(x)');
  sheet.calcColumn('t.most', 'RUNNINGMAX(x) * 10');
  sheet.calcColumn('t.least', 'RUNNINGMIN(x + 1)');
  sheet.run();
  expect(sheet.rows('t.sum')).toEqual([3, 4, 8, 'blank-cell', 'blank-cell']);
  expect(sheet.rows('t.most')).toEqual([30, 30, 40, 'blank-cell', 'blank-cell']);
  expect(sheet.rows('t.least')).toEqual([4, 2, 2, 'blank-cell', 'blank-cell']);
  expect(sheet.engine.readColumn('s.t.sum').problemAt(4)).toMatchObject({ data: { name: 'x', row: 4 } });
});

test('ROW counts from 1', () => {
  const sheet = newSheet();
  sheet.table('t', 3);
  sheet.calcColumn('t.n', 'ROW()');
  sheet.calcColumn('t.even', 'MOD(ROW(); 2) = 0');
  sheet.run();
  expect(sheet.rows('t.n')).toEqual([1, 2, 3]);
  expect(sheet.rows('t.even')).toEqual([false, true, false]);
});

describe('SERIES', () => {
  const series = (formula: string, step = 1): ReturnType<typeof newSheet> => {
    const sheet = newSheet();
    sheet.given('stop', 2);
    sheet.given('step', step);
    sheet.series('p.z', formula);
    sheet.calcColumn('p.twice', 'z * 2');
    sheet.calc('sum', 'SUM(p.twice)');
    sheet.calc('count', 'COUNT(p.z)');
    sheet.run();
    return sheet;
  };

  test('goes up to and with a stop that a step meets, within the rounding rule', () => {
    expect(series('SERIES(0; 1; 0.25)').rows('p.z')).toEqual([0, 0.25, 0.5, 0.75, 1]);
    const tenths = series('SERIES(0; 0.3; 0.1)').rows('p.z');
    expect(tenths).toHaveLength(4);
    expect(tenths[3]).toBe(0.3);
    expect(series('SERIES(0; 1; 0.4)').rows('p.z')).toEqual([0, 0.4, 0.8]);
    expect(series('SERIES(5; 1; -2)').rows('p.z')).toEqual([5, 3, 1]);
    expect(series('SERIES(5; 5; -2)').rows('p.z')).toEqual([5]);
  });

  test('makes and unmakes rows as its arguments change', () => {
    const sheet = series('SERIES(0; stop; 1)');
    expect(sheet.read('sum')).toEqual({ status: 'ok', value: 6 });
    sheet.given('stop', 4);
    expect(sheet.run()).toContain('s.p');
    expect(sheet.rows('p.twice')).toEqual([0, 2, 4, 6, 8]);
    expect(sheet.read('count')).toEqual({ status: 'ok', value: 5 });
    sheet.given('stop', 0);
    sheet.run();
    expect(sheet.rows('p.twice')).toEqual([0]);
    expect(sheet.engine.rowsOf('s.p')).toBe(1);
  });

  test('follows its step where the number of rows stays', () => {
    const sheet = series('SERIES(0; stop; step)');
    sheet.given('stop', 20);
    sheet.given('step', 10);
    sheet.run();
    expect(sheet.rows('p.twice')).toEqual([0, 20, 40]);
  });

  test.each([
    ['SERIES(0; 1; 0)', 'series-step-zero'],
    ['SERIES(0; 1; -0.5)', 'series-wrong-way'],
    ['SERIES(0; 1; 0.000001)', 'series-too-long'],
  ])('%s makes no rows: %s', (formula, code) => {
    const sheet = series(formula);
    const column = sheet.engine.readColumn('s.p.z');
    expect(column.length).toBe(0);
    expect(column.problem).toMatchObject({ code });
    expect(sheet.engine.rowsOf('s.p')).toBeUndefined();
    expect(sheet.engine.readColumn('s.p.twice').problem).toMatchObject({ code: 'waiting-on-rows' });
    for (const name of ['sum', 'count']) expect(sheet.codeOf(name)).toBe('waiting-on-rows');
  });

  test('200,000 rows are the most', () => {
    expect(series('SERIES(1; 200000; 1)').engine.rowsOf('s.p')).toBe(200_000);
    expect(series('SERIES(0; 200000; 1)').engine.readColumn('s.p.z').problem?.code).toBe('series-too-long');
  });

  test.each(['0; 1; 0.000001', '0; 200000; 1', '7; -3; -1e-9', '-250; 1e7; 3'])(
    'the step proposed for the rows of %s makes them',
    (range) => {
      const { problem } = series(`SERIES(${range})`).engine.readColumn('s.p.z');
      const step = /a step of (.+) or a longer/.exec(problem?.hints[0] ?? '')?.[1];
      const rows = series(`SERIES(${range.replace(/[^;]+$/, ` ${step}`)})`).engine.rowsOf('s.p');
      expect(rows).toBeGreaterThan(190_000);
      expect(rows).toBeLessThanOrEqual(200_000);
    },
  );

  test('waits on a blank argument', () => {
    const sheet = series('SERIES(0; stop; 1)');
    sheet.given('stop', null);
    sheet.run();
    expect(sheet.engine.readColumn('s.p.z').problem).toMatchObject({ code: 'blank-cell' });
    expect(sheet.read('sum')).toMatchObject({ status: 'waiting', problem: { code: 'waiting-on-rows' } });
  });

  test('two in one table: the first by name makes the rows', () => {
    const sheet = series('SERIES(0; stop; 1)');
    sheet.series('p.a', 'SERIES(0; 5; 1)');
    sheet.run();
    expect(sheet.rows('p.a')).toEqual([0, 1, 2, 3, 4, 5]);
    expect(sheet.rows('p.z')).toEqual(new Array(6).fill('series-twice'));
    sheet.engine.remove('s.p.a');
    sheet.run();
    expect(sheet.rows('p.z')).toEqual([0, 1, 2]);
  });

  test('gives way to rows that are set, when it goes', () => {
    const sheet = series('SERIES(0; stop; 1)');
    sheet.table('p', 2);
    sheet.calcColumn('p.z', 'ROW() * 1');
    sheet.run();
    expect(sheet.rows('p.twice')).toEqual([2, 4]);
  });
});
