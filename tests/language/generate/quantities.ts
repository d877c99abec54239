// A table of data: the quantities random formulas are made of, each with units it can be written in.
import { numberType, type Type, textType, truthType } from '../../../src/language/index.ts';
import { type Dimension, readUnit, standardUnits, type Unit } from '../../../src/units/index.ts';
import type { Random } from './random.ts';

/** The unit of a text; one that cannot be read is a mistake in the generator. */
export function unitOf(text: string): Unit {
  const read = readUnit(text, standardUnits);
  if (!read.ok) throw new Error(`no unit ${text}: ${read.problems[0]?.message}`);
  return read.value;
}

/** Kinds of number by their units; the first of a list makes the dimension. */
const units: readonly (readonly [string, ...string[]])[] = [
  ['', '%', 'ea'],
  ['m', 'ft', 'in', 'mm', 'yd'],
  ['m^2', 'sf', 'ac', 'mm^2'],
  ['m^3', 'cy', 'gal', 'L'],
  ['s', 'min', 'h', 'd'],
  ['m/s', 'kn', 'mph', 'ft/min'],
  ['m/s^2', 'ft/s^2'],
  ['kg', 't', 'lbm', 'slug', 'ST'],
  ['kN', 'kip', 'lbf', 'tf', 'LTf'],
  ['kN/m', 'plf', 'klf', 'N/mm'],
  ['kPa', 'psi', 'ksf', 'N/mm^2', 'bar'],
  ['kN/m^3', 'pcf', 'pci'],
  ['kg/m^3', 'lbm/ft^3', 't/m^3'],
  ['kN·m', 'kip-ft', 'lbf·in', 'kJ'],
  ['kW', 'hp', 'ft·lbf/s'],
  ['1/m', '1/ft'],
  ['m^4', 'in^4'],
  ['K', 'ΔdegC', 'ΔdegF'],
  ['1/K', '1/degF'],
  ['USD', '$'],
  ['USD/m^3', '$/cy', 'USD/gal'],
  ['USD/h', '$/d'],
];

export const angleUnits = ['deg', 'rad'] as const;
export const temperatureUnits = ['degC', 'degF'] as const;
export const elevationUnits = ['m', 'ft', 'in'] as const;

/** The dimensions random formulas start from. */
export const dimensions: readonly Dimension[] = units.map(([unit]) => unitOf(unit).dimension);

const unitsByKey = new Map(units.map((list) => [unitOf(list[0]).dimension.key, list]));

const systems = [
  { L: 'm', M: 'kg', T: 's', Θ: 'K', USD: 'USD' },
  { L: 'ft', M: 'lbm', T: 'min', Θ: 'degF', USD: '$' },
  { L: 'mm', M: 't', T: 'h', Θ: 'degC', USD: 'USD' },
] as const;

function composed(dimension: Dimension, system: Readonly<Record<string, string>>): string {
  const write = (sign: number) =>
    dimension.powers
      .filter(([, power]) => Math.sign(power.n) === sign)
      .map(([base, { n, d }]) => {
        const unit = system[base];
        if (unit === undefined) throw new Error(`no unit for the base ${base}`);
        const size = Math.abs(n);
        return d !== 1 ? `${unit}^(${size}/${d})` : size === 1 ? unit : `${unit}^${size}`;
      });
  const [above, below] = [write(1), write(-1)];
  const top = above.length === 0 ? '1' : above.join('·');
  if (below.length === 0) return top;
  return `${top}/${below.length === 1 ? below[0] : `(${below.join('·')})`}`;
}

/** Unit texts of a dimension, at least two. */
export function unitsOf(dimension: Dimension): readonly string[] {
  return unitsByKey.get(dimension.key) ?? systems.map((system) => composed(dimension, system));
}

/** Plain, without a mark. */
export const plain: Type = numberType({ key: '', powers: [] });
export const angle: Type = numberType({ key: '', powers: [] }, true);
export const date: Type = { kind: 'point', of: 'date', axes: [] };
export const points: readonly Type[] = [
  { kind: 'point', of: 'temperature', axes: [] },
  { kind: 'point', of: 'elevation:MLLW', axes: [] },
  { kind: 'point', of: 'elevation:NAVD88', axes: [] },
  date,
];

/** A number of any dimension, now and then an angle. */
export function anyNumber(random: Random): Type {
  return random.chance(0.08) ? angle : numberType(random.pick(dimensions));
}
/** A number or a point. */
export function anyMeasured(random: Random): Type {
  return random.chance(0.2) ? random.pick(points) : anyNumber(random);
}
/** A value of any kind. */
export function anyValue(random: Random): Type {
  return random.chance(0.2) ? random.pick([textType, truthType]) : anyMeasured(random);
}

/** Equal types have equal keys: kind, dimension or point kind, angle mark. */
export function keyOf(type: Type): string {
  if (type.kind === 'number') return `number ${type.dimension.key}${type.angle ? ' angle' : ''}`;
  return type.kind === 'point' ? `point ${type.of}` : type.kind;
}
