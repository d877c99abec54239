import { CURRENCY_CODES, CURRENCY_SIGNS, STANDARD_DATUMS } from './currency-table.ts';
import { baseDimension, parseDimension } from './dimension.ts';
import { REFUSED_TABLE, type RefusedUnit } from './refused-table.ts';
import type { Unit } from './unit.ts';
import { UNIT_TABLE, type UnitRow, type UnitSystem } from './unit-table.ts';

/** What the reference page and the editor's completion say of a symbol. */
export interface UnitInfo {
  readonly symbol: string;
  readonly aliases: readonly string[];
  readonly name: string;
  readonly system: UnitSystem;
  readonly source: string;
  /** The force a mass weighs in standard gravity, or the mass of a force: `lbf` for `lbm`. */
  readonly counterpart?: string;
}

/** The units in use: an immutable value. Prebuilt maps, so that looking up a symbol is one step. */
export interface UnitRegistry {
  /** Every symbol and alias, `$` included, as a unit on its own. */
  readonly units: ReadonlyMap<string, Unit>;
  /** By symbol (aliases not included), in the order of the table. */
  readonly infos: ReadonlyMap<string, UnitInfo>;
  readonly refused: ReadonlyMap<string, RefusedUnit>;
  readonly datums: ReadonlySet<string>;
  /** The ISO 4217 code `$` stands for. */
  readonly currency: string;
}

/** The registry of the program: no book units, `$` the US dollar. */
export const standardUnits: UnitRegistry = buildStandard();

/** The unit `$` of a book whose currency is `code`. */
export function dollarUnit(code: string): Unit {
  return moneyUnit('$', code);
}

function buildStandard(): UnitRegistry {
  const units = new Map<string, Unit>();
  const infos = new Map<string, UnitInfo>();
  for (const row of UNIT_TABLE) {
    for (const text of [row.symbol, ...(row.aliases ?? [])]) units.set(text, unitOfRow(row, text));
    infos.set(row.symbol, infoOfRow(row));
  }
  for (const code of CURRENCY_CODES) {
    const aliases = CURRENCY_SIGNS.filter(([, of]) => of === code).map(([sign]) => sign);
    for (const text of [code, ...aliases]) units.set(text, moneyUnit(text, code));
    infos.set(code, { symbol: code, aliases, name: `currency ${code}`, system: 'both', source: 'ISO 4217' });
  }
  units.set('$', dollarUnit('USD'));
  return {
    units,
    infos,
    refused: new Map(REFUSED_TABLE.map((row) => [row.symbol, row])),
    datums: new Set(STANDARD_DATUMS),
    currency: 'USD',
  };
}

function unitOfRow(row: UnitRow, text: string): Unit {
  return {
    text,
    dimension: parseDimension(row.dimension),
    factor: row.factor,
    offset: row.offset ?? 0,
    angle: row.angle ?? false,
    ...(row.point !== undefined && { point: row.point }),
  };
}

function infoOfRow(row: UnitRow): UnitInfo {
  return {
    symbol: row.symbol,
    aliases: row.aliases ?? [],
    name: row.name,
    system: row.system,
    source: row.source,
    ...(row.counterpart !== undefined && { counterpart: row.counterpart }),
  };
}

function moneyUnit(text: string, code: string): Unit {
  return { text, dimension: baseDimension(code), factor: 1, offset: 0, angle: false };
}
