import { nearest, type Outcome, type Problem, problem, type Span, succeed } from '../diagnostics/index.ts';
import { type Dimension, PLAIN, powerDimension, timesDimension } from './dimension.ts';
import { elevationUnit, splitElevation } from './elevation.ts';
import { normaliseLookAlikes } from './look-alikes.ts';
import { addRational, type Rational, rational } from './rational.ts';
import type { UnitRegistry } from './registry.ts';
import { scanUnit, type UnitFactor, type UnitTrouble, withoutOuterParentheses } from './scan-unit.ts';
import { DATE_UNIT, PLAIN_UNIT, type Unit } from './unit.ts';
import { volumeState } from './volume-states.ts';

const LONGEST_UNIT = 120;

/** Of which units, by dimension, a digit from 2 to this straight behind the symbol is a power: m2, in4, m/s2. */
const BARE_POWERS: ReadonlyMap<string, number> = new Map([
  ['L', 4],
  ['T', 2],
]);

/**
 * Reads a unit as a person writes one: `kN·m`, `kip-ft`, `lbf/ft^2`, `kN/m2`, `USD/cy`; '' or `-` is plain; `degC` alone is a
 * temperature (a point), `ft MLLW` an elevation to a datum, `El. ft` one to no named datum, `date` a calendar date.
 * Problems carry spans into `text`.
 */
export function readUnit(text: string, registry: UnitRegistry): Outcome<Unit> {
  const known = registry.units.get(text);
  if (known !== undefined) return succeed(known);
  if (text.length > LONGEST_UNIT) {
    return { ok: false, problems: [problem('unit-too-long', whole(text), { longest: LONGEST_UNIT })] };
  }
  const source = normaliseLookAlikes(text);
  const trimmed = source.trim();
  if (trimmed === '' || trimmed === '-') return succeed(PLAIN_UNIT);
  if (trimmed === 'date') return succeed(DATE_UNIT);
  const same = registry.units.get(trimmed);
  if (same !== undefined) return succeed(same);
  const refusal = refusedAs(trimmed, source.indexOf(trimmed), registry);
  if (refusal !== undefined) return { ok: false, problems: [refusal] };

  const elevation = splitElevation(source, registry);
  if (elevation === undefined) return readCompound(source, withoutOuterParentheses(text), registry);
  if (!elevation.ok) return elevation;
  const { length, datum, from } = elevation.value;
  const unit = readCompound(' '.repeat(from) + length, length, registry);
  return unit.ok ? elevationUnit(unit.value, datum, { from, to: from + length.length }) : unit;
}

/** Reads a compound; `source` has its look-alikes normalised, `written` becomes the unit's text. */
function readCompound(source: string, written: string, registry: UnitRegistry): Outcome<Unit> {
  const scan = scanUnit(source, (symbol, digits) => {
    const most = BARE_POWERS.get(registry.units.get(symbol)?.dimension.key ?? '') ?? 0;
    return /^[234]$/.test(digits) && Number(digits) <= most;
  });
  if (!scan.ok) return { ok: false, problems: [troubleProblem(scan.trouble, source, registry)] };
  const only = scan.factors[0];
  if (only !== undefined && scan.factors.length === 1 && only.power.n === 1 && only.power.d === 1) {
    const unit = unitOfFactor(only, registry);
    return unit.ok ? succeed({ ...unit.value, text: written }) : unit;
  }
  return multiply(scan.factors, source, written, registry);
}

function multiply(
  factors: readonly UnitFactor[],
  source: string,
  written: string,
  registry: UnitRegistry,
): Outcome<Unit> {
  const problems: Problem[] = [];
  let dimension: Dimension = PLAIN;
  let factor = 1;
  let angles: Rational = { n: 0, d: 1 };
  for (const item of factors) {
    const unit = unitOfFactor(item, registry);
    if (!unit.ok) {
      problems.push(...unit.problems);
      continue;
    }
    dimension = timesDimension(dimension, powerDimension(unit.value.dimension, item.power));
    factor = timesPower(factor, unit.value.factor, item.power);
    if (unit.value.angle) angles = addRational(angles, item.power);
  }
  if (problems.length > 0) return { ok: false, problems };
  if (!Number.isFinite(factor) || factor < Number.MIN_VALUE * 2 ** 52) {
    return { ok: false, problems: [problem('unit-exponent', whole(source), { written: source.trim() })] };
  }
  const angle = dimension.key === '' && angles.n === 1 && angles.d === 1;
  return succeed({ text: written, dimension, factor, offset: 0, angle });
}

