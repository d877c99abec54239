import { describe, expect, test } from 'vitest';
import { drawFigure } from '../../src/figures/index.ts';
import {
  drawn,
  figure,
  lengthOf,
  notebookOf,
  parts,
  refusals,
  shapesOf,
  stepOf,
  type TestTable,
} from './picture.ts';

const cells = {
  length: 'L',
  breadth: 'B',
  line: 'lines.name',
  fairleadX: 'lines.x_c',
  fairleadY: 'lines.y_c',
  bollardX: 'lines.x_b',
  bollardY: 'lines.y_b',
  tension: 'lines.T',
  utilisation: 'lines.U',
  forceX: 'X',
  forceY: 'Y',
};
const ship = { L: '200 m', B: '30 m', X: '-20 kN', Y: '100 kN' };
const lines: TestTable = {
  name: ['text', ['stern', 'spring', 'head']],
  x_c: ['m', [-90, -50, 95]],
  y_c: ['m', [-6, -15, -5]],
  x_b: ['m', [-110, -10, 120]],
  y_b: ['m', [-25, -25, -25]],
  T: ['kN', [200, 0, 400]],
  U: ['', [0.3, 0, 0.2]],
};
const plan = (table: TestTable = lines, more: Readonly<Record<string, string>> = {}) =>
  drawFigure(notebookOf({ ...ship, ...more }, { lines: table }), 's', figure('mooring-plan', cells));
const lineOf = (svg: string, name: string) => {
  const [found] = parts(svg, 'line', name);
  if (!found) throw new Error(`no line ${name}`);
  return found;
};

describe('three lines', () => {
  const { svg, description, table } = drawn(plan());

  test('each runs from its fairlead to its bollard, to one scale', () => {
    const scale = stepOf(lineOf(svg, 'head')).x / 25;
    for (const [name, x, y] of [
      ['stern', -20, -19],
      ['spring', 40, -10],
      ['head', 25, -20],
    ] as const) {
      const step = stepOf(lineOf(svg, name));
      expect(step.x / scale).toBeCloseTo(x, 1);
      expect(step.y / scale).toBeCloseTo(y, 1);
    }
    expect(lineOf(svg, 'head').n('x1') - lineOf(svg, 'stern').n('x1')).toBeCloseTo(185 * scale, 1);
  });

  test('the width of a line grows with its tension', () => {
    const width = (name: string) => lineOf(svg, name).n('stroke-width');
    expect((width('head') - 0.8) / (width('stern') - 0.8)).toBeCloseTo(2, 1);
  });

  test('the one most used governs, not the one most pulled; the slack one is dashed', () => {
    expect(lineOf(svg, 'stern').attributes.class).toBe('rope governs');
    expect(lineOf(svg, 'head').attributes.class).toBe('rope');
    expect(lineOf(svg, 'spring').attributes.class).toBe('slack');
    expect(description).toContain('Line stern governs. Slack: spring.');
  });

  test('forces point the way of their sign, to one scale', () => {
    const [along, across] = shapesOf(svg).filter(
      ({ name, attributes }) => name === 'line' && attributes.class === 'load',
    );
    if (!along || !across) throw new Error('no forces');
    expect(stepOf(along).x).toBeLessThan(0);
    expect(stepOf(across).y).toBeGreaterThan(0);
  });

  test('the table has the tensions', () => {
    expect(table?.rows[2]).toEqual([
      'head',
      '95\u00a0m',
      '−5\u00a0m',
      '120\u00a0m',
      '−25\u00a0m',
      '400\u00a0kN',
      '0.2',
    ]);
  });
});

test('a plan with the quay on the other side is turned, not mirrored', () => {
  const other = { ...lines, y_c: ['m', [6, 15, 5]], y_b: ['m', [25, 25, 25]] } as const;
  const { svg } = drawn(plan(other));
  const head = stepOf(lineOf(svg, 'head'));
  expect(head.x).toBeLessThan(0);
  expect(head.y).toBeLessThan(0);
});

test('one line and a ship alone on a long quay are drawn', () => {
  const one = Object.fromEntries(
    Object.entries(lines).map(([name, [unit, all]]) => [name, [unit, all.slice(0, 1)] as const]),
  );
  expect(parts(drawn(plan(one)).svg, 'line')).toHaveLength(1);
  expect(parts(drawn(plan(lines, { L: '8 m', B: '3 m' })).svg, 'line')).toHaveLength(3);
});

test('labels of sixty lines stand side by side, and what has no label is said', () => {
  const many: TestTable = {
    name: ['text', Array.from({ length: 60 }, (_, at) => `line ${at + 1}`)],
    x_c: ['m', Array.from({ length: 60 }, (_, at) => -90 + at * 3)],
    y_c: ['m', Array.from({ length: 60 }, () => -14)],
    x_b: ['m', Array.from({ length: 60 }, (_, at) => -100 + at * 3.4)],
    y_b: ['m', Array.from({ length: 60 }, () => -25)],
    T: ['kN', Array.from({ length: 60 }, (_, at) => 100 + at)],
    U: ['', Array.from({ length: 60 }, (_, at) => (100 + at) / 500)],
  };
  const { svg, description } = drawn(plan(many));
  expect(parts(svg, 'line')).toHaveLength(60);
  const labels = shapesOf(svg)
    .filter(({ name, text }) => name === 'text' && /^line \d+ \d+/.test(text))
    .map((label) => ({ x: label.n('x'), half: (label.text.length * 5.2) / 2 }))
    .sort((a, b) => a.x - b.x);
  expect(labels.length).toBeGreaterThan(4);
  labels.slice(1).forEach((label, at) => {
    const before = labels[at];
    expect(label.x - label.half).toBeGreaterThan((before?.x ?? 0) + (before?.half ?? 0));
  });
  expect(description).toContain(`${60 - labels.length} of 60 lines stand without their label`);
  expect(svg).toContain('line 60 159');
});

test('lines with the same ends are seen apart', () => {
  const twice: TestTable = Object.fromEntries(
    Object.entries(lines).map(([name, [unit, all]]) => [name, [unit, [...all, all[2] ?? null]] as const]),
  );
  const { svg } = drawn(plan(twice));
  const heads = parts(svg, 'line', 'head');
  expect(heads).toHaveLength(2);
  expect(heads[0]?.n('x1')).not.toBe(heads[1]?.n('x1'));
});

test('a line without a place is named, and no line at all is refused', () => {
  const { x_b: _, ...others } = lines;
  const some = drawn(plan({ ...others, x_b: ['m', [-110, null, 120]] }));
  expect(some.description).toContain('Not drawn, because an end has no place: spring.');
  expect(refusals(plan({ ...others, x_b: ['m', [null, null, null]] }))).toEqual([
    'figure-waits: the picture waits on s.lines.x_b: no line has both its ends',
  ]);
});

test('a short line has its length to scale', () => {
  const { svg } = drawn(plan());
  const scale = stepOf(lineOf(svg, 'head')).x / 25;
  expect(lengthOf(lineOf(svg, 'stern')) / scale).toBeCloseTo(Math.hypot(20, 19), 1);
});
