import { expect, test } from 'vitest';
import { newSheet } from './sheet.ts';

function layers() {
  const sheet = newSheet();
  sheet.table('layers', 3);
  sheet.column('layers.soil', ['clay', ' Sand', 'CLAY'], 'text');
  sheet.column('layers.top', [0, 2, 5], 'm');
  sheet.column('layers.bottom', [2, 5, 9], 'm');
  sheet.column('layers.f', [10, 20, 40], 'kPa');
  return sheet;
}

test('capacity with depth: every depth over all layers', () => {
  const sheet = layers();
  sheet.series('p.z', 'SERIES(0 m; 10 m; 2.5 m)', 'm');
  sheet.calcColumn('p.q', 'SUM(GREATER(0; LESSER(z; layers.bottom) - layers.top) * layers.f)', 'kN/m');
  sheet.run();
  // By hand, kN/m: 0; 2·10 + 0.5·20; 2·10 + 3·20; 80 + 2.5·40; 80 + 4·40.
  expect(sheet.rows('p.q')).toEqual([0, 30e3, 80e3, 180e3, 240e3]);
  sheet.patch('layers.f', 1, [30], 'kPa');
  sheet.run();
  expect(sheet.rows('p.q')).toEqual([0, 35e3, 110e3, 210e3, 270e3]);
});

test('a column over two other tables, each in an aggregate of its own', () => {
  const sheet = newSheet();
  sheet.table('t', 3);
  sheet.column('t.x', [1, 2, 3]);
  sheet.table('u', 2);
  sheet.column('u.y', [10, 20]);
  sheet.table('v', 4);
  sheet.column('v.w', [1, 0, 2, 1]);
  sheet.calcColumn('v.s', 'SUM(t.x * w + (t.x + t.x)) - SUM(u.y * w)');
  sheet.run();
  // 6·w + 2·6 − 30·w.
  expect(sheet.rows('v.s')).toEqual([-12, 12, -36, -12]);
});

test('an aggregate inside an aggregate', () => {
  const sheet = newSheet();
  sheet.table('t', 3);
  sheet.column('t.x', [1, 2, 3]);
  sheet.calc('deviations', 'SUM((t.x - AVERAGE(t.x))^2)');
  sheet.calcColumn('t.share', 'x / SUM(t.x)');
  sheet.calcColumn('t.rank', 'COUNTIF(t.x >= x)');
  sheet.run();
  expect(sheet.read('deviations')).toEqual({ status: 'ok', value: 2 });
  expect(sheet.rows('t.share')).toEqual([1 / 6, 2 / 6, 3 / 6]);
  expect(sheet.rows('t.rank')).toEqual([3, 2, 1]);
});

test('conditions on text look past case and outer spaces', () => {
  const sheet = layers();
  sheet.given('kind', 'SAND ');
  sheet.calc('clay', 'SUMIF(layers.soil = "clay"; layers.f)');
  sheet.calc('sand', 'COUNTIF(layers.soil = kind)');
  sheet.run();
  expect(sheet.read('clay')).toEqual({ status: 'ok', value: 50e3 });
  expect(sheet.read('sand')).toEqual({ status: 'ok', value: 1 });
});

test('lookups compare texts by their normal form and give the exact text', () => {
  const sheet = layers();
  sheet.table('t', 2);
  sheet.column('t.want', ['sand', 'gravel'], 'text');
  sheet.calc('f', 'LOOKUP("sand"; layers.soil; layers.f; "exact")');
  sheet.calc('as_written', 'LOOKUP("SAND"; layers.soil; layers.soil; "exact")');
  sheet.calc('third', 'INDEX(layers.soil; 3)');
  sheet.calc('twice', 'LOOKUP("clay"; layers.soil; layers.f; "exact")');
  sheet.calc('first', 'LOOKUP("clay"; layers.soil; layers.f; "first")');
  sheet.calcColumn('t.f', 'LOOKUP(want; layers.soil; layers.f; "exact")');
  sheet.calcColumn('t.row', 'MATCH(want; layers.soil; "exact")');
  sheet.run();
  expect(sheet.read('f')).toEqual({ status: 'ok', value: 20e3 });
  expect(sheet.read('as_written')).toEqual({ status: 'ok', value: ' Sand' });
  expect(sheet.read('third')).toEqual({ status: 'ok', value: 'CLAY' });
  expect(sheet.codeOf('twice')).toBe('outside-domain');
  expect(sheet.read('first')).toEqual({ status: 'ok', value: 10e3 });
  expect(sheet.rows('t.f')).toEqual([20e3, 'key-not-found']);
  expect(sheet.rows('t.row')).toEqual([2, 'key-not-found']);
});