/** The unit of one symbol, or why it is none: refused with its choices, or unknown with the nearest. */
function unitOfFactor({ symbol, from, to }: UnitFactor, registry: UnitRegistry): Outcome<Unit> {
  const known = registry.units.get(symbol);
  if (known !== undefined) return succeed(known);
  const refusal = refusedAs(symbol, from, registry);
  if (refusal !== undefined) return { ok: false, problems: [refusal] };
  if (symbol.endsWith('.') && symbol.length > 1) {
    const bare = unitOfFactor(
      { symbol: symbol.slice(0, -1), power: rational(1), from, to: to - 1 },
      registry,
    );
    if (!bare.ok) return bare;
  }
  return { ok: false, problems: [unknown(symbol, from, registry)] };
}

function unknown(symbol: string, from: number, registry: UnitRegistry): Problem {
  const span = { from, to: from + symbol.length };
  const state = volumeState(symbol);
  if (state !== undefined) {
    // A book that has the unit writes it in small letters.
    const own = registry.units.has(symbol.toLowerCase());
    const meant = own ? symbol.toLowerCase() : state.unit;
    const facts = { symbol, nearest: [meant], ...(!own && { state: state.words }) };
    return problem('unit-unknown', span, facts, replacements([meant], span.from, span.to));
  }
  // Three letters are near some currency whatever they are: those are offered for capitals only.
  const capitals = /^[A-Z]{2,4}$/.test(symbol);
  const candidates = [...registry.infos.values()].filter((info) => capitals || info.source !== 'ISO 4217');
  const near = nearest(
    symbol,
    candidates.flatMap((info) => [info.symbol, ...info.aliases]),
  );
  return problem('unit-unknown', span, { symbol, nearest: near }, replacements(near, span.from, span.to));
}

function refusedAs(symbol: string, from: number, registry: UnitRegistry): Problem | undefined {
  // Words and abbreviations with dots mean the same in capitals: CU. YD.
  const folded = /[ .]/.test(symbol) ? registry.refused.get(symbol.toLowerCase()) : undefined;
  const row = registry.refused.get(symbol) ?? folded;
  if (row === undefined) return undefined;
  const span = { from, to: from + symbol.length };
  const fixes = replacements(row.choices, span.from, span.to);
  return row.because === undefined
    ? problem('unit-slip', span, { symbol, choices: row.choices }, fixes)
    : problem('unit-ambiguous', span, { symbol, because: row.because, choices: row.choices }, fixes);
}

function troubleProblem(trouble: UnitTrouble, source: string, registry: UnitRegistry): Problem {
  const { from, to } = trouble;
  const written = source.trim();
  switch (trouble.kind) {
    case 'unexpected':
      return problem('unit-broken', { from, to }, { written, found: source.slice(from, to).trim() });
    case 'power':
      return problem('unit-exponent', { from, to }, { written });
    case 'digits': {
      const symbol = source.slice(from, trouble.symbolEnd);
      if (!registry.units.has(symbol)) {
        return refusedAs(symbol, from, registry) ?? unknown(source.slice(from, to), from, registry);
      }
      const meant = `${symbol}^${source.slice(trouble.symbolEnd, to)}`;
      const fixes = replacements([meant], from, to);
      return problem('unit-digits', { from, to }, { written: source.slice(from, to), meant }, fixes);
    }
    case 'after-slash': {
      const start = source.length - source.trimStart().length;
      const fixes = replacements(trouble.readings, start, start + written.length);
      return problem('unit-after-slash', { from, to }, { written, readings: trouble.readings }, fixes);
    }
  }
}

function replacements(choices: readonly string[], from: number, to: number) {
  return choices.map((choice) => ({ label: choice, from, to, insert: choice }));
}

/** total · base^power, whole powers by repeated multiplication so that exact factors stay exact. */
function timesPower(total: number, base: number, { n, d }: Rational): number {
  if (d !== 1) return total * base ** (n / d);
  let result = 1;
  for (let i = Math.abs(n); i > 0; i--) result *= base;
  return n > 0 ? total * result : total / result;
}

function whole(text: string): Span {
  return { from: 0, to: text.length };
}
