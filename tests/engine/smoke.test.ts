import { expect, test } from 'vitest';
import { newSheet } from './sheet.ts';

test('smoke', () => {
  const s = newSheet();
  s.given('D', 3, 'm');
  s.calc('A', 'PI() * (D/2)^2');
  s.table('layers', 3);
  s.column('layers.top', [0, 2, 5], 'm');
  s.column('layers.bottom', [2, 5, 9], 'm');
  s.column('layers.f', [10, 20, 40], 'kPa');
  s.calcColumn('layers.thickness', 'bottom - top');
  s.series('p.z', 'SERIES(0 m; 10 m; 2.5 m)');
  s.calcColumn('p.q', 'SUM(GREATER(0; LESSER(z; layers.bottom) - layers.top) * layers.f)');
  s.calc('total', 'SUM(layers.f * layers.thickness)');
  s.calcColumn('layers.down', 'RUNNINGSUM(thickness)');
  s.calcColumn('layers.t2', 'ABOVE(b2; 0 m)'.replace('b2','bottom'));
  console.log(s.run());
  console.log(s.read('A'), s.read('total'), s.rows('p.z'), s.rows('p.q'), s.rows('layers.down'), s.rows('layers.t2'));
  s.column('layers.f', [10, null, 40], 'kPa');
  s.calc('x', '1/(D - D)');
  s.calc('y', 'x * 2');
  console.log(s.run());
  console.log(JSON.stringify([s.read('total'), s.read('x'), s.read('y'), s.rows('p.q')],null,1));
  expect(1).toBe(1);
});
