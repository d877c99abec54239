import { describe, expect, test } from 'vitest';
import { drawFigure } from '../../src/figures/index.ts';
import { drawn, figure, notebookOf, part, parts, pointsOf, refusals, type TestTable } from './picture.ts';

const cells = {
  cutoff: 'El_c',
  mudline: 'El_0',
  embedded: 'L',
  diameter: 'D',
  water: 'El_w',
  free: 'L_f',
  soil: 'layers.soil',
  top: 'layers.z_t',
  bottom: 'layers.z_b',
  friction: 'curve.f',
  frictionDepth: 'curve.z',
  capacity: 'curve.Q',
  capacityDepth: 'curve.z',
  demand: 'N',
  neededLength: 'L_n',
};
const lines = {
  El_c: 'El. +3 m',
  El_0: 'El. -12 m',
  El_w: 'El. 0 m',
  L: '30 m',
  L_f: '15 m',
  D: '0.9 m',
  N: '2000 kN',
  L_n: '25 m',
};
const layers: TestTable = {
  soil: ['text', ['soft clay', 'dense sand', 'weathered rock']],
  z_t: ['m', [0, 10, 25]],
  z_b: ['m', [10, 25, 40]],
};
const curve: TestTable = {
  z: ['m', [0, 10, 20, 30, 40]],
  f: ['kPa', [0, 20, 60, 80, 100]],
  Q: ['kN', [0, 400, 1600, 2800, 4000]],
};
const profile = (more: Readonly<Record<string, string>> = {}, ground = layers) =>
  drawFigure(
    notebookOf({ ...lines, ...more }, { layers: ground, curve }),
    's',
    figure('pile-profile', cells),
  );

describe('a pile in three layers', () => {
  const { svg, description } = drawn(profile());
  const mudline = part(svg, 'mudline').n('y1');
  const pile = part(svg, 'pile');
  const scale = pile.n('height') / 45;

  test('pile, water and layers are to one scale of depth', () => {
    expect(mudline - pile.n('y')).toBeCloseTo(15 * scale, 1);
    expect(mudline - part(svg, 'water').n('y1')).toBeCloseTo(12 * scale, 1);
    const soils = parts(svg, 'soil');
    expect(soils.map(({ attributes }) => attributes['data-soil'])).toEqual([
      'soft clay',
      'dense sand',
      'weathered rock',
    ]);
    expect(soils.map((soil) => (soil.n('y') - mudline) / scale)).toEqual([
      expect.closeTo(0, 1),
      expect.closeTo(10, 1),
      expect.closeTo(25, 1),
    ]);
    expect((soils[2]?.n('height') ?? 0) / scale).toBeCloseTo(15, 1);
  });

  test('each soil has its own hatch', () => {
    expect(parts(svg, 'soil').map(({ attributes }) => attributes.fill)).toEqual([
      'url(#f1-hatch-clay)',
      'url(#f1-hatch-sand)',
      'url(#f1-hatch-rock)',
    ]);
  });

  test('demand, needed length and the reached capacity lie where the curve has them', () => {
    const [points = []] = pointsOf(part(svg, 'capacity'));
    const [first, , , at30, last] = points;
    if (!first || !at30 || !last) throw new Error('the curve has too few points');
    const perKilonewton = (last.x - first.x) / 4000;
    expect((part(svg, 'demand').n('x1') - first.x) / perKilonewton).toBeCloseTo(2000, 0);
    expect((part(svg, 'needed').n('y1') - mudline) / scale).toBeCloseTo(25, 1);
    expect(part(svg, 'reached').n('cx')).toBeCloseTo(at30.x, 1);
    expect(part(svg, 'reached').n('cy')).toBeCloseTo(pile.n('y') + pile.n('height'), 1);
  });

  test('the width of the pile is to scale or said not to be', () => {
    expect(pile.n('width')).toBeGreaterThan(0.9 * scale - 0.1);
    expect(description.includes('not to scale')).toBe(Math.abs(pile.n('width') - 0.9 * scale) > 0.5);
  });
});

test('a pile of hundreds of metres and one of a few are drawn on a page of the same height', () => {
  const boxes = ['400 m', '4 m'].map((L) => drawn(profile({ L })).svg.match(/viewBox="0 0 720 (\d+)"/)?.[1]);
  for (const height of boxes) {
    expect(Number(height)).toBeGreaterThan(400);
    expect(Number(height)).toBeLessThan(560);
  }
});

test('layers may be unknown, and the ground is then plain', () => {
  const bare = drawFigure(
    notebookOf(lines),
    's',
    figure('pile-profile', { cutoff: 'El_c', mudline: 'El_0', embedded: 'L', diameter: 'D' }),
  );
  expect(parts(drawn(bare).svg, 'soil')).toEqual([]);
});

test('a pile that cannot stand so is refused', () => {
  expect(refusals(profile({ L: '-3 m' }))[0]).toContain('figure-out-of-bounds: s.L is −3');
  expect(refusals(profile({ El_c: 'El. -50 m' }))).toEqual([
    'figure-out-of-bounds: s.El_c is El. −50 m and cannot be drawn: it lies below the tip of the pile',
  ]);
});

test('soils are written as text, never as markup', () => {
  const { svg } = drawn(profile({}, { ...layers, soil: ['text', ['<script>&"', 'sand', 'x']] }));
  expect(svg).not.toContain('<script');
  expect(svg).toContain('&lt;script&gt;&amp;&quot;');
});
