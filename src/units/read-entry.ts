import {
  type Fix,
  fail,
  type Outcome,
  type Problem,
  problem,
  type Span,
  succeed,
} from '../diagnostics/index.ts';
import { bareArithmetic } from './bare-arithmetic.ts';
import { ELEVATION_PREFIX, elevationUnit } from './elevation.ts';
import type { Entry } from './entry.ts';
import { readDate } from './entry-date.ts';
import { entryOf, fitEntry, holdEntry, takes } from './fit-entry.ts';
import { normaliseLookAlikes } from './look-alikes.ts';
import { whyNoNumber } from './no-number.ts';
import { readQuantity, startsQuantity } from './read-quantity.ts';
import type { UnitRegistry } from './registry.ts';
import { DATE_UNIT, PLAIN_UNIT, STATED_PLAIN, type Unit } from './unit.ts';

const AS_TEXT = 'as text';
/** What is said of an entry of which nothing more is known. */
const UNREAD: ReadonlySet<string> = new Set(['entry-formula', 'entry-not-a-number', 'entry-number-broken']);
const LONGEST_NUMBER = 200;
const LONGEST_TEXT = 2000;
/** Names or numbers multiplied or raised to a power: no words are written so, while a steel section has its ×. */
const PRODUCT = /[\p{L}\d_)'] *[*^] *[\p{L}\d(]/u;
const MISSING: Outcome<Entry> = { ok: true, value: { kind: 'missing' } };

/**
 * Reads what a person typed as the value of a line. `row` is the unit of the line; without it (a blank unit column)
 * any quantity is taken, and what is no quantity is text. Never throws; problems carry spans into `text`.
 *
 * `''` is missing; `12.3` is in the line's unit; `1,200 psf`, `12'-6 1/2"`, `20 °C`, `El. +12.5 ft MLLW`, `2026-11-25`,
 * `$ 12.50/cy`, `TRUE`, `clay` and `"clay"` read as they look. What could be read two ways is refused.
 */
export function readEntry(text: string, registry: UnitRegistry, row?: Unit): Outcome<Entry> {
  const read = readPlainly(text, registry, row) ?? readCarefully(text, registry, row);
  return read.ok ? read : offerValue(read, text, registry, row);
}

/**
 * Where arithmetic of bare numbers stands, or a product of them with a unit behind, and nothing else mends it, its value is
 * offered: an entry holds a value.
 */
function offerValue(
  read: Extract<Outcome<Entry>, { ok: false }>,
  text: string,
  registry: UnitRegistry,
  row: Unit | undefined,
): Outcome<Entry> {
  const plain = read.problems.every(({ code, fixes }) => {
    return UNREAD.has(code) && fixes.every(({ label }) => label === AS_TEXT);
  });
  if (!plain) return read;
  const before = /^\s*(?:=\s*)?/.exec(text)?.[0] ?? '';
  const written = text.slice(before.length).trimEnd();
  const insert = bareArithmetic(written) ?? productOf(written, registry, row);
  if (insert === undefined) return read;
  const span = { from: before.search(/=|$/), to: before.length + written.length };
  const fixes = read.problems.flatMap((one) => one.fixes);
  return fail(
    problem('entry-arithmetic', span, { written, insert }, [{ label: insert, ...span, insert }, ...fixes]),
  );
}

