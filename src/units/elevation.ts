import { nearest, type Outcome, problem, type Span, succeed } from '../diagnostics/index.ts';
import type { UnitRegistry } from './registry.ts';
import type { PointKind, Unit } from './unit.ts';

/** "El.", "EL", "Elev.", "Elevation" and what may stand between it and the number. */
export const ELEVATION_PREFIX = /^ *el(?:ev(?:ation)?)?(?:\. *| +| *[:=] *|(?=[+-]))[:=]? */i;

const DATUM_TAIL = /^(\S+) +\(?([\p{L}][\p{L}\p{N}]*)\)? *$/u;

/** A unit text taken apart: the unit of length, where it stands, and the datum ('' if none is named). */
export interface ElevationText {
  readonly length: string;
  readonly from: number;
  readonly datum: string;
}

/**
 * Takes "El. ft", "ft MLLW" or "El. ft MLLW" apart; undefined if the text is no elevation. A datum the registry
 * does not know is a problem only behind "El.": elsewhere the second word may be a unit.
 */
export function splitElevation(source: string, registry: UnitRegistry): Outcome<ElevationText> | undefined {
  const prefix = ELEVATION_PREFIX.exec(source)?.[0] ?? '';
  const start = source.length - source.slice(prefix.length).trimStart().length;
  const rest = source.slice(start);
  const tail = DATUM_TAIL.exec(rest);
  const [, length = '', datum = ''] = tail ?? [];
  if (tail !== null && registry.datums.has(datum)) return succeed({ length, from: start, datum });
  if (prefix === '') {
    const [near] = nearest(datum, registry.datums, 1);
    const isDatum = near !== undefined && near.toLowerCase() === datum.toLowerCase();
    return isDatum && registry.units.has(length) ? unknownDatum(datum, source, registry) : undefined;
  }
  if (tail !== null) return unknownDatum(datum, source, registry);
  return succeed({ length: rest.trimEnd(), from: start, datum: '' });
}

/** Makes a unit of length the unit of an elevation to `datum`; anything but a length in one word is refused. */
export function elevationUnit(length: Unit, datum: string, span: Span): Outcome<Unit> {
  if (length.dimension.key !== 'L' || length.point !== undefined || length.text.includes(' ')) {
    return { ok: false, problems: [problem('unit-elevation-length', span, { unit: length.text })] };
  }
  const text = datum === '' ? `El. ${length.text}` : `${length.text} ${datum}`;
  return succeed({ ...length, text, point: `elevation:${datum}` });
}

/** The datum of an elevation's kind of point, '' if none is named; undefined for other points. */
export function datumOf(point: PointKind): string | undefined {
  return point.startsWith('elevation:') ? point.slice('elevation:'.length) : undefined;
}

/** The unit of length of an elevation, as text: "ft" of "ft MLLW" and of "El. ft". */
export function lengthText(unit: Unit): string {
  return unit.text.replace(ELEVATION_PREFIX, '').replace(/ .*$/, '');
}

/** The unit of length an elevation is measured in; a unit that is no elevation as it is. */
export function bareLength(unit: Unit): Unit {
  if (unit.point === undefined) return unit;
  const { dimension, factor, offset, angle } = unit;
  return { text: lengthText(unit), dimension, factor, offset, angle };
}

function unknownDatum(datum: string, source: string, registry: UnitRegistry): Outcome<never> {
  const from = source.lastIndexOf(datum);
  const span = { from, to: from + datum.length };
  const near = nearest(datum, registry.datums);
  const fixes = near.map((choice) => ({ label: choice, ...span, insert: choice }));
  return { ok: false, problems: [problem('unit-datum-unknown', span, { datum, nearest: near }, fixes)] };
}
