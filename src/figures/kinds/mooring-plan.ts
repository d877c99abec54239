import { fail, succeed } from '../../diagnostics/index.ts';
import { type Markup, together } from '../../markup/index.ts';
import { amountWords, unitWords, valueText } from '../cells/amount.ts';
import { waitsOn } from '../cells/read-column.ts';
import { needed, neededColumn, neededTexts, wanted, wantedColumn } from '../cells/role.ts';
import { dimensionLine } from '../svg/dimension-line.ts';
import { quayFace } from '../svg/ground.ts';
import { createLabels } from '../svg/labels.ts';
import { PAGE_WIDTH } from '../svg/page.ts';
import type { Point } from '../svg/point.ts';
import { circle, line, path } from '../svg/shapes.ts';
import { symbol, text, textElement } from '../svg/words.ts';
import { amountSentence, notAboveZero } from './bounds.ts';
import { hullPath } from './hull.ts';
import { figureKind } from './kind.ts';
import { forcesOnShip } from './mooring-forces.ts';
import { labelColumns } from './mooring-labels.ts';
import { type MooringLine, mooringLines } from './mooring-lines.ts';

const SIDE = 48;
const TALLEST = 340;

/** A moored ship from above: x forward to the right, the quay at the top, lines from fairlead to bollard. */
export const mooringPlan = figureKind({
  name: 'mooring-plan',
  title: 'Mooring plan',
  roles: {
    length: needed('length', 'the length of the ship'),
    breadth: needed('length', 'the breadth of the ship'),
    line: neededTexts('the names of the lines'),
    fairleadX: neededColumn('length', 'the fairleads along the ship'),
    fairleadY: neededColumn('length', 'the fairleads across the ship'),
    bollardX: neededColumn('length', 'the bollards along the ship'),
    bollardY: neededColumn('length', 'the bollards across the ship'),
    tension: wantedColumn('force', 'the tension of each line'),
    utilisation: wantedColumn('plain', 'the tension over the strength of each line'),
    forceX: wanted('force', 'the force along the ship'),
    forceY: wanted('force', 'the force off the berth'),
    moment: wanted('moment', 'the moment on the ship'),
  },
  draw: (cells) => {
    const { length, breadth, tension, utilisation } = cells;
    const [first, ...others] = notAboveZero(length, breadth);
    if (first) return fail(first, ...others);
    const { lines, homeless } = mooringLines(cells);
    if (lines.length === 0) return fail(waitsOn(cells.bollardX.id, 'no line has both its ends'));

    const frame = frameFor(length.si, breadth.si, lines);
    const columns = labelColumns(
      lines.map((one) => ({ line: one, bollard: frame.at(one.bollard) })),
      frame.at({ x: 0, y: 0 }).y,
    );
    const top = columns.above + 22;
    const at = (point: Point): Point => {
      const { x, y } = frame.at(point);
      return { x, y: y + top };
    };
    const bottom = frame.height + top;
    // The dimension of a ship that is short on the page stands clear of the forces.
    const clear = length.si * frame.scale < 180 ? 72 : 44;
    const height = bottom + columns.below + clear + 28;
    const labels = createLabels(PAGE_WIDTH, height);
    const halfShip = breadth.si / 2;
    const middle = at({ x: 0, y: 0 }).y;
    const reach = halfShip * frame.scale;
    for (const y of [middle - reach, middle, middle + reach])
      labels.keepLineFree({ x: 0, y }, { x: PAGE_WIDTH, y });
    const hullAt = (along: number, across: number): Point => at({ x: along, y: -across });
    const body: Markup[] = [];

    const landward = lines.filter((one) => one.bollard.y < -halfShip);
    if (landward.length === lines.length) {
      // The face stands between the side of the ship and the bollard nearest to it.
      const nearest = Math.max(...landward.map((one) => one.bollard.y));
      const y = at({ x: 0, y: (nearest - halfShip) / 2 }).y;
      body.push(quayFace(8, PAGE_WIDTH - 8, y));
    }
    body.push(
      path(hullPath(length.si, breadth.si, hullAt, { forward: 0.3 }), { class: 'body', 'data-part': 'hull' }),
      line(hullAt(-length.si * 0.52, 0), hullAt(length.si * 0.52, 0), { class: 'center' }),
    );
    const greatest = Math.max(...lines.map((one) => one.tension ?? 0), 0);
    for (const one of [...lines].sort((a, b) => Number(a.governs) - Number(b.governs)))
      body.push(rope(one, at, greatest));
    for (const bollard of distinct(lines.map((one) => at(one.bollard))))
      body.push(circle(bollard, 3.4, { class: 'hollow', 'data-part': 'bollard' }));
    for (const fairlead of distinct(lines.map((one) => shipEnd(one, at))))
      body.push(circle(fairlead, 1.7, { class: 'dot', 'data-part': 'fairlead' }));
    body.push(columns.draw(top, bottom, tension?.unit));
    if (tension) {
      const words = [...symbol(tension.name), ...text(`, ${unitWords(tension.unit)}`)];
      body.push(textElement(words, { x: 8, y: 14 }, { class: 'soft' }));
    }
    body.push(forcesOnShip(at({ x: 0, y: 0 }), cells, { way: frame.turned ? -1 : 1, reach }, labels));
    const lowest = at({ x: 0, y: frame.turned ? -halfShip : halfShip }).y;
    const ends = [hullAt(-length.si / 2, 0), hullAt(length.si / 2, 0)].sort((a, b) => a.x - b.x);
    const [aft, stem] = ends as [Point, Point];
    const dimensionAt = bottom + columns.below + clear;
    body.push(
      dimensionLine(
        { x: aft.x, y: lowest },
        { x: stem.x, y: lowest },
        -(dimensionAt - lowest),
        amountWords(length),
        labels,
      ),
    );
    const end = Math.max(aft.x, stem.x) + 26;
    body.push(
      dimensionLine(
        { x: end, y: middle + reach },
        { x: end, y: middle - reach },
        0.1,
        reach * 2 > 80 ? amountWords(breadth) : symbol(breadth.name),
      ),
    );

    const notes = [
      ...(columns.left > 0
        ? [`${columns.left} of ${lines.length} lines stand without their label; the table has them all.`]
        : []),
      ...(homeless.length > 0 ? [`Not drawn, because an end has no place: ${homeless.join(', ')}.`] : []),
    ];
    const governing = lines.find((one) => one.governs);
    const slack = lines.filter((one) => one.slack).map((one) => one.name);
    const said = [
      `Plan of a moored ship with ${lines.length} ${lines.length === 1 ? 'line' : 'lines'}.`,
      governing ? `Line ${governing.name} governs.` : '',
      slack.length > 0 ? `Slack: ${slack.join(', ')}.` : '',
      amountSentence(length, breadth, cells.forceX, cells.forceY, cells.moment),
    ];
    const place = (si: number): string => valueText(si, cells.bollardX.unit);
    return succeed({
      height,
      body: together(body),
      notes,
      description: said.filter((sentence) => sentence !== '').join(' '),
      table: {
        head: ['line', 'fairlead x', 'fairlead y', 'bollard x', 'bollard y', 'tension', 'over strength'],
        rows: lines.map((one) => [
          one.name,
          place(one.fairlead.x),
          place(one.fairlead.y),
          place(one.bollard.x),
          place(one.bollard.y),
          tension && one.tension !== undefined ? valueText(one.tension, tension.unit) : '',
          utilisation && one.utilisation !== undefined ? valueText(one.utilisation, utilisation.unit) : '',
        ]),
      },
    });
  },
});

