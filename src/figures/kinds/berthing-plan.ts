import { fail, succeed } from '../../diagnostics/index.ts';
import { type Markup, together } from '../../markup/index.ts';
import { type Amount, amountText, amountWords, valueText } from '../cells/amount.ts';
import { needed, wanted } from '../cells/role.ts';
import { dimensionLine } from '../svg/dimension-line.ts';
import { fenderMark, quayFace } from '../svg/ground.ts';
import { createLabels, spotsAround } from '../svg/labels.ts';
import { PAGE_WIDTH } from '../svg/page.ts';
import { between, lengthOf, minus, type Point, plus, polar, times } from '../svg/point.ts';
import { arc, arrow, circle, line, path } from '../svg/shapes.ts';
import { symbol } from '../svg/words.ts';
import { AMOUNT_HEAD, amountRows, amountSentence, notAboveZero, outOfBounds } from './bounds.ts';
import { hullPath } from './hull.ts';
import { figureKind } from './kind.ts';

const FENDER = { width: 20, height: 13 };
const QUAY = 40;
const TALLEST = 380;

/** A ship at the moment it touches the fender, from above: the quay at the top, the leading end to the right. */
export const berthingPlan = figureKind({
  name: 'berthing-plan',
  title: 'Ship at the moment of contact',
  roles: {
    length: needed('length', 'the length of the ship'),
    beam: needed('length', 'the beam of the ship'),
    contact: needed('length', 'the distance of the contact from midship along the keel'),
    approach: needed('angle', 'the angle of the ship to the berth'),
    lever: wanted('length', 'the distance from the contact to the centre of mass'),
    gyration: wanted('length', 'the radius of gyration'),
    'velocity-angle': wanted('angle', 'the angle between that distance and the velocity'),
    speed: wanted('speed', 'the speed at contact'),
  },
  draw: (cells) => {
    const { length, beam, contact, approach, lever, gyration, speed } = cells;
    const gamma = cells['velocity-angle'];
    const half = length.si / 2;
    const alpha = approach.si;
    const [first, ...others] = [
      ...notAboveZero(length, beam),
      ...(contact.si < 0 || contact.si > half
        ? [outOfBounds(contact, 'it has to be from zero to half the length of the ship')]
        : []),
      ...(alpha < 0 || alpha >= Math.PI / 2 - 1e-9
        ? [outOfBounds(approach, 'it has to be from 0° to below 90°')]
        : []),
    ];
    if (first) return fail(first, ...others);

    const scale = scaleFor(length.si, beam.si, alpha);
    const geometry = placeShip(length.si, beam.si, contact.si, alpha, scale);
    const { at, touch, centre, bottom, quay } = geometry;
    const height = bottom + 78;
    const labels = createLabels(PAGE_WIDTH, height);
    const body: Markup[] = [];

    // A bow that is finer than the approach is steep would reach the quay before the point of contact.
    const noseAngle = Math.atan2(beam.si / 2, half - contact.si);
    const slope = Math.min(alpha * 1.15 + 0.02, noseAngle * 0.97);
    const hull = hullPath(length.si, beam.si, at, {
      forward: contact.si / length.si,
      slope,
    });
    body.push(quayFace(20, PAGE_WIDTH - 20, quay));
    labels.keepLineFree({ x: 20, y: quay }, { x: PAGE_WIDTH - 20, y: quay });
    body.push(path(hull, { class: 'body', 'data-part': 'hull' }));
    body.push(fenderMark({ x: touch.x, y: quay }, FENDER.width, FENDER.height));
    labels.keepFree({ x: touch.x - 12, y: quay, width: 24, height: FENDER.height + 4 });
    const corners = [at(-half, 0), at(half, 0)] as const;
    body.push(
      line(at(-half - 6 / scale, 0), at(half + 6 / scale, 0), { class: 'center', 'data-part': 'keel' }),
    );
    labels.keepLineFree(corners[0], corners[1]);
    for (const side of [-1, 1])
      labels.keepLineFree(at(-half, (side * beam.si) / 2), at(contact.si, (side * beam.si) / 2));

    const run = (half + contact.si) * scale;
    const opening = Math.min(run * 0.72, 190);
    const level = plus(touch, { x: -opening - 14, y: 0 });
    if (alpha > 1e-6) {
      body.push(line(touch, level, { class: 'hidden' }));
      labels.keepLineFree(touch, level);
    }

    // The lever, the velocity and the angle between them, at the centre of mass.
    const lift = centre.y - touch.y;
    const inHull = (beam.si / 2 / Math.cos(alpha)) * scale;
    const velocity = { x: 0, y: -Math.max(30, Math.min(70, lift * 0.85, inHull * 0.9)) };
    const tip = plus(centre, velocity);
    body.push(line(centre, touch, { class: 'thin', 'data-part': 'lever' }));
    body.push(arrow(centre, tip, 'load'));
    labels.keepLineFree(centre, touch);
    labels.keepLineFree(centre, tip);
    const way = Math.atan2(touch.y - centre.y, touch.x - centre.x);
    if (gamma && gamma.si > 0.02) {
      const r = Math.min(30, Math.abs(velocity.y) * 0.62, lengthOf(minus(touch, centre)) * 0.5);
      body.push(arc(centre, r, -Math.PI / 2, way, { class: 'thin', 'data-part': 'gamma' }));
      const inside = plus(centre, polar(r * 0.66, (way - Math.PI / 2) / 2));
      body.push(labels.put(symbol(gamma.name), [{ x: inside.x, y: inside.y + 4, anchor: 'middle' }]));
    }
    body.push(circle(touch, 3, { class: 'hollow', 'data-part': 'contact' }));
    body.push(circle(centre, 3.2, { class: 'dot', 'data-part': 'centre' }));
    labels.keepFree({ x: centre.x - 4, y: centre.y - 4, width: 8, height: 8 });
    if (speed)
      body.push(
        labels.put(
          amountWords(speed),
          [
            { x: tip.x - 7, y: tip.y + 10, anchor: 'end' },
            { x: tip.x - 7, y: tip.y + 24, anchor: 'end' },
            { x: tip.x - 7, y: centre.y - 9, anchor: 'end' },
            { x: tip.x - 7, y: centre.y + 16, anchor: 'end' },
            ...spotsAround(tip, 8),
          ],
          { class: 'accent-text halo' },
        ),
      );
    const beside = [...(lever ? [amountWords(lever)] : []), ...(gamma ? [amountWords(gamma)] : [])];
    for (const words of beside) body.push(labels.put(words, alongside(centre, touch), { class: 'halo' }));
    if (gyration && gyration.si > 0 && gyration.si < half) {
      const mark = at(-gyration.si, 0);
      const across = times(minus(at(0, 1), at(0, 0)), 5 / scale);
      body.push(
        line(minus(mark, across), plus(mark, across), { class: 'dim-tick', 'data-part': 'gyration' }),
      );
      body.push(
        labels.put(
          amountWords(gyration),
          [
            { x: mark.x, y: mark.y - 9, anchor: 'middle' },
            { x: mark.x, y: mark.y + 18, anchor: 'middle' },
            ...spotsAround(mark, 9),
          ],
          { class: 'halo' },
        ),
      );
    }

    // The approach, between the face of the quay and the side of the ship, where there is room for it.
    if (alpha > 1e-6) {
      body.push(arc(touch, opening, Math.PI, Math.PI - alpha, { class: 'thin', 'data-part': 'approach' }));
      const spot = plus(touch, polar(opening + 6, Math.PI - alpha / 2));
      body.push(
        labels.put(
          amountWords(approach),
          [
            { x: spot.x, y: spot.y + 4, anchor: 'end' },
            { x: spot.x, y: touch.y - 5, anchor: 'end' },
            ...spotsAround(spot, 6),
          ],
          { class: 'halo' },
        ),
      );
    } else
      body.push(labels.put(amountWords(approach), [{ x: PAGE_WIDTH - 24, y: bottom + 50, anchor: 'end' }]));

    // Lengths below the ship, along its keel.
    const far = -beam.si / 2;
    if (contact.si * scale > 6)
      body.push(
        dimensionLine(at(0, far), at(contact.si, far), -20, amountWords(contact), labels),
        line(at(0, far), at(0, beam.si / 2), { class: 'center' }),
      );
    body.push(dimensionLine(at(-half, far), at(half, far), -46, amountWords(length), labels));
    body.push(beamDimension(beam, at, half, scale));
    const notes = [
      ...(alpha > noseAngle + 1e-9
        ? [
            `At ${amountText(approach)} the end of the ship would reach the quay before the point of contact: check ${contact.name} and ${approach.name}.`,
          ]
        : []),
      ...differs(lever, Math.hypot(contact.si, beam.si / 2), 0.01),
      ...differs(gamma, Math.PI / 2 - alpha - Math.atan2(beam.si / 2, contact.si), 0.01),
    ];
    return succeed({
      height,
      body: together(body),
      notes,
      description: `Plan of a ship that touches a fender on the quay. ${amountSentence(length, beam, contact, approach, lever, gamma, gyration, speed)}`,
      table: {
        head: AMOUNT_HEAD,
        rows: amountRows(length, beam, contact, approach, lever, gamma, gyration, speed),
      },
    });
  },
});

