import { sameDimension } from './dimension.ts';
import { preferredUnit } from './preferred-unit.ts';
import { readUnit } from './read-unit.ts';
import type { UnitInfo, UnitRegistry } from './registry.ts';
import type { Unit } from './unit.ts';

type System = 'SI' | 'US';

/**
 * Units that drawings and tables of one system have where the other has these: a wall of 40 mm is read in inches, a
 * yield stress in ksi, a ship in short tons, though lengths, stresses and masses at large are not (common practice, no
 * source).
 */
const COUNTERPARTS: Readonly<Record<System, Readonly<Record<string, string>>>> = {
  US: {
    mm: 'in',
    cm: 'in',
    MPa: 'ksi',
    GPa: 'ksi',
    'N/mm^2': 'ksi',
    N: 'lbf',
    t: 'ST',
    'mm/s': 'in/s',
  },
  SI: {
    in: 'mm',
    psi: 'MPa',
    ksi: 'MPa',
    lbf: 'N',
    ST: 't',
    LT: 't',
    'in/s': 'mm/s',
  },
};

/**
 * The unit in which a system of units reads what another unit states: the unit itself where the system has it, its
 * counterpart where trades have one (powers too: mm^3 and in^3), else the preferred one of its dimension.
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

function inSystem(unit: Unit, system: System, registry: UnitRegistry): Unit {
  if (belongs(unit.text, system, registry)) return unit;
  const [, symbol = unit.text, power = ''] = /^([^\s^·*/()]+)(\^\d+)$/.exec(unit.text) ?? [];
  const text = COUNTERPARTS[system][symbol];
  const counterpart = text === undefined ? undefined : readUnit(text + power, registry);
  if (counterpart?.ok && sameDimension(counterpart.value.dimension, unit.dimension)) return counterpart.value;
  return preferredUnit(unit.dimension, unit.angle, system, registry);
}

/** Whether every symbol of a unit is at home in a system; those of a book of its own are in both. */
function belongs(text: string, system: System, registry: UnitRegistry): boolean {
  const symbols = text.split(/[\s·*/()^-]+|(?<=\^)\d+/).filter((part) => part !== '' && !/^\d/.test(part));
  return symbols.every((symbol) => {
    const home = infoOf(symbol, registry)?.system ?? 'both';
    return home === 'both' || home === system;
  });
}

function infoOf(symbol: string, { infos }: UnitRegistry): UnitInfo | undefined {
  return infos.get(symbol) ?? [...infos.values()].find(({ aliases }) => aliases.includes(symbol));
}
