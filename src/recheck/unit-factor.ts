import { normaliseLookAlikes, type Unit } from '../units/index.ts';
import { FACTORS } from './factors.ts';

/** SI = x · factor + offset. */
export interface UnitFactor {
  readonly factor: number;
  readonly offset: number;
}

/** The factor of a unit, or undefined if its symbols are not all known here. */
export type FactorReader = (unit: Unit) => UnitFactor | undefined;

const standard: ReadonlyMap<string, UnitFactor> = new Map(
  FACTORS.map(([symbol, factor, offset]) => [symbol, { factor, offset }]),
);
const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const currency = /^([A-Z]{3}|\p{Sc})$/u;

/**
 * Reads unit texts with the factors of the independent table; the book's own units come from their definitions, and
 * every currency is its own unit. A text that `src/units` has accepted is taken to be well formed.
 */
export function factorReader(
  units: readonly { readonly symbol: string; readonly definition: string }[],
): FactorReader {
  const own = new Map<string, UnitFactor>();
  const known = new Map<string, UnitFactor | undefined>();
  for (const { symbol, definition } of units) {
    const found = factorOfDefinition(definition, own);
    if (found) own.set(symbol, found);
  }
  return (unit) => {
    const text = bareText(unit);
    const key = unit.point === undefined ? text : `${text} as a point`;
    if (!known.has(key)) known.set(key, factorOfText(text, own, unit.point === 'temperature'));
    return known.get(key);
  };
}

/** The unit without what names a datum, and a date as the seconds it is kept in. */
function bareText(unit: Unit): string {
  if (unit.point === 'date') return 's';
  const source = normaliseLookAlikes(unit.text).trim();
  if (!unit.point?.startsWith('elevation:')) return source;
  const text = source.replace(/^\s*el(ev(ation)?)?[.:=\s]+/i, '').trim();
  return text.replace(/\s.*$/u, '');
}

/** "10 h", "1,200 lbf" or "base". */
function factorOfDefinition(
  definition: string,
  own: ReadonlyMap<string, UnitFactor>,
): UnitFactor | undefined {
  if (definition.trim() === 'base') return { factor: 1, offset: 0 };
  const [, number = '', text = ''] = /^\s*([\d.,]+(?:[eE][+-]?\d+)?)\s*(.*)$/u.exec(definition) ?? [];
  const size = Number(number.replaceAll(',', ''));
  const unit = factorOfText(text, own, false);
  return number !== '' && Number.isFinite(size) && unit
    ? { factor: size * unit.factor, offset: 0 }
    : undefined;
}

/** A product of powers, what stands behind the slash dividing. `point`: a temperature, whose zero is displaced. */
function factorOfText(
  text: string,
  own: ReadonlyMap<string, UnitFactor>,
  point: boolean,
): UnitFactor | undefined {
  const source = text
    .normalize('NFC')
    .replace(/[⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/gu, (power) => `^${lowered(power)}`)
    // The slash of an exponent does not divide.
    .replace(/\^\(([+-]?\d+)\/(\d+)\)/gu, '^$1:$2');
  const [above = '', below = ''] = source.split('/');
  let factor = 1;
  for (const [part, sign] of [
    [above, 1],
    [below, -1],
  ] as const) {
    for (const [, symbol = '', n = '1', d = '1'] of part.matchAll(
      /([\p{L}\p{Sc}°%‰#_℃℉]+\.?)(?:\^\(?([+-]?\d+)(?::(\d+))?\)?)?/gu,
    )) {
      const found = factorOfSymbol(symbol, own);
      if (!found) return undefined;
      if (point) return found;
      factor *= found.factor ** ((sign * Number(n)) / Number(d));
    }
  }
  return { factor, offset: 0 };
}

function factorOfSymbol(symbol: string, own: ReadonlyMap<string, UnitFactor>): UnitFactor | undefined {
  const found = own.get(symbol) ?? standard.get(symbol);
  if (found) return found;
  if (symbol.endsWith('.')) return factorOfSymbol(symbol.slice(0, -1), own);
  return currency.test(symbol) ? { factor: 1, offset: 0 } : undefined;
}

function lowered(power: string): string {
  return Array.from(power, (sign) =>
    raised.includes(sign) ? raised.indexOf(sign) : sign === '⁻' ? '-' : '',
  ).join('');
}
