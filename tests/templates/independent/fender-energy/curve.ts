import type { Row } from './values.ts';

/** A performance curve: reaction over deflection, both as parts of the rated values, straight between its rows. */
export interface Curve {
  readonly points: readonly (readonly [deflection: number, reaction: number])[];
  /** Whether it begins at rest, rises in deflection, and ends at the rated deflection. */
  readonly whole: boolean;
  /** The areas of the strips, and up to each row: work done, as parts of rated reaction times rated deflection. */
  readonly strips: readonly number[];
  readonly areas: readonly number[];
  readonly area: number;
  /** The greatest reaction up to each row. */
  readonly peaks: readonly number[];
  readonly peak: number;
}

/** Reads a performance curve. */
export function readCurve(rows: readonly Row[]): Curve {
  const points = rows.map((row) => [row.number('d'), row.number('r')] as const);
  const strips = points.map(([d, r], index) => {
    const [before, below] = points[index - 1] ?? [d, r];
    return ((r + below) / 2) * (d - before);
  });
  const areas = strips.map((_, index) => strips.slice(0, index + 1).reduce((sum, strip) => sum + strip, 0));
  const peaks = points.map((_, index) => Math.max(...points.slice(0, index + 1).map(([, r]) => r)));
  const rises = points.every(([d], index) => index === 0 || d > (points[index - 1]?.[0] ?? Number.NaN));
  const whole = points[0]?.[0] === 0 && points.at(-1)?.[0] === 1 && rises && points.every(([, r]) => r >= 0);
  const none = Number.NaN;
  return {
    points,
    whole,
    strips,
    areas,
    peaks,
    area: whole ? (areas.at(-1) ?? none) : none,
    peak: whole ? (peaks.at(-1) ?? none) : none,
  };
}

/** A fender on its way: parts of the rated deflection and the rated reaction, and the greatest reaction so far. */
export type Pressed = Readonly<Record<'deflection' | 'reaction' | 'peak', number>>;

/**
 * How far the fender is pressed, and the greatest reaction on the way, when it has done this part of its rated work. The
 * reaction is straight between two rows, so the work done since the first of them is a square in the deflection.
 */
export function pressTo(curve: Curve, part: number): Pressed {
  const none = { deflection: Number.NaN, reaction: Number.NaN, peak: Number.NaN };
  if (part === 0) return { ...none, ...(curve.whole && { reaction: 0, peak: 0 }), deflection: 0 };
  if (!(curve.whole && part >= 0 && part <= 1 + 1e-12)) return none;
  const work = Math.min(part, 1) * curve.area;
  const end = curve.areas.findIndex((area) => area >= work);
  const [right, above] = curve.points[end] ?? [Number.NaN, Number.NaN];
  const before = curve.points[end - 1];
  if (before === undefined) return { deflection: right, reaction: above, peak: above };
  const [left, below] = before;
  const leftOver = work - (curve.areas[end - 1] ?? Number.NaN);
  const slope = (above - below) / (right - left);
  // Of below·s + slope·s²/2 = work, the root that stays right where the slope vanishes.
  const root = Math.sqrt(Math.max(below ** 2 + 2 * slope * leftOver, 0));
  const past = leftOver === 0 ? 0 : (2 * leftOver) / (below + root);
  const reaction = below + slope * past;
  return { deflection: left + past, reaction, peak: Math.max(curve.peaks[end - 1] ?? 0, reaction) };
}
