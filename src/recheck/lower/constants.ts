import type { Unit } from '../../units/index.ts';
import { address, type GridLabel, type OpenSheet } from '../grid.ts';
import type { FactorReader } from '../unit-factor.ts';

/** The cells that hold constants, by address: numbers never stand in formula text. */
export interface Constants {
  readonly number: (value: number) => string;
  readonly truth: (value: boolean) => string;
  /** The factor and (for a temperature) the offset of a unit; undefined if its factor is not known. */
  readonly unit: (unit: Unit) => UnitCells | undefined;
}

export interface UnitCells {
  /** Absent where the factor is 1 and nothing is to be multiplied. */
  readonly factor?: string;
  readonly offset?: string;
}

/** Fills a sheet of numbers and one of unit factors as they are asked for, each value once. */
export function createConstants(
  numbers: OpenSheet,
  units: OpenSheet,
  labels: GridLabel[],
  factorOf: FactorReader,
): Constants {
  const known = new Map<number | boolean, string>();
  const knownUnits = new Map<string, UnitCells>();

  const constant = (value: number | boolean): string => {
    const found = known.get(value);
    if (found !== undefined) return found;
    numbers.rows.push([value]);
    const made = address(numbers.name, numbers.rows.length - 1, 0);
    known.set(value, made);
    return made;
  };

  return {
    number: constant,
    truth: constant,
    unit: (unit) => {
      const key = `${unit.text}|${unit.point ?? ''}`;
      const found = knownUnits.get(key);
      if (found) return found;
      const size = factorOf(unit);
      if (!size) return undefined;
      const { factor, offset } = size;
      const row = units.rows.length;
      const displaced = offset !== 0;
      const plain = factor === 1 && !displaced;
      const made: UnitCells = plain
        ? {}
        : {
            factor: address(units.name, row, 1),
            ...(displaced && { offset: address(units.name, row, 2) }),
          };
      if (!plain) {
        units.rows.push([null, factor, displaced ? offset : null]);
        labels.push({ sheet: units.name, row, column: 0, text: unit.text });
      }
      knownUnits.set(key, made);
      return made;
    },
  };
}
