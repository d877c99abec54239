import { preferredUnit, quantityName, type Unit, type UnitRegistry } from '../../units/index.ts';
import type { Type } from '../type.ts';
import type { Typed } from '../typed.ts';

/** What a value is, to follow "is" in a sentence: "a length (ft)", "a plain number", "text". */
export function describe(node: Typed, units: UnitRegistry): string {
  const unit =
    node.kind === 'number' || node.kind === 'cell' || node.kind === 'column' ? node.unit : undefined;
  return describeType(node.type, units, unit);
}

/** The same of a type alone; `unit` is the unit the person wrote. */
export function describeType(type: Type, units: UnitRegistry, unit?: Unit): string {
  switch (type.kind) {
    case 'text':
      return 'text';
    case 'truth':
      return 'true or false';
    case 'unknown':
      return 'not known';
    case 'point':
      if (type.of === 'temperature') return 'an absolute temperature';
      if (type.of === 'date') return 'a date';
      return type.of === 'elevation:'
        ? 'an elevation'
        : `an elevation to ${type.of.slice('elevation:'.length)}`;
    case 'number': {
      if (type.angle) return `an angle${unit ? ` (${unit.text})` : ''}`;
      const symbol = unit?.text || preferredUnit(type.dimension, false, 'SI', units).text;
      if (type.dimension.key === '') return 'a plain number';
      return `${quantityName(type.dimension, false)} (${symbol})`;
    }
  }
}

/** Whether one is a mass and the other a force, by their dimensions. */
export function massAndForce(a: Type, b: Type): boolean {
  if (a.kind !== 'number' || b.kind !== 'number') return false;
  const ratio = [a.dimension.key, b.dimension.key].sort().join(' : ');
  return massForcePairs.has(ratio);
}

const pairs: readonly (readonly [string, string])[] = [
  ['M', 'L M T^-2'],
  ['L^-1 M', 'M T^-2'],
  ['L^-2 M', 'L^-1 M T^-2'],
  ['L^-3 M', 'L^-2 M T^-2'],
  ['L M', 'L^2 M T^-2'],
];
const massForcePairs = new Set(pairs.map((pair) => [...pair].sort().join(' : ')));
