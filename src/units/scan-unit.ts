import { LARGEST_EXPONENT } from './dimension.ts';
import { type Rational, rational } from './rational.ts';

/** One symbol of a compound unit with its exponent (negative when divided by), and where the symbol stands. */
export interface UnitFactor {
  readonly symbol: string;
  readonly power: Rational;
  readonly from: number;
  readonly to: number;
}

/** Why a compound unit does not read. `from` and `to` mark the place. */
export type UnitTrouble =
  | { readonly kind: 'unexpected'; readonly from: number; readonly to: number }
  | { readonly kind: 'power'; readonly from: number; readonly to: number }
  | { readonly kind: 'digits'; readonly from: number; readonly to: number; readonly symbolEnd: number }
  | { readonly kind: 'after-slash'; readonly from: number; readonly to: number; readonly readings: string[] };

/** The factors of a compound unit, or why there are none. */
export type UnitScan =
  | { readonly ok: true; readonly factors: readonly UnitFactor[] }
  | { readonly ok: false; readonly trouble: UnitTrouble };

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

const SYMBOL = /[\p{L}\p{Sc}°%‰#_℃℉㎀-㏟]+\.?/uy;
const POWER = /(?:\^|\*\*)(?:([+-]?\d{1,3})|\(([+-]?\d{1,3})(?:\/(\d{1,3}))?\))|([⁺⁻]?)([⁰¹²³⁴⁵⁶⁷⁸⁹]{1,3})/y;
const SEPARATOR = / *[·*-] *| +(?![ /])/y;
const SLASH = / *\/ */y;
const BARE_DIGITS = /-?\d+/y;

/** Whether digits straight behind a symbol can be nothing but its power: `m2`, `ft3`. */
export type BarePowers = (symbol: string, digits: string) => boolean;

/**
 * Splits a compound unit (look-alikes already normalised) into factors: products by `·`, `*`, `-` or a space,
 * powers as `^2`, `**2`, `²`, `^-1`, `^(1/2)`, bare digits where they can be nothing else, and one `/` followed by one factor
 * or a product in parentheses.
 */
export function scanUnit(text: string, isBarePower: BarePowers): UnitScan {
  const inner = withoutOuterParentheses(text);
  const start = text.indexOf(inner);
  const source = text.slice(0, start + inner.length);
  const factors: UnitFactor[] = [];

  let at = start;
  const one = /1 *(?=\/)/y;
  one.lastIndex = at;
  if (one.test(source)) {
    at = one.lastIndex;
  } else {
    const above = scanGroup(source, at, { sign: 1, bareProduct: true, isBarePower }, factors);
    if (typeof above !== 'number') return { ok: false, trouble: above };
    at = above;
  }
  if (at === source.length) return { ok: true, factors };

  const afterSlash = matchAt(SLASH, source, at);
  if (afterSlash === undefined) return unexpected(source, at);
  const below = scanGroup(source, afterSlash, { sign: -1, bareProduct: false, isBarePower }, factors);
  if (typeof below !== 'number') return { ok: false, trouble: below };
  if (below === source.length) return { ok: true, factors };
  if (matchAt(SLASH, source, below) === undefined && matchAt(SEPARATOR, source, below) === undefined) {
    return unexpected(source, below);
  }
  const readings = readingsOf(source.slice(start, at), source.slice(afterSlash, below), source.slice(below));
  return { ok: false, trouble: { kind: 'after-slash', from: below, to: source.length, readings } };
}

/** How factors on one side of the slash are scanned. */
interface Side {
  readonly sign: 1 | -1;
  readonly bareProduct: boolean;
  readonly isBarePower: BarePowers;
}

/** One factor, or a product: in parentheses, or (above the slash) bare. Gives the place after it, or the trouble. */
function scanGroup(source: string, from: number, side: Side, factors: UnitFactor[]): number | UnitTrouble {
  const inParentheses = source[from] === '(';
  let at = inParentheses ? from + 1 : from;
  for (;;) {
    const next = scanFactor(source, at, side, factors);
    if (typeof next !== 'number') return next;
    at = next;
    if (inParentheses && source[at] === ')') return at + 1;
    const after = inParentheses || side.bareProduct ? matchAt(SEPARATOR, source, at) : undefined;
    if (after === undefined) return inParentheses ? troubleAt(source, at) : at;
    at = after;
  }
}

function scanFactor(
  source: string,
  from: number,
  { sign, isBarePower }: Side,
  factors: UnitFactor[],
): number | UnitTrouble {
  const to = matchAt(SYMBOL, source, from);
  if (to === undefined) return troubleAt(source, from);
  const symbol = source.slice(from, to);
  const digitsEnd = matchAt(BARE_DIGITS, source, to);
  if (digitsEnd !== undefined) {
    const digits = source.slice(to, digitsEnd);
    if (isBarePower(symbol, digits)) {
      factors.push({ symbol, power: { n: sign * Number(digits), d: 1 }, from, to });
      return digitsEnd;
    }
    return { kind: 'digits', from, to: digitsEnd, symbolEnd: to };
  }
  const powerEnd = matchAt(POWER, source, to);
  if (powerEnd === undefined) {
    if (source[to] === '^') return { kind: 'power', from: to, to: source.length };
    factors.push({ symbol, power: { n: sign, d: 1 }, from, to });
    return to;
  }
  const power = readPower(source.slice(to, powerEnd));
  if (power.n === 0 || Math.abs(power.n) > LARGEST_EXPONENT || power.d > LARGEST_EXPONENT) {
    return { kind: 'power', from: to, to: powerEnd };
  }
  factors.push({ symbol, power: { n: sign * power.n, d: power.d }, from, to });
  return powerEnd;
}

function readPower(text: string): Rational {
  POWER.lastIndex = 0;
  const [, bare, over, under, minus, raised] = POWER.exec(text) ?? [];
  if (raised !== undefined) {
    const size = Number(Array.from(raised, (digit) => SUPERSCRIPTS.indexOf(digit)).join(''));
    return rational(minus === '⁻' ? -size : size);
  }
  const divisor = Number(under ?? 1);
  return divisor === 0 ? { n: 0, d: 1 } : rational(Number(bare ?? over), divisor);
}

/** The two ways to read `a/b/c` or `a/b·c`, when no more follows. */
function readingsOf(above: string, below: string, rest: string): string[] {
  const tail = rest.replace(/^ *[/·*-]? */, '');
  const simple = /^[^/·*() -]+$/;
  if (!simple.test(tail) || !simple.test(below)) return [];
  return [
    `${above}/(${below}·${tail})`,
    above === '1 ' || above === '1' ? `${tail}/${below}` : `${above}·${tail}/${below}`,
  ];
}

/** The text without outer spaces and without a pair of parentheses round all of it. */
export function withoutOuterParentheses(text: string): string {
  const inner = /^ *\(([^()]*(?:\([^()]*\)[^()]*)*)\) *$/.exec(text)?.[1];
  return inner === undefined ? text.trim() : inner.trim();
}

function unexpected(source: string, at: number): UnitScan {
  return { ok: false, trouble: troubleAt(source, at) };
}

function troubleAt(source: string, at: number): UnitTrouble {
  return { kind: 'unexpected', from: at, to: source.length };
}

function matchAt(pattern: RegExp, source: string, at: number): number | undefined {
  pattern.lastIndex = at;
  return pattern.test(source) ? pattern.lastIndex : undefined;
}