interface Frame {
  readonly at: (point: Point) => Point;
  readonly scale: number;
  readonly height: number;
  /** Whether the plan is turned half round, so that the quay is at the top. */
  readonly turned: boolean;
}

/** Fits ship, fairleads and bollards into the width; the quay side is up. */
function frameFor(length: number, breadth: number, lines: readonly MooringLine[]): Frame {
  const mean = lines.reduce((sum, one) => sum + one.bollard.y, 0) / lines.length;
  const turned = mean > 0;
  const sign = turned ? -1 : 1;
  const points = lines
    .flatMap((one) => [one.fairlead, one.bollard])
    .concat([
      { x: -length / 2, y: -breadth / 2 },
      { x: length / 2, y: breadth / 2 },
    ])
    .map(({ x, y }) => ({ x: x * sign, y: y * sign }));
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  const left = Math.min(...xs);
  const above = Math.min(...ys);
  const wide = Math.max(...xs) - left;
  const tall = Math.max(...ys) - above;
  const scale = Math.min((PAGE_WIDTH - 2 * SIDE) / wide, TALLEST / tall);
  const margin = (PAGE_WIDTH - wide * scale) / 2;
  return {
    scale,
    height: tall * scale,
    turned,
    at: ({ x, y }) => ({ x: margin + (x * sign - left) * scale, y: (y * sign - above) * scale }),
  };
}

/** One line: as wide as its tension is great; the one that governs in the accent, slack ones dashed. */
function rope(one: MooringLine, at: (point: Point) => Point, greatest: number): Markup {
  const share = greatest > 0 ? Math.max(0, one.tension ?? 0) / greatest : 0;
  const name = one.slack ? 'slack' : one.governs ? 'rope governs' : 'rope';
  return line(shipEnd(one, at), at(one.bollard), {
    class: name,
    'stroke-width': one.slack ? 1 : 0.8 + 1.8 * share,
    'data-line': one.name,
  });
}

/** The end of a line on the ship; lines with the same ends stand apart there, so that each is seen. */
function shipEnd(one: MooringLine, at: (point: Point) => Point): Point {
  const { x, y } = at(one.fairlead);
  return { x: x + one.shift * 4, y };
}

function distinct(points: readonly Point[]): readonly Point[] {
  const seen = new Map(points.map((point) => [`${point.x.toFixed(1)} ${point.y.toFixed(1)}`, point]));
  return [...seen.values()];
}
