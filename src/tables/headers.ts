import { readUnit, type Unit, type UnitRegistry } from '../units/index.ts';
import { isNumeric, type TableColumn } from './column.ts';
import { ordinaryHeading } from './full-width.ts';
import { LONGEST_UNIT, statedUnit } from './stated-unit.ts';

/** The column a header names, and the unit it states (`''` for none); nothing if it names none. */
export interface NamedHeader {
  readonly column: TableColumn;
  /** As the registry reads it where it can mean one unit only, else as written. */
  readonly unit: string;
}

/** What stands between a name and its unit without brackets: `V_s m³`, `V_s, m3`, `Volume/cy`, `Qty in cy`. */
const JOINTS: readonly RegExp[] = [
  /\s+in\s+/giu,
  /\s*[,;:]\s*/gu,
  /\s+[-–—|]\s+/gu,
  /\s*\/\s*/gu,
  /\s+/gu,
  /_(?=[^_]+$)/gu,
];

/**
 * The column that a header names by name or label, and the unit stated with it: in brackets, or behind a comma, a
 * dash, a slash, the word “in” or a space where what stands there is a unit of the column's kind.
 */
export function headerColumn(
  text: string,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
): NamedHeader | undefined {
  const whole = columnCalled(text, columns);
  if (whole !== undefined) return { column: whole, unit: '' };
  const plain = withoutNoteMarks(ordinaryHeading(text));
  const { name, unit } = splitUnit(plain);
  const column = columnCalled(name, columns);
  if (column !== undefined) return { column, unit: headedUnit(unit, column, registry) };
  return unit === '' ? looseColumn(collapseSpaces(plain), columns, registry) : undefined;
}

/** Marks above lengths; in a row under other units the one for inches would say that the unit is that above. */
const LENGTH_MARKS: ReadonlyMap<string, string> = new Map([
  ...['"', '″', '”', "''"].map((mark) => [mark, 'in'] as const),
  ...["'", '′', '’'].map((mark) => [mark, 'ft'] as const),
]);

/** A unit stated for a column: as the registry reads it where it can mean one unit only, else as written. */
export function headedUnit(written: string, column: TableColumn, registry: UnitRegistry): string {
  if (written === '' || written === '-' || !isNumeric(column)) return written;
  const wanted = unitOfColumn(column, registry);
  const mark = wanted?.dimension.key === 'L' ? LENGTH_MARKS.get(written) : undefined;
  return statedUnit(mark ?? written, registry, wanted).unit ?? written;
}

/** The unit of plain numbers in a column; nothing where the column may have any. */
export function unitOfColumn(column: TableColumn, registry: UnitRegistry): Unit | undefined {
  if (column.unit === undefined || !isNumeric(column)) return undefined;
  const read = readUnit(column.unit, registry);
  return read.ok ? read.value : undefined;
}

/** The unit in the brackets that end a header, whatever it names; `''` for none. */
export function bracketedUnit(header: string): string {
  // Each cell of a long text may be asked, and hardly one ends so.
  return ENDS_IN_BRACKET.test(header) ? splitUnit(header).unit : '';
}

/** Brackets of any print. */
const ENDS_IN_BRACKET = /[)\]}\uff09\uff3d\uff5d】〕｣」]\s*$/u;

function looseColumn(
  text: string,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
): NamedHeader | undefined {
  for (const joint of JOINTS) {
    for (const [name, unit] of splits(text, joint)) {
      const column = columnCalled(name, columns);
      if (column === undefined || !isNumeric(column)) continue;
      const stated = statedUnit(unit, registry, unitOfColumn(column, registry));
      if (stated.unit !== undefined) return { column, unit: stated.unit };
      // A unit that can be read two ways is not lost: it is asked for as written.
      if (stated.choices.length > 0) return { column, unit };
    }
  }
  return undefined;
}

/** Every way to part a text at a joint in front of what may be a unit: a name may hold spaces or slashes, and so may a unit. */
function splits(text: string, joint: RegExp): readonly (readonly [name: string, unit: string])[] {
  return [...text.matchAll(joint)].flatMap(({ index, 0: sign }) => {
    if (text.length - index - sign.length > LONGEST_UNIT) return [];
    const [name, unit] = [text.slice(0, index), text.slice(index + sign.length)];
    return name === '' || unit === '' ? [] : [[name, unit] as const];
  });
}

const OPENING: Readonly<Record<string, string>> = { ')': '(', ']': '[', '}': '{' };

/** What stands in front of the bracket that ends a header, and what within it. */
export function splitUnit(header: string): { readonly name: string; readonly unit: string } {
  const text = ordinaryHeading(header).trim();
  const close = text.at(-1) ?? '';
  const open = OPENING[close];
  if (open === undefined) return { name: text, unit: '' };
  let depth = 0;
  for (let at = text.length - 1; at >= 0; at--) {
    if (text[at] === close) depth++;
    if (text[at] === open) depth--;
    if (depth > 0) continue;
    return { name: text.slice(0, at), unit: text.slice(at + 1, -1).trim() };
  }
  return { name: text, unit: '' };
}

/** A header without the marks of a footnote, or the colon, at its end. */
function withoutNoteMarks(header: string): string {
  return header.replace(/[\s*†‡:]+$/u, '');
}

/** So many spaces and marks of notes stand around and within a name at most. */
const MOST_AROUND_NAME = 200;

/**
 * The column called so by name or else label, in this case or else in any; a name may be written without its
 * underscore, which few programs set: Vs for V_s.
 */
function columnCalled(header: string, columns: readonly TableColumn[]): TableColumn | undefined {
  const longest = Math.max(...columns.map(({ name, label = '' }) => Math.max(name.length, label.length)));
  // A text of a hundred thousand signs has many parts, and hardly one is as short as a name.
  if (header.length > longest + MOST_AROUND_NAME) return undefined;
  const wanted = collapseSpaces(withoutNoteMarks(header));
  if (wanted === '') return undefined;
  const folded = wanted.toLowerCase();
  return (
    columns.find(({ name }) => name === wanted) ??
    columns.find((column) => callsOf(column).label === wanted) ??
    only(columns.filter((column) => callsOf(column).foldedName === folded)) ??
    only(columns.filter((column) => callsOf(column).foldedLabel === folded)) ??
    only(columns.filter(({ name }) => name.includes('_') && name.replace('_', '') === wanted))
  );
}

/** A text without the name or label of the column that it begins with. */
export function withoutName(text: string, { name, label = '' }: TableColumn): string {
  const called = [label, name].find(
    (one) =>
      one !== '' &&
      text.toLowerCase().startsWith(one.toLowerCase()) &&
      !/^[\p{L}\d]/u.test(text.slice(one.length)),
  );
  return called === undefined ? text : text.slice(called.length).trim();
}

interface Calls {
  readonly foldedName: string;
  readonly label: string | undefined;
  readonly foldedLabel: string | undefined;
}

// Every header of a text is compared with every column, and so is every part of it.
const calls = new WeakMap<TableColumn, Calls>();

function callsOf(column: TableColumn): Calls {
  const known = calls.get(column);
  if (known) return known;
  const label = column.label === undefined ? undefined : collapseSpaces(column.label);
  const made = { foldedName: column.name.toLowerCase(), label, foldedLabel: label?.toLowerCase() };
  calls.set(column, made);
  return made;
}

function only<T>(items: readonly T[]): T | undefined {
  return items.length === 1 ? items[0] : undefined;
}

/** A text with single spaces. */
export function collapseSpaces(text: string): string {
  return text.trim().replace(/\s+/g, ' ');
}
