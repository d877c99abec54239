import type { Unit } from '../units/index.ts';
import { numberType, type Type } from './type.ts';

/** The type a value has that is read in this unit. */
export function typeOfUnit(unit: Unit): Type {
  return unit.point ? { kind: 'point', of: unit.point, axes: [] } : numberType(unit.dimension, unit.angle);
}
