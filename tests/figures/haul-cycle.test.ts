import { describe, expect, test } from 'vitest';
import { drawFigure } from '../../src/figures/index.ts';
import { drawn, figure, notebookOf, parts, refusals } from './picture.ts';

const cells = {
  load: 't_l',
  exchange: 't_x',
  haul: 't_h',
  dump: 't_d',
  return: 't_r',
  cycle: 't_c',
  trucks: 'n',
  match: 'MF',
};
const times = { t_l: '3 min', t_x: '1 min', t_h: '10 min', t_d: '2 min', t_r: '8 min', t_c: '24 min' };
const cycle = (more: Readonly<Record<string, string>>) =>
  drawFigure(notebookOf({ ...times, ...more }), 's', figure('haul-cycle', cells));

describe('six trucks that match one loader', () => {
  const { svg, description } = drawn(cycle({ n: '6', MF: '1' }));

  test('the bars of the steps are to the scale of time', () => {
    const widths = Object.fromEntries(
      parts(svg, 'step').map((bar) => [bar.attributes['data-step'], bar.n('width')]),
    );
    const perMinute = (widths.haul ?? 0) / 10;
    expect(widths.load).toBeCloseTo(3 * perMinute, 1);
    expect(widths.exchange).toBeCloseTo(perMinute, 1);
    expect(widths.return).toBeCloseTo(8 * perMinute, 1);
    expect(Object.keys(widths)).toEqual(['exchange', 'load', 'haul', 'dump', 'return']);
  });

  test('every truck is on the road, and the loader loads each once a round', () => {
    expect(parts(svg, 'truck')).toHaveLength(6);
    expect(parts(svg, 'part', 'loading')).toHaveLength(6);
    expect(description).toContain('Loader and trucks match.');
    expect(svg).toContain('100 % at work');
  });
});

test.each([
  ['3', '0.5', 'The loader waits for trucks.', '50 % at work'],
  ['12', '2', 'Trucks wait for the loader.', '100 % at work'],
])('%s trucks', (n, MF, words, share) => {
  const { svg, description } = drawn(cycle({ n, MF }));
  expect(description).toContain(words);
  expect(svg).toContain(share);
  expect(parts(svg, 'truck')).toHaveLength(Number(n));
});

test('trucks of a great fleet are shown up to what the road holds, and that is said', () => {
  const { svg, description } = drawn(cycle({ n: '500', MF: '83' }));
  expect(parts(svg, 'truck')).toHaveLength(60);
  expect(description).toContain('60 of 500 trucks are shown.');
});

test('a cycle that is not the sum of its times is said', () => {
  expect(drawn(cycle({ t_c: '30 min', n: '6', MF: '1' })).description).toContain(
    't_c is 30\u00a0min; the times shown add up to 24\u00a0min.',
  );
});

test('times below zero and no time at all are refused', () => {
  expect(refusals(cycle({ t_h: '-1 min' }))[0]).toContain('figure-out-of-bounds');
  const none = { t_l: '0 min', t_x: '0 min', t_h: '0 min', t_d: '0 min', t_r: '0 min' };
  expect(refusals(cycle(none))).toEqual([
    'figure-out-of-bounds: s.t_h is 0\u00a0min and cannot be drawn: all times are zero',
  ]);
});