test('interpolation over the rows of another table, alone and inside an aggregate', () => {
  const sheet = newSheet();
  sheet.table('curve', 3);
  sheet.column('curve.x', [0, 10, 20]);
  sheet.column('curve.y', [0, 100, 150]);
  sheet.table('t', 4);
  sheet.column('t.x', [5, 10, 12, 25]);
  sheet.calcColumn('t.y', 'INTERPOLATE(x; curve.x; curve.y)');
  sheet.calcColumn('t.held', 'INTERPOLATE(x; curve.x; curve.y * 2; "hold")');
  sheet.calc('sum', 'SUM(INTERPOLATE(t.x; curve.x; curve.y; "hold") * t.x)');
  sheet.run();
  expect(sheet.rows('t.y')).toEqual([50, 100, 110, 'outside-domain']);
  expect(sheet.rows('t.held')).toEqual([100, 200, 220, 300]);
  expect(sheet.read('sum')).toEqual({ status: 'ok', value: 50 * 5 + 100 * 10 + 110 * 12 + 150 * 25 });
});

test('a lookup needs the value of the row it picks, not of the others', () => {
  const sheet = newSheet();
  sheet.table('t', 3);
  sheet.column('t.k', [1, 2, 3]);
  sheet.column('t.v', [10, null, 30]);
  sheet.calc('good', 'LOOKUP(3; t.k; t.v; "exact")');
  sheet.calc('bad', 'LOOKUP(2; t.k; t.v; "exact")');
  sheet.run();
  expect(sheet.read('good')).toEqual({ status: 'ok', value: 30 });
  expect(sheet.read('bad')).toMatchObject({
    status: 'waiting',
    problem: { code: 'blank-cell', data: { name: 't.v', row: 2 } },
  });
});

test('a lookup among blank keys tells of them without a known part', () => {
  const sheet = newSheet();
  sheet.table('t', 2);
  sheet.column('t.k', [1, null]);
  sheet.calc('row', 'MATCH(1; t.k; "exact")');
  sheet.run();
  expect(sheet.read('row')).toMatchObject({ problem: { code: 'rows-blank', data: { known_part: null } } });
});

test('a sum keeps the low-order parts', () => {
  const sheet = newSheet();
  sheet.table('t', 4);
  sheet.column('t.x', [1, 1e100, 1, -1e100]);
  sheet.calc('sum', 'SUM(t.x)');
  sheet.calc('doubled', 'SUM(t.x * 2)');
  sheet.run();
  expect(sheet.read('sum')).toEqual({ status: 'ok', value: 2 });
  expect(sheet.read('doubled')).toEqual({ status: 'ok', value: 4 });
});

test('more work than a person waits for is refused, with the numbers', () => {
  const sheet = newSheet();
  const rows = 40_000;
  const column = Array.from({ length: rows }, (_, row) => row);
  sheet.table('t', rows);
  sheet.column('t.x', column);
  sheet.table('u', rows);
  sheet.column('u.y', column);
  sheet.calcColumn('t.s', 'SUM(u.y * x)');
  sheet.run();
  expect(sheet.engine.readColumn('s.t.s').problemAt(0)).toMatchObject({
    code: 'too-much-work',
    data: { elements: 4.8e9, limit: 2e9 },
  });
});
