import { describe, expect, test } from 'vitest';
import { drawChart } from '../../src/figures/index.ts';
import { chart, drawn, notebookOf, parts, pointsOf, refusals, shapesOf, type TestTable } from './picture.ts';

const t: TestTable = {
  x: ['m', [0, 1, 2, 3, 4, 5]],
  a: ['kN', [1, 2, null, 4, null, 6]],
  b: ['kN', [-3, 0, 3, 6, 9, 12]],
  c: ['s', [5, 4, 3, 2, 1, 0]],
  name: ['text', ['first', 'second', 'a <b> & "c"', 'fourth', 'fifth', 'sixth']],
};
const draw = (part: Parameters<typeof drawChart>[2], view?: 'SI' | 'US') =>
  drawChart(notebookOf({}, { t }), 's', part, view);
const series = (svg: string, name: string) => parts(svg, 'series', name);

describe('a line chart', () => {
  const { svg, table, description } = drawn(draw(chart('line', 'x', 'a', 'b')));

  test('is straight where its numbers are', () => {
    const [points = []] = pointsOf(series(svg, 'b')[0]!);
    expect(points).toHaveLength(6);
    const steps = points.slice(1).map(({ x, y }, at) => ({ x: x - points[at]!.x, y: y - points[at]!.y }));
    for (const step of steps) {
      expect(step.x).toBeCloseTo(steps[0]!.x, 1);
      expect(step.y).toBeCloseTo(steps[0]!.y, 1);
    }
  });

  test('has a gap where a row has no value, and a dot where a value stands alone', () => {
    expect(pointsOf(series(svg, 'a')[0]!).map((stretch) => stretch.length)).toEqual([2, 1, 1]);
    const dots = shapesOf(svg).filter(
      ({ name, attributes }) => name === 'circle' && attributes.class === 'mark-0',
    );
    expect(dots).toHaveLength(4);
    expect(description).toContain('2 rows without a value');
  });

  test('names its curves at their ends', () => {
    const texts = shapesOf(svg).filter(({ name }) => name === 'text');
    const y = (label: string) => texts.find(({ text }) => text === label)?.n('y') ?? Number.NaN;
    expect(Math.abs(y('a') - y('b'))).toBeGreaterThanOrEqual(16);
  });

  test('comes with its numbers', () => {
    expect(table?.head).toEqual(['x, m', 'a, kN', 'b, kN']);
    expect(table?.rows[2]).toEqual(['2', '', '3']);
  });
});

test('marks of an axis are round and evenly apart', () => {
  const { svg } = drawn(draw(chart('line', 'x', 'b')));
  const left = shapesOf(svg).filter(
    ({ name, attributes }) => name === 'text' && attributes['text-anchor'] === 'end',
  );
  expect(left.map(({ text }) => text)).toEqual(['−5', '0', '5', '10', '15']);
});

test('columns of two dimensions have a field each', () => {
  const { svg } = drawn(draw(chart('line', 'x', 'b', 'c')));
  const [b = [], c = []] = ['b', 'c'].map((name) => pointsOf(series(svg, name)[0]!)[0]);
  expect(Math.max(...b.map(({ y }) => y))).toBeLessThan(Math.min(...c.map(({ y }) => y)));
});

test('units follow the view', () => {
  const { table } = drawn(draw(chart('line', 'x', 'b'), 'US'));
  expect(table?.head).toEqual(['x, ft', 'b, kip']);
});

test('bars are as long as their values, from zero, either way', () => {
  const { svg } = drawn(draw(chart('bar', 'name', 'b')));
  const bars = series(svg, 'b');
  const height = (row: number) =>
    bars.find(({ attributes }) => attributes['data-row'] === `${row}`)?.n('height') ?? 0;
  const perKilonewton = height(5) / 12;
  expect(height(0)).toBeCloseTo(3 * perKilonewton, 1);
  expect(height(1)).toBe(0);
  expect(height(3)).toBeCloseTo(6 * perKilonewton, 1);
  const zero = bars[5]!.n('y') + bars[5]!.n('height');
  expect(bars[0]!.n('y')).toBeCloseTo(zero, 1);
});

test('words of rows are text, never markup', () => {
  const { svg } = drawn(draw(chart('bar', 'name', 'b')));
  expect(svg).toContain('a &lt;b&gt; &amp; &quot;c&quot;');
});

test('several series of bars have a legend and their own filling', () => {
  const { svg } = drawn(draw(chart('bar', 'name', 'a', 'b')));
  expect(series(svg, 'a')[0]?.attributes.class).toBe('bar-0');
  expect(series(svg, 'b')[0]?.attributes.fill).toBe('url(#c1-hatch-second)');
});

test('a histogram counts every row that has a value, in equal steps', () => {
  const { svg } = drawn(draw(chart('histogram', 'x', 'b')));
  const bars = parts(svg, 'count');
  expect(bars.reduce((sum, bar) => sum + bar.n('data-count'), 0)).toBe(6);
  const [first] = bars;
  for (const bar of bars) {
    expect(bar.n('width')).toBeCloseTo(first!.n('width'), 1);
    expect(bar.n('height') / bar.n('data-count')).toBeCloseTo(first!.n('height') / first!.n('data-count'), 1);
  }
  expect(parts(drawn(draw(chart('histogram', 'a'))).svg, 'count').length).toBeGreaterThan(0);
});