/** Bare numbers multiplied, and what stands behind the last of them; a sum or a quotient could be read two ways there. */
const NUMBERS_TIMES_UNIT = /^(\d[\d.]*(?:\s*[*×]\s*\d[\d.]*)+)\s*([\p{L}(°%‰].*)$/u;

/** The value of bare numbers multiplied with a unit that the place takes: 14 ft for 2*7 ft. */
function productOf(written: string, registry: UnitRegistry, row: Unit | undefined): string | undefined {
  const [, numbers, unit] = NUMBERS_TIMES_UNIT.exec(written) ?? [];
  const value = numbers === undefined ? undefined : bareArithmetic(numbers);
  if (value === undefined || unit === undefined) return undefined;
  const product = `${value} ${unit}`;
  const read = readPlainly(product, registry, row) ?? readCarefully(product, registry, row);
  return read.ok && read.value.kind === 'number' ? product : undefined;
}

const ZERO = 48;
const NINE = 57;
const POINT = 46;
const MINUS = 45;
const SPACE = 32;

/** The way most entries go: digits, perhaps a point and digits, perhaps one unit. Undefined if it is anything else. */
function readPlainly(
  text: string,
  registry: UnitRegistry,
  row: Unit | undefined,
): Outcome<Entry> | undefined {
  const start = text.charCodeAt(0) === MINUS ? 1 : 0;
  let end = start;
  let points = 0;
  for (; end < text.length; end++) {
    const code = text.charCodeAt(end);
    if (code === POINT) points++;
    else if (code < ZERO || code > NINE) break;
  }
  const digits = end - start - points;
  if (digits === 0 || digits > 15 || points > 1) return undefined;
  const x = Number(text.slice(0, end));
  if (end === text.length) {
    if (row?.point === 'date') return undefined;
    return held(entryOf(x, row ?? PLAIN_UNIT));
  }
  const unitText = text.slice(text.charCodeAt(end) === SPACE ? end + 1 : end);
  const written = row !== undefined && unitText === row.text ? row : registry.units.get(unitText);
  if (written === undefined || written.point === 'date') return undefined;
  if (row === undefined || written === row) return held(entryOf(x, written));
  const fits = written.dimension.key === row.dimension.key && written.angle === row.angle;
  return fits && written.point === undefined && row.point === undefined
    ? held(entryOf(x, written))
    : undefined;
}

function held(entry: Entry | undefined): Outcome<Entry> | undefined {
  return entry === undefined ? undefined : succeed(entry);
}

function readCarefully(text: string, registry: UnitRegistry, row: Unit | undefined): Outcome<Entry> {
  const normalised = normaliseLookAlikes(text);
  const source = normalised.trim();
  if (source === '') return MISSING;
  const base = normalised.indexOf(source);
  const span: Span = { from: base, to: base + source.length };
  const written = text.slice(span.from, span.to);

  if (source.startsWith('=')) return fail(problem('entry-formula', span, {}));
  if (source.startsWith('"')) return readQuoted(written, source, span, row);
  const isNumeric = startsQuantity(source);
  const longest = row !== undefined || isNumeric ? LONGEST_NUMBER : LONGEST_TEXT;
  if (source.length > longest) return fail(problem('entry-too-long', span, { longest }));
  if (/^(?:true|false)$/i.test(source)) return readTruth(source, span, row);
  if (/^[+-]? *(?:nan|inf|infinity|∞)$/i.test(source))
    return fail(problem('entry-not-finite', span, { written }));
  const inner = /^\( *(.*?) *\)$/.exec(source)?.[1];
  if (inner !== undefined && startsQuantity(inner)) return inParentheses(written, inner, span);

  const date = readDate(source, base);
  if (date !== undefined) return fitDate(date, written, span, row);
  const prefix = ELEVATION_PREFIX.exec(source)?.[0] ?? '';
  if (prefix !== '' && startsQuantity(source.slice(prefix.length))) {
    return readElevation(source, prefix.length, base, registry, row);
  }
  if (!isNumeric) {
    if (row === undefined && PRODUCT.test(source))
      return offerText([problem('entry-formula', span, {})], written, span);
    if (row === undefined) return succeed({ kind: 'text', text: written });
    if (row.point === 'date') return fail(problem('entry-date-wanted', span, { written }));
    return fail(
      problem('entry-not-a-number', span, { written, wanted: takes(row), why: whyNoNumber(written) }),
    );
  }
  const quantity = readQuantity(source, base, registry);
  if (!quantity.ok) {
    return row === undefined
      ? offerText(quantity.problems, written, span)
      : fittingFirst(quantity.problems, normalised, registry, row);
  }
  const { x, unit: stated } = quantity.value;
  // Where numbers are plain anyway nothing is stated that has to be kept.
  const unit = stated === STATED_PLAIN && (row?.text ?? '') === '' ? PLAIN_UNIT : stated;
  if (row === undefined) return holdEntry(x, unit ?? PLAIN_UNIT, written, span);
  if (row.point === 'date') return fail(problem('entry-date-wanted', span, { written }));
  return unit === undefined
    ? holdEntry(x, row, written, span)
    : fitEntry(x, unit, row, source, span, registry);
}

/**
 * The same problems, of whose fixes those come first that the line can take: of pounds the force on a line of forces. A unit
 * that is only near in its letters is not offered where the line would refuse it.
 */
function fittingFirst(
  problems: readonly Problem[],
  text: string,
  registry: UnitRegistry,
  row: Unit,
): Outcome<never> {
  const fits = ({ from, to, insert }: Fix): boolean =>
    readEntry(text.slice(0, from) + insert + text.slice(to), registry, row).ok;
  const sorted = (one: Problem): Problem => {
    const [fitting, others] = [one.fixes.filter(fits), one.fixes.filter((fix) => !fits(fix))];
    const { symbol, state } = one.data;
    if (one.code === 'unit-unknown' && typeof symbol === 'string' && state === undefined) {
      const nearest = fitting.map(({ insert }) => insert);
      return problem('unit-unknown', one, { symbol, nearest, wants: row.text }, fitting);
    }
    return { ...one, fixes: [...fitting, ...others] };
  };
  return { ok: false, problems: problems.map(sorted) };
}

/** `El. +12.5 ft MLLW`: a length, with a datum or without, behind a prefix of `prefix` characters. */
function readElevation(
  source: string,
  prefix: number,
  base: number,
  registry: UnitRegistry,
  row: Unit | undefined,
): Outcome<Entry> {
  const span = { from: base, to: base + source.length };
  const quantity = readQuantity(source.slice(prefix), base + prefix, registry);
  if (!quantity.ok) return quantity;
  const { x, unit } = quantity.value;
  const elevated = unit === undefined || unit.point !== undefined ? undefined : elevationUnit(unit, '', span);
  if (elevated?.ok === false) return elevated;
  const written = elevated?.value ?? unit;
  if (written !== undefined) {
    return row === undefined
      ? holdEntry(x, written, source, span)
      : fitEntry(x, written, row, source, span, registry);
  }
  if (row?.point?.startsWith('elevation:')) return holdEntry(x, row, source, span);
  if (row === undefined) return fail(problem('entry-elevation-unit', span, { written: source }));
  const facts = { written: source, isA: 'an elevation', wants: takes(row), example: `12.5 ${row.text}` };
  return fail(problem('entry-point', span, facts));
}

function readQuoted(written: string, source: string, span: Span, row: Unit | undefined): Outcome<Entry> {
  if (row !== undefined)
    return fail(
      problem('entry-not-a-number', span, { written, wanted: takes(row), why: whyNoNumber(written) }),
    );
  if (source.length < 2 || !source.endsWith('"')) return fail(problem('entry-quote', span, { written }));
  if (written.length > LONGEST_TEXT) return fail(problem('entry-too-long', span, { longest: LONGEST_TEXT }));
  return succeed({ kind: 'text', text: written.slice(1, -1) });
}

function readTruth(source: string, span: Span, row: Unit | undefined): Outcome<Entry> {
  if (row !== undefined) return fail(problem('entry-truth', span, { written: source, wants: takes(row) }));
  return succeed({ kind: 'truth', value: source.toLowerCase() === 'true' });
}

function inParentheses(written: string, inner: string, span: Span): Outcome<Entry> {
  const negative = `-${inner.replace(/^[+-] */, '')}`;
  const fixes = [negative, inner].map((insert) => ({ label: insert, ...span, insert }));
  return fail(problem('entry-parentheses', span, { written, negative }, fixes));
}

function fitDate(date: Outcome<number>, written: string, span: Span, row: Unit | undefined): Outcome<Entry> {
  if (row !== undefined && row.point !== 'date') {
    const facts = { written, isA: takes(DATE_UNIT), wants: takes(row), example: `12.5 ${row.text}`.trim() };
    return fail(problem('entry-point', span, facts));
  }
  if (!date.ok) return date;
  return succeed({ kind: 'point', si: date.value, of: 'date', unit: DATE_UNIT });
}

/** Where text is welcome, a broken quantity may have been meant as text: quotation marks say so. */
function offerText(problems: readonly Problem[], written: string, span: Span): Outcome<Entry> {
  const asText = { label: AS_TEXT, from: span.from, to: span.to, insert: `"${written}"` };
  return { ok: false, problems: problems.map((p) => ({ ...p, fixes: [...p.fixes, asText] })) };
}
