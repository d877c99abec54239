import { sameDimension } from './dimension.ts';
import { bareLength, datumOf, elevationUnit } from './elevation.ts';
import { preferredUnit } from './preferred-unit.ts';
import { readUnit } from './read-unit.ts';
import type { UnitInfo, UnitRegistry } from './registry.ts';
import type { PointKind, Unit } from './unit.ts';

type System = 'SI' | 'US';

/**
 * Units that drawings and tables of one system have where the other has these: a wall of 40 mm is read in inches, a
 * yield stress in ksi, the strength of soil in ksf, wind in psf, a ship in short tons, though lengths, stresses and masses at large are not (common practice, no
 * source).
 */
const COUNTERPARTS: Readonly<Record<System, Readonly<Record<string, string>>>> = {
  US: {
    mm: 'in',
    cm: 'in',
    Pa: 'psf',
    kPa: 'ksf',
    MPa: 'ksi',
    GPa: 'ksi',
    'N/mm^2': 'ksi',
    N: 'lbf',
    t: 'ST',
    'mm/s': 'in/s',
    km: 'mi',
    'km/h': 'mph',
  },
  SI: {
    in: 'mm',
    psi: 'MPa',
    ksi: 'MPa',
    lbf: 'N',
    ST: 't',
    LT: 't',
    'in/s': 'mm/s',
    mi: 'km',
    mph: 'km/h',
  },
};

/**
 * What stands for a symbol of the other system beside a time, a money or a unit of a book's own: a price in USD/cy is
 * one in USD/m^3, an output in cy/h one in m^3/h (common practice, no source).
 */
const IN_COMPOUNDS: Readonly<Record<System, Readonly<Record<string, string>>>> = {
  US: { m: 'ft', 'm^2': 'sf', 'm^3': 'cy', L: 'gal', kg: 'lbm', kN: 'kip', ...COUNTERPARTS.US },
  SI: {
    ft: 'm',
    yd: 'm',
    sf: 'm^2',
    sy: 'm^2',
    cf: 'm^3',
    cy: 'm^3',
    gal: 'L',
    lbm: 'kg',
    kip: 'kN',
    ...COUNTERPARTS.SI,
  },
};

/**
 * The unit in which a system of units reads what another unit states: the unit itself where the system has it, its
 * counterpart where trades have one (powers too: mm^3 and in^3), else the preferred one of its dimension. An elevation
 * keeps its datum, a temperature stays one; a date is the same in both.
 */
export function unitInSystem(unit: Unit, system: System, registry: UnitRegistry): Unit {
  const found = foundIn(registry, system);
  const known = found.get(unit.text);
  if (known !== undefined) return known;
  const own = inSystem(unit, system, registry);
  found.set(unit.text, own);
  return own;
}

/** What was found already: a page asks the same for every number on it. */
const remembered = new WeakMap<UnitRegistry, Record<System, Map<string, Unit>>>();

function foundIn(registry: UnitRegistry, system: System): Map<string, Unit> {
  const found = remembered.get(registry) ?? { SI: new Map(), US: new Map() };
  remembered.set(registry, found);
  return found[system];
}

/** What a table has for a symbol: a book's own unit may be called as what every object has. */
function own(table: Readonly<Record<string, string>>, symbol: string): string | undefined {
  return Object.hasOwn(table, symbol) ? table[symbol] : undefined;
}

function inSystem(unit: Unit, system: System, registry: UnitRegistry): Unit {
  if (unit.point !== undefined) return pointInSystem(unit, unit.point, system, registry);
  if (belongs(unit.text, system, registry)) return unit;
  const [, symbol = unit.text, power = ''] = /^([^\s^·*/()]+)(\^\d+)$/.exec(unit.text) ?? [];
  const text = own(COUNTERPARTS[system], symbol);
  const counterpart = text === undefined ? undefined : readUnit(text + power, registry);
  if (counterpart?.ok && sameDimension(counterpart.value.dimension, unit.dimension)) return counterpart.value;
  return (
    symbolBySymbol(unit, system, registry) ?? preferredUnit(unit.dimension, unit.angle, system, registry)
  );
}

const TEMPERATURES: Readonly<Record<System, string>> = { SI: 'degC', US: 'degF' };

function pointInSystem(unit: Unit, point: PointKind, system: System, registry: UnitRegistry): Unit {
  const datum = datumOf(point);
  const found =
    datum !== undefined
      ? elevationUnit(unitInSystem(bareLength(unit), system, registry), datum, { from: 0, to: 0 })
      : point === 'temperature'
        ? readUnit(TEMPERATURES[system], registry)
        : undefined;
  return found?.ok ? found.value : unit;
}

/** The symbols of a unit's text, each with its power. */
const SYMBOLS = /[^\s·*/()^\d-][^\s·*/()^-]*(?:\^\d+)?/g;

/** A unit with its symbols put into a system one by one, where one of them is at home in both or is a book's own. */
function symbolBySymbol(unit: Unit, system: System, registry: UnitRegistry): Unit | undefined {
  const symbols = unit.text.match(SYMBOLS) ?? [];
  const shared = symbols.some((symbol) => {
    const info = infoOf(withoutPower(symbol), registry);
    return !info || info.system === 'both' || info.source === 'this book';
  });
  if (!shared) return undefined;
  const text = unit.text.replace(SYMBOLS, (symbol) => symbolIn(symbol, system, registry) ?? symbol);
  const found = readUnit(text, registry);
  const sound =
    found.ok && belongs(text, system, registry) && sameDimension(found.value.dimension, unit.dimension);
  return sound ? found.value : undefined;
}

function withoutPower(symbol: string): string {
  return symbol.replace(/\^\d+$/, '');
}

/** What stands for a symbol, with its power, in a system: one of the table, or of a book's own units the like one. */
function symbolIn(symbol: string, system: System, registry: UnitRegistry): string | undefined {
  const info = infoOf(withoutPower(symbol), registry);
  if (!info || info.system === 'both' || info.system === system) return symbol;
  if (info.source !== 'this book') return own(IN_COMPOUNDS[system], symbol);
  const mine = registry.units.get(symbol);
  return [...registry.infos.values()].find((other) => {
    const unit = other.source === 'this book' && other.system === system && registry.units.get(other.symbol);
    return unit && mine && sameDimension(unit.dimension, mine.dimension);
  })?.symbol;
}

/** Whether every symbol of a unit is at home in a system. */
function belongs(text: string, system: System, registry: UnitRegistry): boolean {
  return (text.match(SYMBOLS) ?? []).every((symbol) => {
    const home = infoOf(withoutPower(symbol), registry)?.system ?? 'both';
    return home === 'both' || home === system;
  });
}

function infoOf(symbol: string, { infos }: UnitRegistry): UnitInfo | undefined {
  return infos.get(symbol) ?? [...infos.values()].find(({ aliases }) => aliases.includes(symbol));
}
