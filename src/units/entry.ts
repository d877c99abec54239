import type { PointKind, Unit } from './unit.ts';

/**
 * What an entry holds. A number or a point is in SI, with the unit it was written in (the line's if none was).
 * `missing` is a blank entry: a value not known yet, never zero.
 */
export type Entry =
  | { readonly kind: 'number'; readonly si: number; readonly unit: Unit }
  | { readonly kind: 'point'; readonly si: number; readonly of: PointKind; readonly unit: Unit }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'truth'; readonly value: boolean }
  | { readonly kind: 'missing' };
