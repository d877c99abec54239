import type { Fix, Problem } from '../diagnostics/index.ts';
import { readUnit, type Unit, type UnitRegistry, volumeState, withPowerSigns } from '../units/index.ts';

/**
 * What a unit written above or beside numbers means: the unit as the registry has it, or else the units that it may
 * mean, none of them if it is no unit.
 */
export interface StatedUnit {
  readonly unit: string | undefined;
  readonly choices: readonly string[];
}

/** Spellings whose one remedy in the registry is not what every careful person reads in them: they are offered only. */
const OFFERED_ONLY = new Set(['hPa', 'mc', 'MC', 'ml', 'oz', 'k', 'mPa', 'mN', 'mn', 'Mn', 'per']);

/** No unit is written longer than this; what is longer is no unit. */
export const LONGEST_UNIT = 60;
const STEPS = 6;

/**
 * Reads a unit as people write it above a column: `m3`, `CY`, `cu. yd.`, `LBS/CU YD`. Of several readings that one is
 * taken that is of the kind the column takes; where none or more than one is, the readings are choices. `wanted` is
 * the unit of the column, absent where it may have any.
 */
export function statedUnit(text: string, registry: UnitRegistry, wanted?: Unit): StatedUnit {
  const written = text.trim();
  if (written === '' || written.length > LONGEST_UNIT || /^\d/.test(written))
    return { unit: undefined, choices: [] };
  const plain = readUnit(written, registry);
  if (plain.ok && isOfKind(plain.value, wanted)) return { unit: withPowerSigns(written), choices: [] };
  const readings = readingsOf(withPhrases(written, registry), registry, STEPS);
  const fitting = distinct(readings.filter(({ unit }) => isOfKind(unit, wanted)));
  const [only, ...more] = fitting;
  const isOffered = readings.some(({ offered }) => offered);
  if (only !== undefined && more.length === 0 && !isOffered) return { unit: only.text, choices: [] };
  return { unit: undefined, choices: fitting.map((one) => one.text) };
}

interface Spelling {
  readonly text: string;
  readonly unit: Unit;
  readonly offered: boolean;
}

function isOfKind(unit: Unit, wanted: Unit | undefined): boolean {
  return (
    wanted === undefined ||
    (unit.dimension.key === wanted.dimension.key && unit.angle === wanted.angle && fitsPoint(unit, wanted))
  );
}

/** A length goes with an elevation; other points go with their own kind. */
function fitsPoint(unit: Unit, wanted: Unit): boolean {
  if (wanted.point?.startsWith('elevation:')) return unit.point === undefined || unit.point === wanted.point;
  return unit.point === wanted.point;
}

/** Each way of mending what the registry does not read, step by step, until it reads. */
function readingsOf(
  text: string,
  registry: UnitRegistry,
  steps: number,
  offered = false,
): readonly Spelling[] {
  const read = readUnit(text, registry);
  if (read.ok) return [{ text: withPowerSigns(text), unit: read.value, offered }];
  const [found] = read.problems;
  if (found === undefined || steps === 0) return [];
  return mendings(found, text, registry).flatMap(({ from, to, insert }) => {
    const written = text.slice(from, to);
    const mended = `${text.slice(0, from)}${insert}${text.slice(to)}`;
    return readingsOf(
      mended,
      registry,
      steps - 1,
      offered || OFFERED_ONLY.has(written) || volumeState(written) !== undefined,
    );
  });
}

function mendings(
  found: Problem,
  text: string,
  registry: UnitRegistry,
): readonly Pick<Fix, 'from' | 'to' | 'insert'>[] {
  // A capital M may be a million: Mm³ are no cubic millimetres; only a length in MM is one in capitals.
  const symbol = text.slice(found.from, found.to).replace(/[\d²³^]+$/, '');
  const isPower = /^[\d²³^]/.test(text.slice(found.from + symbol.length));
  if (symbol === 'Mm' || (symbol === 'MM' && isPower)) return [];
  if (found.code !== 'unit-unknown' || found.data.state !== undefined) return found.fixes;
  // What only looks like a unit is a guess; the same letters in capitals are not.
  const { from, to } = found;
  const written = text.slice(from, to).replace(/\d+$/, '');
  if (!/^\p{Lu}/u.test(written)) return [];
  const folded = written.toLowerCase();
  const same = [...registry.units.keys()].filter((symbol) => symbol.toLowerCase() === folded);
  return same.map((insert) => ({ from, to: from + written.length, insert }));
}

/** The text with units of several words (`cu yd`), in capitals or not, as their symbols. */
function withPhrases(text: string, registry: UnitRegistry): string {
  return phrasesOf(registry).reduce((mended, { form, choice }) => mended.replace(form, choice), text);
}

interface Phrase {
  readonly form: RegExp;
  readonly choice: string;
}

// A long header is asked for a unit at each of its words.
const phrases = new WeakMap<UnitRegistry, readonly Phrase[]>();

function phrasesOf(registry: UnitRegistry): readonly Phrase[] {
  const known = phrases.get(registry);
  if (known) return known;
  const made = [...registry.refused.values()]
    .filter(({ symbol }) => symbol.includes(' '))
    .sort((a, b) => b.symbol.length - a.symbol.length)
    .map(({ symbol, choices: [choice = ''] }) => {
      const words = symbol.replaceAll('.', '\\.').replaceAll(' ', '[.\\s]*');
      return { form: new RegExp(`(?<![\\p{L}\\d])${words}(?![\\p{L}\\d])\\.?`, 'giu'), choice };
    });
  phrases.set(registry, made);
  return made;
}

function distinct(readings: readonly Spelling[]): readonly Spelling[] {
  const seen = new Map<string, Spelling>();
  for (const one of readings) {
    const key = `${one.unit.dimension.key} ${one.unit.factor} ${one.unit.offset}`;
    if (!seen.has(key)) seen.set(key, one);
  }
  return [...seen.values()];
}

/** Whether two spellings are of one unit, as far as both can be read for a column. */
export function isSameUnit(first: string, second: string, registry: UnitRegistry, wanted?: Unit): boolean {
  if (first === second) return true;
  const [a, b] = [first, second].map((text) => {
    const unit = statedUnit(text, registry, wanted).unit;
    const read = unit === undefined ? undefined : readUnit(unit, registry);
    return read?.ok ? read.value : undefined;
  });
  return (
    a !== undefined &&
    b !== undefined &&
    a.dimension.key === b.dimension.key &&
    a.angle === b.angle &&
    a.factor === b.factor &&
    a.offset === b.offset
  );
}
