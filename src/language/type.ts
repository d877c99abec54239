import { baseDimension, type Dimension, PLAIN, type PointKind, sameDimension } from '../units/index.ts';

/**
 * One named direction in which a value has many elements. The row axis of a table (`fresh: false`) is the row a
 * column formula stands on; a fresh axis runs over all rows of a table inside one aggregate or lookup.
 */
export interface Axis {
  /** The table as `sheet.table`. */
  readonly table: string;
  readonly fresh: boolean;
}

export type Axes = readonly Axis[];

export interface NumberType {
  readonly kind: 'number';
  readonly dimension: Dimension;
  /** A plain number known to be an angle. */
  readonly angle: boolean;
  /** The token `0`, which fits any dimension. */
  readonly zero?: true;
  readonly axes: Axes;
}
export interface PointType {
  readonly kind: 'point';
  readonly of: PointKind;
  readonly axes: Axes;
}
export interface TextType {
  readonly kind: 'text';
  readonly axes: Axes;
}
export interface TruthType {
  readonly kind: 'truth';
  readonly axes: Axes;
}
/** The type of what already has a problem; it fits everywhere and causes no further problem. */
export interface UnknownType {
  readonly kind: 'unknown';
  readonly axes: Axes;
}
export type Type = NumberType | PointType | TextType | TruthType | UnknownType;

export const NO_AXES: Axes = [];

/** A number type of one dimension, by default a scalar without an angle mark. */
export function numberType(dimension: Dimension, angle = false, axes: Axes = NO_AXES): NumberType {
  return { kind: 'number', dimension, angle, axes };
}

export const plainType: NumberType = numberType(PLAIN);
export const angleType: NumberType = numberType(PLAIN, true);
export const zeroType: NumberType = { ...plainType, zero: true };
export const textType: TextType = { kind: 'text', axes: NO_AXES };
export const truthType: TruthType = { kind: 'truth', axes: NO_AXES };
export const unknownType: UnknownType = { kind: 'unknown', axes: NO_AXES };

/** The same type standing on other axes. */
export function onAxes<T extends Type>(type: T, axes: Axes): T {
  return type.axes === axes ? type : { ...type, axes };
}

export function sameAxis(a: Axis, b: Axis): boolean {
  return a.table === b.table && a.fresh === b.fresh;
}

/** Every axis of the operands once, row axes first, in order of appearance. */
export function unionAxes(all: readonly Axes[]): Axes {
  const filled = all.filter((axes) => axes.length > 0);
  if (filled.length === 0) return NO_AXES;
  if (filled.length === 1) return filled[0] ?? NO_AXES;
  const union: Axis[] = [];
  for (const axis of filled.flat()) if (!union.some((known) => sameAxis(known, axis))) union.push(axis);
  return union.sort((a, b) => Number(a.fresh) - Number(b.fresh));
}

/** What is left of the axes when an aggregate has reduced the fresh ones. */
export function rowAxes(axes: Axes): Axes {
  return axes.some((axis) => axis.fresh) ? axes.filter((axis) => !axis.fresh) : axes;
}

/** Whether two types hold the same kind of value, axes and angle marks aside. */
export function sameKind(a: Type, b: Type): boolean {
  if (a.kind === 'number' && b.kind === 'number') return sameDimension(a.dimension, b.dimension);
  if (a.kind === 'point' && b.kind === 'point') return a.of === b.of;
  return a.kind === b.kind;
}

/** The dimension of the difference between two points of one kind. */
export function differenceOf(point: PointKind): Dimension {
  if (point === 'temperature') return baseDimension('Θ');
  return baseDimension(point === 'date' ? 'T' : 'L');
}
