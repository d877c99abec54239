import { type Dimension, PLAIN, parseDimension } from './dimension.ts';

/**
 * What a point is measured from: the absolute zero of temperature, the calendar, or a named datum
 * (`elevation:MLLW`; nothing after the colon if no datum is named). Points of different kinds never mix.
 */
export type PointKind = 'temperature' | 'date' | `elevation:${string}`;

/**
 * A unit somebody wrote. SI = x · factor + offset, SI being m, kg, s, K, a currency's own unit, a book's base unit.
 * `offset` is 0 except for `degC` and `degF` alone. `angle` marks `deg`, `rad` and plain compounds of one angle.
 * `point` is there when a number in this unit is a point rather than a difference.
 */
export interface Unit {
  readonly text: string;
  readonly dimension: Dimension;
  readonly factor: number;
  readonly offset: number;
  readonly angle: boolean;
  readonly point?: PointKind;
}

/** Plain numbers: no unit. */
export const PLAIN_UNIT: Unit = { text: '', dimension: PLAIN, factor: 1, offset: 0, angle: false };

/** Plain numbers of which it was said that they are, with `-` as their unit: in a line of per cent 0.05 is then 5 %. */
export const STATED_PLAIN: Unit = { ...PLAIN_UNIT, text: '-' };

/** A number in `unit` as SI. */
export function toSI(x: number, unit: Unit): number {
  return unit.offset === 0 ? x * unit.factor : x * unit.factor + unit.offset;
}

/** An SI number in `unit`. */
export function fromSI(si: number, unit: Unit): number {
  return unit.offset === 0 ? si / unit.factor : (si - unit.offset) / unit.factor;
}

/** Calendar dates: SI is seconds since 1970-01-01, so that the difference of two dates is a time. */
export const DATE_UNIT: Unit = {
  text: 'date',
  dimension: parseDimension('T'),
  factor: 1,
  offset: 0,
  angle: false,
  point: 'date',
};
