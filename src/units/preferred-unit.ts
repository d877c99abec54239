import { isCurrencyCode } from './currency-table.ts';
import { type Dimension, dimensionOf, PHYSICAL_BASES, powerDimension } from './dimension.ts';
import { QUANTITY_BY_KEY, type QuantityRow } from './quantity-table.ts';
import { addRational, type Rational, timesRational } from './rational.ts';
import { readUnit } from './read-unit.ts';
import type { UnitRegistry } from './registry.ts';
import type { Unit } from './unit.ts';

type System = 'SI' | 'US';
type Power = readonly [symbol: string, power: Rational];

const BASES: Readonly<Record<System | 'coherent', Readonly<Record<string, string>>>> = {
  SI: { L: 'm', M: 'kg', T: 's', Θ: 'K', force: 'kN' },
  US: { L: 'ft', M: 'lbm', T: 's', Θ: 'degF', force: 'kip' },
  coherent: { L: 'm', M: 'kg', T: 's', Θ: 'K' },
};

const ZERO: Rational = { n: 0, d: 1 };

/**
 * The unit a blank unit column takes: from the table of quantities, else composed (money and the book's base units
 * first, forces rather than masses where that is shorter): `USD/cy`, `lcy/bcy`, `kip/ft^4`.
 */
export function preferredUnit(
  dimension: Dimension,
  angle: boolean,
  system: System,
  registry: UnitRegistry,
): Unit {
  const row = rowOf(dimension, angle);
  if (row !== undefined) return known(row[system], registry) ?? coherentUnit(dimension, registry);
  return known(compose(dimension, system), registry) ?? coherentUnit(dimension, registry);
}

/** Units to offer for a dimension, the preferred of both systems first; no unit twice. */
export function suggestUnits(dimension: Dimension, angle: boolean, registry: UnitRegistry): Unit[] {
  const row = rowOf(dimension, angle);
  const single = [...registry.infos.keys()];
  const texts = row === undefined ? [] : [row.SI, row.US, ...(row.also ?? [])];
  const composed = row === undefined ? [compose(dimension, 'SI'), compose(dimension, 'US')] : [];
  return [...new Set([...texts, ...composed, ...single])].flatMap((text) => {
    const unit = known(text, registry);
    return unit?.dimension.key === dimension.key && unit.angle === angle ? [unit] : [];
  });
}

/** What a quantity is called, with an article: "a length"; money is "an amount of money in USD" or "a price or rate in USD". */
export function quantityName(dimension: Dimension, angle: boolean): string {
  const row = rowOf(dimension, angle);
  if (row !== undefined) return row.name;
  const money = dimension.powers.find(([base]) => isCurrencyCode(base));
  if (money !== undefined && money[1].n === 1 && money[1].d === 1) {
    return `${dimension.powers.length === 1 ? 'an amount of money' : 'a price or rate'} in ${money[0]}`;
  }
  return 'a quantity';
}

function rowOf(dimension: Dimension, angle: boolean): QuantityRow | undefined {
  return QUANTITY_BY_KEY.get(angle && dimension.key === '' ? 'angle' : dimension.key);
}

function known(text: string, registry: UnitRegistry): Unit | undefined {
  const unit = readUnit(text, registry);
  return unit.ok ? unit.value : undefined;
}

/** The SI unit of a dimension with factor 1, for exponents so large that any other factor overflows. */
function coherentUnit(dimension: Dimension, registry: UnitRegistry): Unit {
  const text = writePowers(
    dimension.powers.map(([base, power]) => [
      Object.hasOwn(BASES.coherent, base) ? (BASES.coherent[base] ?? base) : base,
      power,
    ]),
  );
  return known(text, registry) ?? { text, dimension, factor: 1, offset: 0, angle: false };
}

function compose(dimension: Dimension, system: System): string {
  const physical = dimension.powers.filter(([base]) => PHYSICAL_BASES.includes(base));
  const others = dimension.powers.filter(([base]) => !PHYSICAL_BASES.includes(base));
  if (others.length === 0) return writePowers(physicalPowers(physical, system));
  return writePowers([...others, ...perPowers(physical, system)]);
}

/** What money and the book's units are counted per: `cy` below, or one unit for the whole physical part. */
function perPowers(physical: readonly Power[], system: System): Power[] {
  for (const sign of [-1, 1]) {
    const part = powerDimension(dimensionOf(physical), { n: sign, d: 1 });
    const per = QUANTITY_BY_KEY.get(part.key)?.per?.[system];
    if (per !== undefined) return unitPowers(per, sign);
  }
  return physicalPowers(physical, system);
}

/** "m^2" to the power of `sign` as a power. */
function unitPowers(text: string, sign: number): Power[] {
  const [symbol = '', power = '1'] = text.split('^');
  return [[symbol, { n: Number(power) * sign, d: 1 }]];
}

/** Powers of base units, or of force, length and time where a force makes it shorter or takes the time away. */
function physicalPowers(physical: readonly Power[], system: System): Power[] {
  const of = (base: string) => physical.find(([name]) => name === base)?.[1] ?? ZERO;
  const mass = of('M');
  const restLength = addRational(of('L'), timesRational(mass, { n: -1, d: 1 }));
  const restTime = addRational(of('T'), timesRational(mass, { n: 2, d: 1 }));
  const names = BASES[system];
  const byMass: Power[] = [
    ['M', mass],
    ['L', of('L')],
    ['T', of('T')],
    ['Θ', of('Θ')],
  ];
  const byForce: Power[] = [
    ['force', mass],
    ['L', restLength],
    ['T', restTime],
    ['Θ', of('Θ')],
  ];
  const sizeByMass = withoutZeros(byMass).length;
  const sizeByForce = withoutZeros(byForce).length;
  const useForce =
    mass.n !== 0 && (sizeByForce < sizeByMass || (sizeByForce === sizeByMass && restTime.n === 0));
  return withoutZeros(useForce ? byForce : byMass).map(([base, power]) => [names[base] ?? base, power]);
}

function withoutZeros(powers: readonly Power[]): Power[] {
  return powers.filter(([, power]) => power.n !== 0);
}

/** Writes powers as a unit: those above the slash, then those below, in parentheses if several. */
function writePowers(powers: readonly Power[]): string {
  const write = (list: readonly Power[]) =>
    list
      .map(([symbol, { n, d }]) => {
        const size = Math.abs(n);
        return d !== 1 ? `${symbol}^(${size}/${d})` : size === 1 ? symbol : `${symbol}^${size}`;
      })
      .join('·');
  const above = powers.filter(([, power]) => power.n > 0);
  const below = powers.filter(([, power]) => power.n < 0);
  const top = write(above);
  if (below.length === 0) return top;
  const bottom = below.length === 1 ? write(below) : `(${write(below)})`;
  return `${top === '' ? '1' : top}/${bottom}`;
}
