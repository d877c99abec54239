import { describe, expect, test } from 'vitest';
import { drawFigure } from '../../src/figures/index.ts';
import { drawn, figure, lengthOf, notebookOf, part, refusals, shapesOf, stepOf } from './picture.ts';

const cells = {
  length: 'L',
  beam: 'B',
  contact: 'x',
  approach: 'α',
  lever: 'R',
  'velocity-angle': 'γ',
  gyration: 'K',
  speed: 'v_n',
};
const ship = { L: '200 m', B: '30 m', x: '50 m', α: '6 deg', K: '45 m', v_n: '0.12 m/s' };
// The lever and its angle by plain geometry: the corner of a right triangle with legs 50 m and 15 m.
const lever = Math.hypot(50, 15);
const gamma = 90 - 6 - (Math.atan2(15, 50) * 180) / Math.PI;
const stated = { R: `${lever} m`, γ: `${gamma} deg` };

const plan = (lines: Readonly<Record<string, string>>) =>
  drawFigure(notebookOf({ ...ship, ...stated, ...lines }), 's', figure('berthing-plan', cells));

describe('the ship at the moment of contact', () => {
  const { svg, description } = drawn(plan({}));
  const keel = part(svg, 'keel');
  // The centre line runs 6 beyond the ship at both ends.
  const scale = (lengthOf(keel) - 12) / 200;

  test('the lever is to the scale of the ship', () => {
    expect(lengthOf(part(svg, 'lever')) / scale).toBeCloseTo(lever, 1);
  });

  test('the keel stands at the approach angle, the leading end towards the quay', () => {
    const step = stepOf(keel);
    expect((Math.atan2(-step.y, step.x) * 180) / Math.PI).toBeCloseTo(6, 2);
  });

  test('the lever and the velocity make the angle γ', () => {
    const step = stepOf(part(svg, 'lever'));
    // The velocity points straight up, at the quay.
    expect((Math.atan2(step.x, -step.y) * 180) / Math.PI).toBeCloseTo(gamma, 1);
  });

  test('the contact lies on the fender, and the centre of mass on the keel', () => {
    const contact = part(svg, 'contact');
    const fender = shapesOf(svg).find(({ attributes }) => attributes.class === 'fender');
    expect(contact.n('cy')).toBeCloseTo((fender?.n('y') ?? 0) + (fender?.n('height') ?? 0), 1);
    const centre = part(svg, 'centre');
    expect(centre.n('cx')).toBeCloseTo((keel.n('x1') + keel.n('x2')) / 2, 1);
    expect(centre.n('cy')).toBeCloseTo((keel.n('y1') + keel.n('y2')) / 2, 1);
  });

  test('the radius of gyration is marked on the keel', () => {
    const mark = part(svg, 'gyration');
    const centre = part(svg, 'centre');
    const x = (mark.n('x1') + mark.n('x2')) / 2 - centre.n('cx');
    const y = (mark.n('y1') + mark.n('y2')) / 2 - centre.n('cy');
    expect(Math.hypot(x, y) / scale).toBeCloseTo(45, 1);
  });

  test('the words name what is shown', () => {
    expect(description).toContain('R = 52.20\u00a0m');
    expect(description).toContain('α = 6°');
    expect(
      shapesOf(svg)
        .filter(({ name }) => name === 'text')
        .map(({ text }) => text),
    ).toEqual(expect.arrayContaining(['α = 6°', 'x = 50\u00a0m', 'K = 45\u00a0m', 'vn = 0.12\u00a0m/s']));
  });
});

/** The least height of the curves of a hull: its path has only points, and curves of one control point. */
function highest(d: string): number {
  const tokens = [...d.matchAll(/([MQL])([^MQLZ]*)/g)];
  let last: readonly number[] = [0, 0];
  let least = Number.POSITIVE_INFINITY;
  for (const [, kind, written = ''] of tokens) {
    const n = written.trim().split(/[ ,]+/).map(Number);
    const end = n.slice(-2);
    if (kind === 'M') last = end;
    for (let t = 0; t <= 1; t += 0.02) {
      const control = kind === 'Q' ? n.slice(0, 2) : [(last[0]! + end[0]!) / 2, (last[1]! + end[1]!) / 2];
      least = Math.min(least, (1 - t) ** 2 * last[1]! + 2 * t * (1 - t) * control[1]! + t ** 2 * end[1]!);
    }
    last = end;
  }
  return least;
}

test.each(['0 deg', '3 deg', '6 deg', '10 deg', '15 deg'])('at %s the hull stays off the quay', (α) => {
  const { svg } = drawn(plan({ α }));
  const { d = '' } = part(svg, 'hull').attributes;
  expect(highest(d)).toBeGreaterThan(part(svg, 'contact').n('cy') - 0.1);
});

test('an angle at which the bow would reach the quay first is said', () => {
  expect(drawn(plan({ α: '40 deg' })).description).toContain('check x and α');
});

test('a stated value that is not that of the lengths is said', () => {
  expect(drawn(plan({ R: '80 m' })).description).toContain(
    'R is 80\u00a0m; the ship as drawn has 52.20\u00a0m.',
  );
});

test('units of labels follow the view', () => {
  const notebook = notebookOf({ ...ship, ...stated });
  const us = drawn(drawFigure(notebook, 's', figure('berthing-plan', cells), 'US'));
  expect(us.table?.rows[0]).toEqual(['L', 'L', '656.2\u00a0ft']);
});

test('what cannot be drawn is refused with a sentence', () => {
  expect(refusals(plan({ x: '120 m' }))).toEqual([
    'figure-out-of-bounds: s.x is 120\u00a0m and cannot be drawn: it has to be from zero to half the length of the ship',
  ]);
  expect(refusals(plan({ L: '0 m', α: '95 deg' }))).toHaveLength(3);
  expect(refusals(plan({ B: '' }))).toEqual(['figure-waits: the picture waits on s.B: it is blank']);
  expect(refusals(plan({ B: '3 kN' }))).toEqual([
    'figure-cell-kind: “B” is taken as the beam of the ship and is not a length',
  ]);
});

test('a value that is only shown may be missing, and that is said', () => {
  const { svg, description } = drawn(plan({ v_n: '' }));
  expect(description).toContain('Left out: the speed at contact (the picture waits on s.v_n: it is blank).');
  expect(svg).toContain('Left out: the speed at contact');
});
