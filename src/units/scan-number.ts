import { type Outcome, type Problem, problem, succeed } from '../diagnostics/index.ts';

/** A number as written, without its sign, and the place after it. */
export interface NumberScan {
  readonly value: number;
  readonly end: number;
  /** Whether it is digits and nothing else: only then may inches follow as feet and inches. */
  readonly whole: boolean;
}

const SPACED_GROUPS = /\d{1,3}(?: \d{3})+(?!\d)(?! *\/ *\d)/y;
const DIGITS = /[\d.,]+/y;
const COMMA_GROUPS = /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?$/;
const POINT_GROUPS = /^[1-9]\d{0,2}(?:\.\d{3})+(?:,\d+)?$/;
const EXPONENT = /[eE]([+-]?\d+)/y;
const TIMES_TEN = / *[·x*] *10(?:\^([+-]?\d+)|\^\(([+-]?\d+)\)|([⁺⁻]?)([⁰¹²³⁴⁵⁶⁷⁸⁹]+))/y;
const RAISED = /([⁺⁻]?)([⁰¹²³⁴⁵⁶⁷⁸⁹]+)/y;
const FRACTION = /\/(\d+)(?![\d.,/])/y;
const MIXED = /[ -](\d+)\/(\d+)(?![\d.,/])/y;
const VULGAR = / ?([¼½¾⅓⅔⅛⅜⅝⅞])/y;
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** The fractions that are one character. */
const VULGAR_VALUES: Readonly<Record<string, number>> = {
  '¼': 1 / 4,
  '½': 1 / 2,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/** Whether the character can start a number (sign apart). */
export function startsNumber(character: string): boolean {
  return /[\d.¼½¾⅓⅔⅛⅜⅝⅞]/.test(character);
}

/**
 * Reads the number at `from` of `source` (look-alikes normalised): decimals, thousands in commas or spaces, powers
 * of ten as e6, ·10^6 or 10⁶, fractions and mixed fractions. Problems carry spans into `source`, moved by `base`.
 */
export function scanNumber(source: string, from: number, base: number): Outcome<NumberScan> {
  const broken = (to: number, found: string): Outcome<NumberScan> =>
    refuse(
      problem(
        'entry-number-broken',
        { from: base + from, to: base + to },
        { written: source.slice(from), found },
      ),
    );

  VULGAR.lastIndex = from;
  const vulgar = source[from] === ' ' ? null : VULGAR.exec(source);
  if (vulgar !== null)
    return succeed({ value: VULGAR_VALUES[vulgar[1] ?? ''] ?? 0, end: VULGAR.lastIndex, whole: false });

  const token = digitsAt(source, from);
  if (token === undefined) return broken(source.length, source.slice(from));
  const digits = plainDigits(token, from, base, source[from - 1] === '-' ? '-' : '');
  if (!digits.ok) return digits;
  let end = from + token.length;
  let value = Number(digits.value);
  let whole = /^\d+$/.test(digits.value);

  if (whole) {
    const fraction = fractionAt(source, end);
    if (fraction !== undefined) {
      const { over, under, mixed } = fraction;
      if (under === 0) {
        const written = source.slice(from, fraction.end);
        return refuse(
          problem('entry-fraction-zero', { from: base + from, to: base + fraction.end }, { written }),
        );
      }
      if (mixed && over >= under) return broken(fraction.end, source.slice(end, fraction.end).trim());
      const result = mixed ? value + over / under : value / under;
      return succeed({ value: result, end: fraction.end, whole: false });
    }
  }
  const ten = digits.value === '10' ? raisedAt(source, end) : undefined;
  const power = ten ?? exponentAt(source, end);
  if (power !== undefined) {
    end = power.end;
    value = Number(`${ten ? 1 : digits.value}e${power.exponent}`);
    whole = false;
  }
  const lost = value === 0 && /[1-9]/.test(digits.value);
  if (!Number.isFinite(value) || lost) {
    const span = { from: base + from, to: base + end };
    return refuse(problem('entry-out-of-range', span, { written: source.slice(from, end) }));
  }
  return succeed({ value, end, whole });
}

/** The run of digits, points and group separators at `from`. */
function digitsAt(source: string, from: number): string | undefined {
  SPACED_GROUPS.lastIndex = from;
  const spaced = SPACED_GROUPS.exec(source)?.[0];
  if (spaced !== undefined) {
    const decimals = /[.,]\d*/y;
    decimals.lastIndex = from + spaced.length;
    return spaced + (decimals.exec(source)?.[0] ?? '');
  }
  DIGITS.lastIndex = from;
  const run = DIGITS.exec(source)?.[0];
  return run !== undefined && /\d/.test(run) ? run : undefined;
}

/** Takes group separators out; refuses what could be read two ways, in words that keep the sign in front. */
function plainDigits(token: string, from: number, base: number, sign: string): Outcome<string> {
  const compact = token.replaceAll(' ', '');
  if (/^(?:\d+\.?\d*|\.\d+)$/.test(compact)) return succeed(compact);
  if (!token.includes(' ') && COMMA_GROUPS.test(compact)) return succeed(compact.replaceAll(',', ''));
  const span = { from: base + from, to: base + from + token.length };
  const readings = [...new Set(groupReadings(compact))];
  if (readings.length === 0) {
    return refuse(problem('entry-number-broken', span, { written: token, found: '' }));
  }
  const signed = readings.map((reading) => sign + reading);
  const fixes = readings.map((insert) => ({ label: sign + insert, ...span, insert }));
  return refuse(problem('entry-digit-groups', span, { written: sign + token, readings: signed }, fixes));
}

/** What a token with commas or points in odd places may mean. */
function groupReadings(token: string): string[] {
  const commaAsPoint = token.replaceAll('.', '').replace(',', '.');
  const commaDropped = token.replaceAll(',', '');
  if (POINT_GROUPS.test(token)) {
    return token.includes(',')
      ? [commaAsPoint, commaDropped.replace(/\.(?=.*\.)/g, '')]
      : [token.replaceAll('.', '')];
  }
  // No one parts thousands behind a leading zero.
  if (/^0,\d+$/.test(token)) return [commaAsPoint];
  if (/^\d+,\d+$/.test(token)) return [commaAsPoint, String(BigInt(commaDropped))];
  if (/^\d+(?:,\d+)+(?:\.\d*)?$/.test(token)) return [commaDropped];
  return [];
}

interface FractionScan {
  readonly over: number;
  readonly under: number;
  readonly mixed: boolean;
  readonly end: number;
}

/** What makes a whole number a fraction: "/4", " 1/2", "-1/2" or "½" behind it. */
function fractionAt(source: string, at: number): FractionScan | undefined {
  FRACTION.lastIndex = at;
  const simple = FRACTION.exec(source);
  if (simple !== null) return { over: 1, under: Number(simple[1]), mixed: false, end: FRACTION.lastIndex };
  MIXED.lastIndex = at;
  const mixed = MIXED.exec(source);
  if (mixed !== null) {
    return { over: Number(mixed[1]), under: Number(mixed[2]), mixed: true, end: MIXED.lastIndex };
  }
  VULGAR.lastIndex = at;
  const vulgar = VULGAR.exec(source);
  if (vulgar === null) return undefined;
  return { over: VULGAR_VALUES[vulgar[1] ?? ''] ?? 0, under: 1, mixed: true, end: VULGAR.lastIndex };
}

function exponentAt(source: string, at: number): { exponent: string; end: number } | undefined {
  EXPONENT.lastIndex = at;
  const short = EXPONENT.exec(source);
  if (short?.[1] !== undefined) return { exponent: short[1], end: EXPONENT.lastIndex };
  TIMES_TEN.lastIndex = at;
  const long = TIMES_TEN.exec(source);
  if (long === null) return undefined;
  const [, bare, bracketed, minus, raised] = long;
  return { exponent: bare ?? bracketed ?? lowered(minus, raised), end: TIMES_TEN.lastIndex };
}

/** The raised digits behind a ten that is a number by itself: 10⁻⁶. */
function raisedAt(source: string, at: number): { exponent: string; end: number } | undefined {
  RAISED.lastIndex = at;
  const found = RAISED.exec(source);
  return found === null ? undefined : { exponent: lowered(found[1], found[2]), end: RAISED.lastIndex };
}

function lowered(minus: string | undefined, raised = ''): string {
  const digits = Array.from(raised, (digit) => SUPERSCRIPTS.indexOf(digit)).join('');
  return `${minus === '⁻' ? '-' : ''}${digits}`;
}

function refuse(p: Problem): Outcome<never> {
  return { ok: false, problems: [p] };
}
