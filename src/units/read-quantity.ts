import { type Outcome, type Problem, problem, shiftProblem, succeed } from '../diagnostics/index.ts';
import { isCurrencyCode } from './currency-table.ts';
import { readFeetInches } from './feet-inches.ts';
import { readUnit } from './read-unit.ts';
import type { UnitRegistry } from './registry.ts';
import { scanNumber, startsNumber } from './scan-number.ts';
import { STATED_PLAIN, type Unit } from './unit.ts';

/** A number as written, in the unit written with it; no unit if none was written. */
export interface WrittenQuantity {
  readonly x: number;
  readonly unit: Unit | undefined;
}

const SIGN = /([+-]?) */y;
const MONEY = /([+-]?) *([A-Z]{1,3}\$|\p{Sc}|[A-Z]{3}(?![\p{L}\d])) *([+-]?) *(?=[\d.(])/uy;
const STARTS_UNIT = /^(?:[\p{L}\p{Sc}°%‰#(℃℉㎀-㏟]|\/(?!\d)|1 *\/ *[\p{L}\p{Sc}°(])/u;
const STARTS_DATUM = /^\(?\p{L}/u;
const DEGREES = /°(?= *\d)/;
const DEGREES_MINUTES = /^(\d+)° *(\d{1,2}(?:\.\d+)?) *'(?: *(\d{1,2}(?:\.\d+)?) *(?:"|''))?$/;

/** Whether a text (look-alikes normalised) starts like a quantity: a sign or a currency, then a digit. */
export function startsQuantity(source: string): boolean {
  SIGN.lastIndex = 0;
  if (startsMoney(source) !== null) return true;
  SIGN.test(source);
  const at = SIGN.lastIndex;
  return startsNumber(source.charAt(at)) && (source[at] !== '.' || /\d/.test(source.charAt(at + 1)));
}

/**
 * Reads a number with the unit written with it: `-3.5 kN`, `12'-6 1/2"`, `30° 15'`, `$12.50/cy`, `5kN`. `source` has
 * its look-alikes normalised and no outer spaces; spans of problems are moved by `base`.
 */
export function readQuantity(source: string, base: number, registry: UnitRegistry): Outcome<WrittenQuantity> {
  const money = startsMoney(source);
  if (money !== null) return readMoney(source, base, registry, money);
  SIGN.lastIndex = 0;
  const sign = SIGN.exec(source)?.[1] === '-' ? -1 : 1;
  const from = SIGN.lastIndex;

  if (DEGREES.test(source)) return readDegreesMinutes(source, base, from, sign, registry);
  const feet = readFeetInches(source, from, base);
  if (feet !== undefined) {
    if (!feet.ok) return feet;
    const { symbol, value, end } = feet.value;
    // Only a datum may follow: El. 12'-6" MLLW.
    return finish(source, base, sign * value, symbol, end, registry);
  }
  const number = scanNumber(source, from, base);
  if (!number.ok) return number;
  return finish(source, base, sign * number.value.value, '', number.value.end, registry);
}

/** Reads what follows the number as its unit; `symbol` is a unit already read (feet and inches), '' if none. */
function finish(
  source: string,
  base: number,
  x: number,
  symbol: string,
  end: number,
  registry: UnitRegistry,
): Outcome<WrittenQuantity> {
  const rest = source.slice(end).trimStart();
  const at = source.length - rest.length;
  if (rest === '') {
    return symbol === '' ? succeed({ x, unit: undefined }) : withUnit(x, readUnit(symbol, registry), 0);
  }
  // Set apart it is the unit of plain numbers; behind the digits it would be a minus sign of bookkeepers.
  if (rest === '-' && symbol === '' && at > end) return succeed({ x, unit: STATED_PLAIN });
  const isUnit = rest !== 'date' && (symbol === '' ? STARTS_UNIT : STARTS_DATUM).test(rest);
  if (!isUnit) {
    const span = { from: base + at, to: base + source.length };
    return refuse(problem('entry-number-broken', span, { written: source, found: rest }));
  }
  const prefix = symbol === '' ? '' : `${symbol} `;
  return withUnit(x, readUnit(prefix + rest, registry), base + at - prefix.length);
}

/** The currency an amount starts with: a sign, or a code that is one (`API 650` is no money). */
function startsMoney(source: string): RegExpExecArray | null {
  MONEY.lastIndex = 0;
  const match = MONEY.exec(source);
  const symbol = match?.[2] ?? '';
  return /^[A-Z]{3}$/.test(symbol) && !isCurrencyCode(symbol) ? null : match;
}

/** `$1,200.50`, `-$5`, `€ 12.50/cy`, `USD 12`: a currency, a number, and what a price is per. */
function readMoney(
  source: string,
  base: number,
  registry: UnitRegistry,
  match: RegExpExecArray,
): Outcome<WrittenQuantity> {
  const [whole, before, symbol = '', after] = match;
  const from = whole.length;
  const currency = readUnit(symbol, registry);
  if (!currency.ok) return withUnit(0, currency, base + whole.indexOf(symbol));
  const number = source[from] === '(' ? undefined : scanNumber(source, from, base);
  if (number !== undefined && !number.ok) return number;
  const end = number?.value.end ?? from;
  const rest = source.slice(end).trimStart();
  const isPrice = rest === '' || rest.startsWith('/');
  if (
    number === undefined ||
    !isPrice ||
    (before !== '' && after !== '') ||
    !isCurrencyCode(currency.value.dimension.key)
  ) {
    const example = `${symbol === '$' ? '$' : `${symbol} `}1,200.50`;
    const span = { from: base, to: base + source.length };
    return refuse(problem('entry-money', span, { written: source, example }));
  }
  const x = (before === '-' || after === '-' ? -1 : 1) * number.value.value;
  return withUnit(x, readUnit(symbol + rest, registry), base + source.length - rest.length - symbol.length);
}

function readDegreesMinutes(
  source: string,
  base: number,
  from: number,
  sign: number,
  registry: UnitRegistry,
): Outcome<WrittenQuantity> {
  const match = DEGREES_MINUTES.exec(source.slice(from));
  const [degrees, minutes, seconds] = (match ?? []).slice(1).map((part) => Number(part ?? 0));
  if (
    degrees === undefined ||
    minutes === undefined ||
    seconds === undefined ||
    minutes >= 60 ||
    seconds >= 60
  ) {
    const span = { from: base, to: base + source.length };
    return refuse(problem('entry-degrees-minutes', span, { written: source }));
  }
  return withUnit(sign * (degrees + minutes / 60 + seconds / 3600), readUnit('deg', registry), 0);
}

function withUnit(x: number, unit: Outcome<Unit>, movedBy: number): Outcome<WrittenQuantity> {
  if (unit.ok) return succeed({ x, unit: unit.value });
  return { ok: false, problems: unit.problems.map((p) => shiftProblem(p, movedBy)) };
}

function refuse(p: Problem): Outcome<never> {
  return { ok: false, problems: [p] };
}