/** Units of the drawing per metre: the ship fits the width, and the height there is for it. */
function scaleFor(length: number, beam: number, alpha: number): number {
  const wide = length * Math.cos(alpha) + beam * Math.sin(alpha);
  const tall = length * Math.sin(alpha) + beam * Math.cos(alpha);
  return Math.min((PAGE_WIDTH - 150) / wide, TALLEST / tall);
}

interface PlacedShip {
  /** The page's place of a place on the ship: along the keel from midship, across to the side of the quay. */
  readonly at: (along: number, across: number) => Point;
  readonly touch: Point;
  readonly centre: Point;
  readonly bottom: number;
  /** The height of the face of the quay on the page. */
  readonly quay: number;
}

/** Puts the ship so that its side touches the fender and lies in the middle of the page. */
function placeShip(length: number, beam: number, contact: number, alpha: number, scale: number): PlacedShip {
  // Ahead is to the right and, towards the quay, up.
  const ahead = polar(scale, -alpha);
  const across = polar(scale, -alpha - Math.PI / 2);
  const fromCentre = (along: number, side: number): Point => plus(times(ahead, along), times(across, side));
  const corners = [
    fromCentre(-length / 2, beam / 2),
    fromCentre(-length / 2, -beam / 2),
    fromCentre(length / 2, 0),
    fromCentre(contact, -beam / 2),
  ];
  const left = Math.min(...corners.map((corner) => corner.x));
  const right = Math.max(...corners.map((corner) => corner.x));
  const touchStep = fromCentre(contact, beam / 2);
  // A ship that would run into the quay is shown whole, with the quay lower on the page.
  const beyond = touchStep.y - FENDER.height - Math.min(...corners.map((corner) => corner.y));
  const quay = QUAY + Math.max(0, beyond - QUAY + 8);
  const centre = {
    x: PAGE_WIDTH / 2 - (left + right) / 2,
    y: quay + FENDER.height - touchStep.y,
  };
  return {
    at: (along, side) => plus(centre, fromCentre(along, side)),
    touch: plus(centre, touchStep),
    centre,
    quay,
    bottom: centre.y + Math.max(...corners.map((corner) => corner.y)),
  };
}

