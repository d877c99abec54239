import { type Markup, none, together } from '../../markup/index.ts';
import { fromSI } from '../../units/index.ts';
import { type Amount, amountWords, unitWords } from '../cells/amount.ts';
import type { Amounts } from '../cells/role.ts';
import { type Axis, numberAxis } from '../charts/axis.ts';
import { decimate } from '../charts/decimate.ts';
import { createLabels } from '../svg/labels.ts';
import { PAGE_WIDTH } from '../svg/page.ts';
import type { Point } from '../svg/point.ts';
import { circle, line, path, pathThrough } from '../svg/shapes.ts';
import { symbol, text, textElement } from '../svg/words.ts';

/** What the diagrams beside a pile are drawn from. */
interface DepthCells {
  readonly embedded: Amount;
  readonly friction: Amounts | undefined;
  readonly frictionDepth: Amounts | undefined;
  readonly capacity: Amounts | undefined;
  readonly capacityDepth: Amounts | undefined;
  readonly demand: Amount | undefined;
  readonly neededLength: Amount | undefined;
}

/** The diagrams as markup; `drawn` says whether there are any. */
interface DepthDiagrams {
  readonly drawn: boolean;
  readonly markup: Markup;
  readonly notes: readonly string[];
}

type Depth = (depth: number) => number;

/** Values at depths, in metres and SI, in the order of the rows; a row without either has none. */
interface Profile {
  readonly amounts: Amounts;
  readonly points: readonly { readonly depth: number; readonly value: number }[];
}

/** The friction and the capacity over one depth axis, from `left` to the edge of the page. */
export function depthDiagrams(cells: DepthCells, y: Depth, deepest: number, left: number): DepthDiagrams {
  const friction = profileOf(cells.friction, cells.frictionDepth);
  const capacity = profileOf(cells.capacity, cells.capacityDepth);
  const right = PAGE_WIDTH - 24;
  if (!friction && !capacity) return { drawn: false, markup: none, notes: [] };
  const split = friction && capacity ? left + (right - left) * 0.36 : friction ? right : left;
  const markup: Markup[] = [depthAxis(cells.embedded, y, deepest, left, right)];
  if (friction) markup.push(frictionDiagram(friction, cells.embedded, y, deepest, left, split));
  if (capacity) {
    const from = friction ? split + 22 : left;
    markup.push(capacityDiagram(capacity, cells, y, deepest, from, right));
  }
  const tip = y(cells.embedded.si);
  markup.push(line({ x: left, y: tip }, { x: right, y: tip }, { class: 'center', 'data-part': 'tip' }));
  return { drawn: true, markup: together(markup), notes: [] };
}

function profileOf(amounts: Amounts | undefined, depths: Amounts | undefined): Profile | undefined {
  if (!amounts || !depths) return undefined;
  const rows = decimate(amounts.values, 600);
  const points = rows.flatMap((row) => {
    const value = amounts.values[row] ?? Number.NaN;
    const depth = depths.values[row] ?? Number.NaN;
    return Number.isFinite(value) && Number.isFinite(depth) ? [{ depth, value }] : [];
  });
  return points.length < 2 ? undefined : { amounts, points };
}

/** Marks of depth below the mudline, at the left of the diagrams, with faint lines across. */
function depthAxis(embedded: Amount, y: Depth, deepest: number, left: number, right: number): Markup {
  const { unit } = embedded;
  const end = fromSI(deepest, unit);
  const axis = numberAxis([0, end], [y(0), y(deepest)], { round: false, count: 7 });
  const marks = axis.ticks.map(({ at, text: words }) =>
    together(
      line({ x: left, y: at }, { x: right, y: at }, { class: 'grid' }),
      textElement(text(words), { x: left - 5, y: at + 4, anchor: 'end' }, { class: 'soft' }),
    ),
  );
  const title = textElement(
    text(`depth, ${unitWords(unit)}`),
    { x: left - 5, y: y(0) - 24, anchor: 'end' },
    { class: 'soft' },
  );
  return together(marks, title, line({ x: left, y: y(0) }, { x: left, y: y(deepest) }, { class: 'axis' }));
}

