import { type Fix, fail, type Outcome, problem, type Span, succeed } from '../diagnostics/index.ts';
import { isCurrencyCode } from './currency-table.ts';
import { overDimension, sameDimension } from './dimension.ts';
import { bareLength, datumOf, elevationUnit, lengthText } from './elevation.ts';
import type { Entry } from './entry.ts';
import { quantityName, suggestUnits } from './preferred-unit.ts';
import { readUnit } from './read-unit.ts';
import type { UnitRegistry } from './registry.ts';
import { type PointKind, toSI, type Unit } from './unit.ts';

/** Units of volume that no section modulus is written in. */
const VOLUMES: ReadonlySet<string> = new Set(['cy', 'cf', 'L', 'gal']);

/** What a line takes, said with an article: "a length (ft)", "an elevation (ft MLLW)", "a plain number". */
export function takes(unit: Unit): string {
  if (VOLUMES.has(unit.text)) return `a volume (${unit.text})`;
  const kind = unit.point === undefined ? quantityName(unit.dimension, unit.angle) : pointName(unit.point);
  return unit.text === '' || unit.text === 'date' ? kind : `${kind} (${unit.text})`;
}

/** The entry of a number in a unit, or undefined if its SI value is beyond the numbers that can be held. */
export function entryOf(x: number, unit: Unit): Entry | undefined {
  // `+ 0` turns -0 into 0.
  const si = toSI(x, unit) + 0;
  if (!Number.isFinite(si) || (si === 0 && x !== 0 && unit.offset === 0)) return undefined;
  return unit.point === undefined
    ? { kind: 'number', si, unit }
    : { kind: 'point', si, of: unit.point, unit };
}

/** The same as an outcome: what cannot be held is a problem of the entry `text` at `span`. */
export function holdEntry(x: number, unit: Unit, text: string, span: Span): Outcome<Entry> {
  const entry = entryOf(x, unit);
  return entry === undefined ? fail(problem('entry-out-of-range', span, { written: text })) : succeed(entry);
}

/**
 * Fits a number in the unit `written` to a line whose unit is `row`: the kinds of quantity must agree, and a point
 * goes with a point of the same kind. A length in a line of elevations is an elevation to the line's datum.
 */
export function fitEntry(
  x: number,
  written: Unit,
  row: Unit,
  text: string,
  span: Span,
  registry: UnitRegistry,
): Outcome<Entry> {
  if (row.point === 'date') return fail(problem('entry-date-wanted', span, { written: text }));
  if (!sameDimension(written.dimension, row.dimension)) return mismatch(written, row, text, span, registry);
  if (written.angle !== row.angle) {
    return fail(problem('entry-angle', span, { written: text, wantsAngle: row.angle }));
  }
  if (row.point === undefined) {
    return written.point === undefined
      ? holdEntry(x, written, text, span)
      : pointForDifference(written, row, text, span);
  }
  return fitPoint(x, written, row, row.point, text, span);
}

function fitPoint(
  x: number,
  written: Unit,
  row: Unit,
  of: PointKind,
  text: string,
  span: Span,
): Outcome<Entry> {
  const datum = datumOf(of);
  if (datum === undefined) {
    if (written.point === of) return holdEntry(x, written, text, span);
    const example = `20 ${row.text}`;
    return fail(problem('entry-difference', span, { written: text, wants: takes(row), example }));
  }
  const writtenDatum = written.point === undefined ? '' : (datumOf(written.point) ?? '');
  if (writtenDatum !== '' && writtenDatum !== datum) {
    const wants = datum === '' ? 'no named datum' : datum;
    return fail(problem('entry-datum', span, { written: text, datum: writtenDatum, wants }));
  }
  const unit = elevationUnit(bareLength(written), datum, span);
  return unit.ok ? holdEntry(x, unit.value, text, span) : unit;
}

function pointForDifference(written: Unit, row: Unit, text: string, span: Span): Outcome<Entry> {
  const isA = written.point === undefined ? '' : pointName(written.point);
  const example = written.point === 'temperature' ? '20 K' : `12.5 ${lengthText(written)}`;
  return fail(problem('entry-point', span, { written: text, isA, wants: takes(row), example }));
}

function mismatch(
  written: Unit,
  row: Unit,
  text: string,
  span: Span,
  registry: UnitRegistry,
): Outcome<Entry> {
  const isA = takes(written);
  const wants = takes(row);
  const ratio = overDimension(row.dimension, written.dimension).key;
  const holdsMass = written.dimension.powers.some(([base]) => base === 'M');
  if (holdsMass && (ratio === 'L T^-2' || ratio === 'L^-1 T^2')) {
    const instead = counterpartText(written, row, registry);
    const fixes = instead === '' ? [] : unitFixes(text, written, instead, span);
    return fail(problem('entry-mass-force', span, { written: text, isA, wants, instead }, fixes));
  }
  const currencies = currenciesThatDiffer(written, row);
  if (currencies !== undefined)
    return fail(problem('entry-currency', span, { written: text, isA, wants, ...currencies }));
  const [meant = ''] = sameButForCase(written, row, registry);
  const fixes = meant === '' ? [] : unitFixes(text, written, meant, span);
  return fail(
    problem('entry-unit-mismatch', span, { written: text, isA, wants, unit: row.text, meant }, fixes),
  );
}

/** The currencies of two units that differ in nothing else. */
function currenciesThatDiffer(
  written: Unit,
  row: Unit,
): { readonly from: string; readonly to: string } | undefined {
  const [a, b, ...more] = overDimension(row.dimension, written.dimension).powers;
  if (!a || !b || more.length > 0 || a[1].n * b[1].n >= 0) return undefined;
  if (!isCurrencyCode(a[0]) || !isCurrencyCode(b[0])) return undefined;
  const inRow = row.dimension.powers.some(([base]) => base === a[0]);
  return inRow ? { from: b[0], to: a[0] } : { from: a[0], to: b[0] };
}

/** Puts another unit in place of the one written, where the entry ends with it as it is named. */
function unitFixes(text: string, written: Unit, insert: string, span: Span): Fix[] {
  if (!text.endsWith(written.text)) return [];
  return [{ label: insert, from: span.to - written.text.length, to: span.to, insert }];
}

/** Units of the line's kind that differ from the written one in case only: `kN` for `kn`. */
function sameButForCase(written: Unit, row: Unit, registry: UnitRegistry): string[] {
  const folded = written.text.toLowerCase();
  return suggestUnits(row.dimension, row.angle, registry)
    .map((unit) => unit.text)
    .filter((text) => text.toLowerCase() === folded);
}

/** The written unit with its mass made a force (or the reverse), if that gives what the line takes; else ''. */
function counterpartText(written: Unit, row: Unit, registry: UnitRegistry): string {
  for (const [symbol] of written.text.matchAll(/\p{L}+/gu)) {
    const counterpart = registry.infos.get(symbol)?.counterpart;
    if (counterpart === undefined) continue;
    const text = written.text.replace(symbol, counterpart);
    const unit = readUnit(text, registry);
    if (unit.ok && sameDimension(unit.value.dimension, row.dimension)) return text;
  }
  return '';
}

function pointName(of: PointKind): string {
  if (of === 'temperature') return 'a temperature';
  return of === 'date' ? 'a date' : 'an elevation';
}
