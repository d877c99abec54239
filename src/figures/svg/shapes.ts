import { type Attributes, type Markup, together } from '../../markup/index.ts';
import { coordinate, tag } from './markup.ts';
import { directionOf, minus, type Point, plus, rotateQuarter, times } from './point.ts';

/** A straight line. */
export function line(a: Point, b: Point, attributes: Attributes): Markup {
  return tag('line', { x1: a.x, y1: a.y, x2: b.x, y2: b.y, ...attributes });
}

/** A rectangle by two opposite corners. */
export function box(a: Point, b: Point, attributes: Attributes): Markup {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return tag('rect', { x, y, width: Math.abs(b.x - a.x), height: Math.abs(b.y - a.y), ...attributes });
}

/** A circle. */
export function circle(centre: Point, r: number, attributes: Attributes): Markup {
  return tag('circle', { cx: centre.x, cy: centre.y, r, ...attributes });
}

/** A path through points; `closed` joins the last to the first. */
export function pathThrough(points: readonly Point[], closed = false): string {
  const steps = points.map(
    (point, at) => `${at === 0 ? 'M' : 'L'}${coordinate(point.x)} ${coordinate(point.y)}`,
  );
  return steps.join('') + (closed ? 'Z' : '');
}

/** A path element. */
export function path(d: string, attributes: Attributes): Markup {
  return tag('path', { d, ...attributes });
}

/** A slim filled arrow head with its point at `tip`, flying the way of `way`. */
export function arrowHead(tip: Point, way: Point, attributes: Attributes, size = 9): Markup {
  const along = directionOf(way);
  const back = minus(tip, times(along, size));
  const side = times(rotateQuarter(along), size * 0.32);
  return path(pathThrough([tip, plus(back, side), minus(back, side)], true), attributes);
}

/** An arrow: a shaft and a head. `name` is the class of both, `…-head` of the head. */
export function arrow(from: Point, to: Point, name: string, size = 9): Markup {
  const way = minus(to, from);
  const neck = minus(to, times(directionOf(way), size * 0.8));
  return together(line(from, neck, { class: name }), arrowHead(to, way, { class: `${name}-head` }, size));
}

/** An arc about a centre from one direction to another, in radians clockwise from the right, the way the sign says. */
export function arc(centre: Point, r: number, from: number, to: number, attributes: Attributes): Markup {
  const at = (angle: number): Point => ({
    x: centre.x + r * Math.cos(angle),
    y: centre.y + r * Math.sin(angle),
  });
  const a = at(from);
  const b = at(to);
  const large = Math.abs(to - from) > Math.PI ? 1 : 0;
  const sweep = to > from ? 1 : 0;
  const d = `M${coordinate(a.x)} ${coordinate(a.y)}A${coordinate(r)} ${coordinate(r)} 0 ${large} ${sweep} ${coordinate(b.x)} ${coordinate(b.y)}`;
  return path(d, attributes);
}
