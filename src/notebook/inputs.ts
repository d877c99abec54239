import { nearest, type Problem, problem } from '../diagnostics/index.ts';
import type { Choice, Given, Range } from '../document/index.ts';
import { plainType, type Type, textType, truthType, typeOfUnit, unknownType } from '../language/index.ts';
import {
  areEqual,
  barePercent,
  type Entry,
  readEntry,
  type Unit,
  type UnitRegistry,
  writeQuantity,
} from '../units/index.ts';
import { signCheck } from './excluded-sign.ts';
import type { InputItem } from './model.ts';
import { reservedProblems } from './spelled-name.ts';
import { readUnitColumn } from './unit-column.ts';

/** A given line understood: its entry read in its unit, its permitted range looked at. */
export function readGiven(id: string, sheet: string, row: Given, registry: UnitRegistry): InputItem {
  const { unit, problems: unitProblems } = readUnitColumn(row.unit, registry);
  const read = readEntry(row.entry, registry, unit);
  const typed = read.ok ? read.value : undefined;
  const sign =
    typed?.kind === 'number'
      ? signCheck(row.range, unit ?? typed.unit, registry, row.note)?.(typed.si)
      : undefined;
  const entry = sign ? undefined : typed;
  const entryProblems = read.ok ? [] : read.problems;
  const doubt = entry?.kind === 'number' && unit ? barePercent(row.entry, entry.si, unit) : undefined;
  const rangeProblems = entry && row.range ? outOfRange(entry, row.range, unit, registry) : [];
  // An entry that cannot be read gives no type, so that what refers to it waits instead of disagreeing.
  const type = unit ? typeOfUnit(unit) : read.ok ? typeOfEntry(typed) : unknownType;
  const problems = [
    ...reservedProblems(row.name),
    ...unitProblems,
    ...entryProblems,
    ...(sign ? [sign] : []),
    ...(doubt ? [doubt] : []),
    ...rangeProblems,
  ];
  return { kind: 'input', id, sheet, row, type, problems, ...(unit && { unit }), ...(entry && { entry }) };
}

/** A choice understood: its entry is one of the options, by value, cases and outer spaces aside. */
export function readChoice(id: string, sheet: string, row: Choice, options: readonly string[]): InputItem {
  const base = { kind: 'input', id, sheet, row, type: textType } as const;
  const reserved = reservedProblems(row.name);
  const typed = row.entry.trim();
  if (typed === '') return { ...base, problems: reserved, entry: { kind: 'missing' } };
  const folded = typed.normalize('NFC').toLowerCase();
  const found = options.find((option) => option.trim().normalize('NFC').toLowerCase() === folded);
  if (found !== undefined) return { ...base, problems: reserved, entry: { kind: 'text', text: found } };
  const span = { from: 0, to: row.entry.length };
  const near = nearest(typed, options);
  const fixes = near.map((insert) => ({ label: insert, ...span, insert }));
  return {
    ...base,
    problems: [
      ...reserved,
      problem('choice-unknown', span, { written: typed, options: [...options], near }, fixes),
    ],
  };
}

/** The type an entry gives a line whose unit column is blank; a blank entry counts as a plain number. */
function typeOfEntry(entry: Entry | undefined): Type {
  switch (entry?.kind) {
    case 'number':
    case 'point':
      return typeOfUnit(entry.unit);
    case 'text':
      return textType;
    case 'truth':
      return truthType;
    default:
      return plainType;
  }
}

/** A warning where a value lies beyond its permitted range; it is computed with all the same. */
export function outOfRange(
  entry: Entry,
  range: Range,
  unit: Unit | undefined,
  registry: UnitRegistry,
): readonly Problem[] {
  if (entry.kind !== 'number' && entry.kind !== 'point') return [];
  return limitsOf(range, unit ?? entry.unit, registry).flatMap(({ end, text, limit }) => {
    if (!limit.ok) return limit.problems;
    if (limit.value.kind !== 'number' && limit.value.kind !== 'point') return [];
    const { si } = limit.value;
    const beyond = end === 'min' ? entry.si < si : entry.si > si;
    if (!beyond || areEqual(entry.si, si)) return [];
    const facts = {
      value: writeQuantity(entry.si, entry.unit),
      limit: text,
      end: end === 'min' ? 'least' : 'most',
    };
    return [problem('out-of-range', { from: 0, to: 0 }, facts)];
  });
}

/** One end of a permitted range as it is written and read. */
interface Limit {
  readonly end: keyof Range;
  readonly text: string;
  readonly limit: ReturnType<typeof readEntry>;
}

/** The limits of a range as they were read last: they are asked for with every value, and stay as they are. */
const known = new WeakMap<
  Range,
  { readonly unit: Unit; readonly registry: UnitRegistry; readonly limits: readonly Limit[] }
>();

function limitsOf(range: Range, unit: Unit, registry: UnitRegistry): readonly Limit[] {
  const before = known.get(range);
  if (before?.unit === unit && before.registry === registry) return before.limits;
  const limits = (['min', 'max'] as const).flatMap((end) => {
    const text = range[end];
    return text === undefined ? [] : [{ end, text, limit: readEntry(text, registry, unit) }];
  });
  known.set(range, { unit, registry, limits });
  return limits;
}