/** A note where a stated value is not the one of the sketch, which is drawn from lengths and approach. */
function differs(stated: Amount | undefined, drawn: number, margin: number): readonly string[] {
  if (!stated || Math.abs(stated.si - drawn) <= margin * Math.max(Math.abs(drawn), 0.1)) return [];
  return [`${stated.name} is ${amountText(stated)}; the ship as drawn has ${valueText(drawn, stated.unit)}.`];
}

/** Spots beside the middle of a line, on both sides. */
function alongside(a: Point, b: Point): Parameters<ReturnType<typeof createLabels>['put']>[1] {
  return [0.5, 0.62, 0.38, 0.75].flatMap((share) => {
    const { x, y } = between(a, b, share);
    return [
      { x: x + 8, y: y + 14 },
      { x: x + 8, y: y + 30 },
      { x: x - 8, y: y - 6, anchor: 'end' as const },
    ];
  });
}

/** The beam across the trailing end, off the ship. */
function beamDimension(
  beam: Amount,
  at: (along: number, across: number) => Point,
  half: number,
  scale: number,
): Markup {
  const end = -half - 4 / scale;
  const words = beam.si * scale > 70 ? amountWords(beam) : [...symbol(beam.name)];
  return dimensionLine(at(end, -beam.si / 2), at(end, beam.si / 2), 24, words);
}
