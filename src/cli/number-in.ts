import { fromSI, type Unit } from '../units/index.ts';

/**
 * An SI number in a unit, to 15 significant digits: the last digit or two of a double only tell of the way through
 * SI and back (2 would print as 1.9999999999999993).
 */
export function numberIn(si: number, unit: Unit): number {
  return Number(fromSI(si, unit).toPrecision(15));
}
