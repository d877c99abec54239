import { readEntry, readUnit, type Unit, type UnitRegistry } from '../units/index.ts';
import type { TableCell } from './column.ts';

/** What stands behind the number of a cell: its unit, where the text has another one than the column; nothing in a blank one. */
export function behindNumber(cell: TableCell): string | undefined {
  if (cell === null) return undefined;
  if (typeof cell === 'number') return '';
  return cell.replace(/^[-\d., '’\u00a0\u2009\u202f]*(?:e[+-]?\d+)?/i, '').trim();
}

/**
 * How many of a common unit go into each of some units, `''` being the common one itself; undefined for what is no unit
 * of its kind, or one of levels, which add up to nothing.
 */
export function unitFactors(
  units: Iterable<string>,
  common: string,
  registry: UnitRegistry,
): ReadonlyMap<string, number | undefined> {
  const read = readUnit(common, registry);
  const known = read.ok ? read.value : undefined;
  const whole = known && sizeOf(common, known, registry);
  return new Map(
    [...units].map((unit) => {
      if (unit === '' || unit === common) return [unit, 1] as const;
      const size = known && sizeOf(unit, known, registry);
      return [unit, size === undefined || whole === undefined ? undefined : size / whole] as const;
    }),
  );
}

/** What one of a unit is in SI, where it is of the same kind as another. */
function sizeOf(unit: string, { dimension }: Unit, registry: UnitRegistry): number | undefined {
  const one = readEntry(`1 ${unit}`, registry);
  return one.ok && one.value.kind === 'number' && one.value.unit.dimension.key === dimension.key
    ? one.value.si
    : undefined;
}