test('days stand along an axis of days', () => {
  const days: TestTable = { when: ['date', ['2026-01-01', '2026-01-11', '2026-03-02']], y: ['m', [1, 2, 3]] };
  const { svg, table } = drawn(drawChart(notebookOf({}, { t: days }), 's', chart('line', 'when', 'y')));
  const [points = []] = pointsOf(series(svg, 'y')[0]!);
  const [a, b, c] = points;
  expect((c!.x - a!.x) / (b!.x - a!.x)).toBeCloseTo(60 / 10, 1);
  expect(table?.rows[1]).toEqual(['2026-01-11', '2']);
  expect(svg).toMatch(/>2026-0\d-\d\d</);
});

test.each([
  [
    '2026-01-28',
    '2026-02-02',
    ['2026-01-28', '2026-01-29', '2026-01-30', '2026-01-31', '2026-02-01', '2026-02-02'],
  ],
  ['2026-01-15', '2026-05-20', ['2026-02-01', '2026-03-01', '2026-04-01', '2026-05-01']],
  ['2019-03-01', '2026-03-01', ['2020-01-01', '2022-01-01', '2024-01-01', '2026-01-01']],
])('days from %s to %s are marked at whole steps', (from, to, marks) => {
  const days: TestTable = { when: ['date', [from, to]], y: ['m', [1, 2]] };
  const { svg } = drawn(drawChart(notebookOf({}, { t: days }), 's', chart('line', 'when', 'y')));
  const texts = shapesOf(svg).flatMap(({ name, text }) =>
    name === 'text' && /^\d{4}-/.test(text) ? [text] : [],
  );
  expect(texts).toEqual(marks);
});

describe('a hundred thousand rows', () => {
  const columns = [
    { id: 'x1', kind: 'series', name: 'x', formula: 'SERIES(0 m; 99999 m; 1 m)', unit: 'm' },
    {
      id: 'x2',
      kind: 'calc',
      name: 'y',
      formula: 'IF(x = 77777 m; 50 kN; SIN(x / (900 m) * 1 rad) * 1 kN)',
      unit: 'kN',
    },
  ];
  const notebook = notebookOf({}, {}, [{ id: 'big', kind: 'table', name: 't', columns }]);

  test('are drawn with at most two thousand points, the greatest among them', () => {
    const { svg } = drawn(drawChart(notebook, 's', chart('line', 'x', 'y')));
    const [points = []] = pointsOf(series(svg, 'y')[0]!);
    expect(points.length).toBeLessThanOrEqual(2000);
    expect(points.length).toBeGreaterThan(700);
    const top = points.reduce((best, point) => (point.y < best.y ? point : best));
    const { x: from } = points[0]!;
    const { x: to } = points.at(-1)!;
    expect((top.x - from) / (to - from)).toBeCloseTo(0.77777, 3);
  });

  test('share bars, and the table says what it leaves out', () => {
    const { svg, table, description } = drawn(drawChart(notebook, 's', chart('bar', 'x', 'y')));
    expect(series(svg, 'y').length).toBeLessThanOrEqual(240);
    expect(description).toContain('Each bar stands for 417 rows');
    expect(table?.rows).toHaveLength(200);
    expect(description).toContain('has the first 200');
  });
});

test.each([0, 1e-9, 1e12, -5, 5e-324, -1e-310, 1e-200])(
  'a column that is %s throughout is drawn',
  (value) => {
    const flat: TestTable = { x: ['m', [1, 1, 1]], y: ['m', [value, value, value]] };
    for (const form of ['line', 'bar', 'histogram'] as const) {
      const { svg } = drawn(drawChart(notebookOf({}, { t: flat }), 's', chart(form, 'x', 'y')));
      expect(shapesOf(svg).length).toBeGreaterThan(5);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }
  },
);

test('what cannot be drawn is refused with a sentence', () => {
  expect(refusals(draw({ ...chart('line', 'x', 'b'), table: 'tt' }))[0]).toContain('figure-name-unknown');
  expect(refusals(draw(chart('line', 'x', 'bb')))).toEqual([
    'figure-name-unknown: the picture is drawn from “t.bb”, which is not in this book',
  ]);
  expect(refusals(draw(chart('bar', 'x', 'name')))).toEqual([
    'figure-cell-kind: “t.name” is taken as a series and is not a column of numbers',
  ]);
  expect(refusals(draw(chart('line', 'x')))).toEqual([
    'figure-waits: the picture waits on s.t: no column is chosen to be drawn',
  ]);
  const empty: TestTable = { x: ['m', []], y: ['m', []] };
  expect(refusals(drawChart(notebookOf({}, { t: empty }), 's', chart('line', 'x', 'y')))).toEqual([
    'figure-waits: the picture waits on s.t: it has no rows',
  ]);
});

test('a series that alone cannot be drawn is left out, and that is said', () => {
  const { svg, description } = drawn(draw(chart('line', 'x', 'b', 'name')));
  expect(series(svg, 'b')).toHaveLength(1);
  expect(description).toContain('Left out: “t.name” is taken as a series');
});