/** The axis of values along the mudline, with its title above. */
function valueAxis(profile: Profile, from: number, to: number, at: number, greatest: number): [Axis, Markup] {
  const { unit, name } = profile.amounts;
  const axis = numberAxis([0, Math.max(fromSI(greatest, unit), 0)], [from, to], {
    count: Math.max(2, Math.floor((to - from) / 52)),
  });
  const marks = axis.ticks.map((tick) =>
    together(
      line({ x: tick.at, y: at }, { x: tick.at, y: at - 4 }, { class: 'axis' }),
      textElement(text(tick.text), { x: tick.at, y: at - 8, anchor: 'middle' }, { class: 'soft' }),
    ),
  );
  const units = unitWords(unit);
  const title = textElement([...symbol(name), ...text(units === '' ? '' : `, ${units}`)], {
    x: (from + to) / 2,
    y: at - 24,
    anchor: 'middle',
  });
  return [axis, together(line({ x: from, y: at }, { x: to, y: at }, { class: 'axis' }), marks, title)];
}

function frictionDiagram(
  profile: Profile,
  embedded: Amount,
  y: Depth,
  deepest: number,
  from: number,
  to: number,
): Markup {
  const points = profile.points.filter(({ depth }) => depth <= deepest * 1.001);
  const { unit } = profile.amounts;
  const [axis, marks] = valueAxis(profile, from, to, y(0), Math.max(...points.map(({ value }) => value)));
  const places = points.map(({ depth, value }) => ({ x: axis.place(fromSI(value, unit)), y: y(depth) }));
  const first = places[0] as Point;
  const last = places.at(-1) as Point;
  // What lies along the pile is filled; below its tip there is only the curve.
  const tip = y(embedded.si);
  const atTip = axis.place(fromSI(valueAt(points, embedded.si) ?? 0, unit));
  const along = [...places.filter((place) => place.y < tip), ...(last.y < tip ? [] : [{ x: atTip, y: tip }])];
  const outline = [{ x: from, y: first.y }, ...along, { x: from, y: Math.min(last.y, tip) }];
  return together(
    path(pathThrough(outline, true), { class: 'area' }),
    path(pathThrough(places), { class: 'thin', 'data-part': 'friction' }),
    marks,
  );
}

function capacityDiagram(
  profile: Profile,
  cells: DepthCells,
  y: Depth,
  deepest: number,
  from: number,
  to: number,
): Markup {
  const { demand, neededLength, embedded } = cells;
  const { unit } = profile.amounts;
  const points = profile.points.filter(({ depth }) => depth <= deepest * 1.001);
  const greatest = Math.max(...points.map(({ value }) => value), demand?.si ?? 0);
  const [axis, marks] = valueAxis(profile, from, to, y(0), greatest);
  const place = (value: number): number => axis.place(fromSI(value, unit));
  const places = points.map(({ depth, value }) => ({ x: place(value), y: y(depth) }));
  const body = [marks, path(pathThrough(places), { class: 'curve outline', 'data-part': 'capacity' })];
  const bottom = y(deepest);
  const labels = createLabels(PAGE_WIDTH, bottom + 30);
  places.slice(1).forEach((point, index) => {
    labels.keepLineFree(places[index] ?? point, point);
  });
  labels.keepLineFree({ x: from, y: y(embedded.si) }, { x: to, y: y(embedded.si) });
  if (demand && demand.si > 0) {
    const x = place(demand.si);
    labels.keepLineFree({ x, y: y(0) }, { x, y: bottom });
    body.push(line({ x, y: y(0) }, { x, y: bottom }, { class: 'demand', 'data-part': 'demand' }));
    body.push(
      textElement(
        amountWords(demand),
        { x: Math.min(x, to - 44), y: bottom + 16, anchor: 'middle' },
        { class: 'accent-text' },
      ),
    );
  }
  if (neededLength && neededLength.si > 0 && neededLength.si <= deepest) {
    const at = y(neededLength.si);
    body.push(
      line({ x: from, y: at }, { x: to, y: at }, { class: 'demand-dash', 'data-part': 'needed' }),
      labels.put(
        amountWords(neededLength),
        [
          { x: to, y: at - 5, anchor: 'end' },
          { x: to, y: at + 14, anchor: 'end' },
          { x: from + 3, y: at - 5 },
          { x: from + 3, y: at + 14 },
        ],
        { class: 'accent-text halo' },
      ),
    );
  }
  const reached = valueAt(points, embedded.si);
  if (reached !== undefined)
    body.push(
      circle({ x: place(reached), y: y(embedded.si) }, 3.2, { class: 'dot', 'data-part': 'reached' }),
    );
  return together(body);
}

/** The value at a depth, in a straight line between the depths of the table. */
function valueAt(points: Profile['points'], depth: number): number | undefined {
  const after = points.findIndex((point) => point.depth >= depth);
  const b = points[after];
  const a = points[after - 1];
  if (!b) return undefined;
  if (!a) return b.depth === depth ? b.value : undefined;
  return a.value + ((b.value - a.value) * (depth - a.depth)) / (b.depth - a.depth);
}
