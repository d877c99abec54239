import { type Markup, together } from '../../markup/index.ts';
import { coordinate } from './markup.ts';
import type { Point } from './point.ts';
import { box, line, path } from './shapes.ts';

/** A quay seen from above: its face as a strong line with short oblique strokes on the land side, which is above it. */
export function quayFace(from: number, to: number, y: number): Markup {
  let strokes = '';
  for (let x = from + 4; x <= to - 4; x += 14) strokes += `M${coordinate(x)} ${coordinate(y)}l-7 -8`;
  return together(path(strokes, { class: 'ground' }), line({ x: from, y }, { x: to, y }, { class: 'face' }));
}

/** The sign of a water level: a triangle that stands on the line, and two strokes below it. */
export function waterMark(at: Point): Markup {
  const { x, y } = at;
  const triangle = `M${coordinate(x - 5)} ${coordinate(y - 8)}h10l-5 8Z`;
  const strokes = `M${coordinate(x - 6)} ${coordinate(y + 3.5)}h12M${coordinate(x - 3.5)} ${coordinate(y + 6.5)}h7`;
  return together(path(triangle, { class: 'thin' }), path(strokes, { class: 'water' }));
}

/** A fender on the face of a quay, seen from above; a sign, not to scale. */
export function fenderMark(at: Point, width: number, height: number): Markup {
  return box(
    { x: at.x - width / 2, y: at.y },
    { x: at.x + width / 2, y: at.y + height },
    { class: 'fender' },
  );
}
