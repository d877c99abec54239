import { type Outcome, problem } from '../diagnostics/index.ts';
import { scanNumber, startsNumber } from './scan-number.ts';

/** Feet and inches, or inches alone, without sign: the value in `symbol`, and the place after it. */
export interface FeetInches {
  readonly value: number;
  readonly symbol: 'ft' | 'in';
  readonly end: number;
}

/** Digits of a power, as in `3 ft2` and `2 ft3/s`, are no inches. */
const FOOT_MARK = / *(?:'(?!')|ft\.?(?![\p{L}.]|[23] *(?:$|[/)*·])))/uy;
const INCH_MARK = / *(?:"|''|in\.?(?![\p{L}.]))/uy;
const JOIN = / *-? */y;

/**
 * Reads `12'`, `6 1/2"`, `12'-6 1/2"`, `12 ft 6 in` at `from` (look-alikes normalised, sign taken off). Undefined if
 * this is not feet and inches, so that `12 ft/s` reads as an ordinary unit; a problem if it starts like feet and
 * inches and goes wrong.
 */
export function readFeetInches(source: string, from: number, base: number): Outcome<FeetInches> | undefined {
  const first = scanNumber(source, from, base);
  if (!first.ok) return undefined;
  const afterFirst = first.value.end;
  if (/^ *["']{1,2}/.test(source.slice(afterFirst)) && matchAt(FOOT_MARK, source, afterFirst) === undefined) {
    const end = matchAt(INCH_MARK, source, afterFirst);
    return end === undefined
      ? undefined
      : { ok: true, value: { value: first.value.value, symbol: 'in', end } };
  }
  const afterFeet = matchAt(FOOT_MARK, source, afterFirst);
  if (afterFeet === undefined) return undefined;
  const marked = source[afterFeet - 1] === "'";
  const second = matchAt(JOIN, source, afterFeet) ?? afterFeet;
  if (!startsNumber(source.charAt(second))) {
    return marked
      ? { ok: true, value: { value: first.value.value, symbol: 'ft', end: afterFeet } }
      : undefined;
  }
  return readInches(source, base, from, { ...first.value, second });
}

function readInches(
  source: string,
  base: number,
  from: number,
  feet: { readonly value: number; readonly whole: boolean; readonly second: number },
): Outcome<FeetInches> {
  const written = source.slice(from);
  const span = { from: base + from, to: base + source.length };
  const refuse = (trouble: string, example: string, insert?: string): Outcome<FeetInches> => {
    const fixes = insert === undefined ? [] : [{ label: insert, ...span, insert }];
    return {
      ok: false,
      problems: [problem('entry-feet-inches', span, { written, trouble, example }, fixes)],
    };
  };
  const inches = scanNumber(source, feet.second, base);
  if (!inches.ok) return inches;
  const end = matchAt(INCH_MARK, source, inches.value.end);
  if (end === undefined) {
    const marked = inches.value.end === source.length ? `${written}"` : undefined;
    return refuse('the inches have no mark', marked ?? '12\'-6 1/2"', marked);
  }
  if (!feet.whole) return refuse('only whole feet can be followed by inches', '12\'-6 1/2"');
  if (inches.value.value >= 12) return refuse('the inches are not less than 12', '12\'-6 1/2"');
  return { ok: true, value: { value: (feet.value * 12 + inches.value.value) / 12, symbol: 'ft', end } };
}

function matchAt(pattern: RegExp, source: string, at: number): number | undefined {
  pattern.lastIndex = at;
  return pattern.test(source) ? pattern.lastIndex : undefined;
}
