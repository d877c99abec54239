import {
  listed,
  nearest,
  type Outcome,
  type Problem,
  problem,
  type Span,
  succeed,
} from '../diagnostics/index.ts';
import { CURRENCY_CODES, isCurrencyCode } from './currency-table.ts';
import { baseDimension, PHYSICAL_BASES } from './dimension.ts';
import { readEntry } from './read-entry.ts';
import { dollarUnit, type UnitRegistry } from './registry.ts';
import type { Unit } from './unit.ts';

/** A unit a book defines: as a number of a known unit ("10 h", "1 shift"), or "base" for a new kind of quantity. */
export interface UnitDefinition {
  readonly symbol: string;
  readonly definition: string;
  /** The system that has the unit; without it both have. */
  readonly system?: 'SI' | 'US';
}

/** What a book adds to the registry. */
export interface UnitExtension {
  readonly units?: readonly UnitDefinition[];
  readonly datums?: readonly string[];
  readonly currency?: string;
}

/**
 * The registry with a book's own units, datums and currency. A definition may use the ones before it. Nothing that
 * already means something can be redefined. All problems are found, not only the first; spans are into the symbol,
 * definition, datum or currency code they tell of.
 */
export function extendUnits(registry: UnitRegistry, extension: UnitExtension): Outcome<UnitRegistry> {
  const problems: Problem[] = [];
  const units = new Map(registry.units);
  const infos = new Map(registry.infos);
  const datums = new Set(registry.datums);
  let extended: UnitRegistry = { ...registry, units, infos, datums };

  const currency = extension.currency ?? registry.currency;
  if (isCurrencyCode(currency)) {
    extended = { ...extended, currency };
    units.set('$', dollarUnit(currency));
  } else {
    const near = nearest(currency, CURRENCY_CODES);
    problems.push(problem('define-currency', whole(currency), { currency, nearest: near }));
  }
  for (const datum of extension.datums ?? []) {
    const trouble = datumTrouble(datum, extended);
    if (trouble === undefined) datums.add(datum);
    else problems.push(trouble);
  }
  for (const { symbol, definition, system = 'both' } of extension.units ?? []) {
    const trouble = symbolTrouble(symbol, extended);
    const unit = trouble === undefined ? define(symbol, definition, extended) : undefined;
    if (trouble !== undefined) problems.push(trouble);
    else if (unit?.ok === false) problems.push(...unit.problems);
    else if (unit?.ok) {
      units.set(symbol, unit.value);
      const name = definition.trim() === 'base' ? `base unit ${symbol}` : `${symbol} = ${definition.trim()}`;
      infos.set(symbol, { symbol, aliases: [], name, system, source: 'this book' });
    }
  }
  return problems.length > 0 ? { ok: false, problems } : succeed(extended);
}

function define(symbol: string, definition: string, registry: UnitRegistry): Outcome<Unit> {
  if (definition.trim() === 'base') {
    return succeed({ text: symbol, dimension: baseDimension(symbol), factor: 1, offset: 0, angle: false });
  }
  const size = readEntry(definition, registry);
  if (!size.ok) return size;
  if (size.value.kind !== 'number' || !(size.value.si > 0)) {
    return { ok: false, problems: [problem('define-size', whole(definition), { symbol, definition })] };
  }
  const { si, unit } = size.value;
  return succeed({ text: symbol, dimension: unit.dimension, factor: si, offset: 0, angle: unit.angle });
}

function symbolTrouble(symbol: string, registry: UnitRegistry): Problem | undefined {
  if (!/^\p{L}{1,12}$/u.test(symbol) || symbol === 'base') {
    return problem('define-symbol', whole(symbol), { symbol });
  }
  const holder = holderOf(symbol, registry);
  return holder === undefined ? undefined : problem('define-taken', whole(symbol), { symbol, holder });
}

function datumTrouble(datum: string, registry: UnitRegistry): Problem | undefined {
  if (!/^\p{L}[\p{L}\p{N}]{0,23}$/u.test(datum)) return problem('define-datum', whole(datum), { datum });
  if (registry.datums.has(datum)) return undefined;
  const holder = holderOf(datum, registry);
  return holder === undefined ? undefined : problem('define-taken', whole(datum), { symbol: datum, holder });
}

/** What a symbol already means, as a clause: "it is the inch"; undefined if it is free. */
function holderOf(symbol: string, registry: UnitRegistry): string | undefined {
  if (registry.units.has(symbol))
    return `it is already a unit (${registry.infos.get(symbol)?.name ?? symbol})`;
  const refused = registry.refused.get(symbol);
  if (refused !== undefined) return `it is usually read as ${listed(refused.choices)}`;
  if (registry.datums.has(symbol)) return 'it is already a datum';
  if (PHYSICAL_BASES.includes(symbol)) return 'it is the sign of a dimension';
  return symbol === 'date' || symbol === 'El' ? 'it has a meaning of its own' : undefined;
}

function whole(text: string): Span {
  return { from: 0, to: text.length };
}
