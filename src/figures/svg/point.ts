/** A place or a step on the page: x to the right, y down, in units of the drawing. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The place a step away from another. */
export function plus(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y };
}

/** The step from `b` to `a`. */
export function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

/** A step made longer. */
export function times(a: Point, k: number): Point {
  return { x: a.x * k, y: a.y * k };
}

/** The length of a step. */
export function lengthOf(a: Point): number {
  return Math.hypot(a.x, a.y);
}

/** The step of length 1 the same way; to the right where there is no way. */
export function directionOf(a: Point): Point {
  const length = lengthOf(a);
  return length > 0 ? times(a, 1 / length) : { x: 1, y: 0 };
}

/** The step turned a quarter clockwise, as it looks on the page. */
export function rotateQuarter(a: Point): Point {
  return { x: -a.y, y: a.x };
}

/** A step of a length in a direction: radians clockwise from the right, as it looks on the page. */
export function polar(length: number, angle: number): Point {
  return { x: length * Math.cos(angle), y: length * Math.sin(angle) };
}

/** The place between two, at a share of the way. */
export function between(a: Point, b: Point, share = 0.5): Point {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}
