import { type Book, canonicalJson, type Part, type Row } from '../../document/index.ts';
import {
  columnsOf,
  type LocatedColumn,
  type LocatedLine,
  type LocatedPart,
  type LocatedSheet,
  linesOf,
  partsOf,
  sheetsOf,
} from './located.ts';
import { type Pair, type Pairs, pairing } from './pairs.ts';

/** What in a book is what in another. */
export interface Matching {
  readonly sheets: Pairs<LocatedSheet>;
  readonly parts: Pairs<LocatedPart>;
  readonly lines: Pairs<LocatedLine>;
  readonly columns: Pairs<LocatedColumn>;
  /** The ids of lines, tables and columns that are in both, from the old one to the new one and back. */
  readonly idAfter: ReadonlyMap<string, string>;
  readonly idBefore: ReadonlyMap<string, string>;
  /** Whether two things, by the parts or sheets they stand in, stand in the same one. */
  readonly isSame: (before: object, after: object) => boolean;
}

/**
 * Finds what in the old book is what in the new one. Sheets go by key, and by what they hold where they were renamed; parts,
 * lines and columns by their identities where they stand, then anywhere, then by their names. An identity alone does not
 * make one of two lines that have nothing else in common: copies of a book that grew apart give the same identities twice.
 */
export function matchBooks(before: Book, after: Book): Matching {
  const sheets = matchSheets(before, after);
  const keyAfter = new Map(sheets.both.map((pair) => [pair.before.sheet.key, pair.after.sheet.key]));
  const parts = matchParts(before, after, keyAfter);
  const lines = matchLines(before, after, keyAfter, parts);
  const columns = matchColumns(parts);
  const ids = [
    ...lines.both.map((pair) => [pair.before.id, pair.after.id] as const),
    ...columns.both.map((pair) => [pair.before.id, pair.after.id] as const),
    ...parts.both.flatMap((pair) => {
      const [a, b] = [tableId(pair.before), tableId(pair.after)];
      return a !== undefined && b !== undefined ? [[a, b] as const] : [];
    }),
  ];
  const same = new Map<object, object>([
    ...sheets.both.map((pair) => [pair.before.sheet, pair.after.sheet] as const),
    ...parts.both.map((pair) => [pair.before.part, pair.after.part] as const),
  ]);
  return {
    sheets,
    parts,
    lines,
    columns,
    idAfter: new Map(ids),
    idBefore: new Map(ids.map(([a, b]) => [b, a])),
    isSame: (a, b) => same.get(a) === b,
  };
}

type KeyAfter = ReadonlyMap<string, string>;

function matchSheets(before: Book, after: Book): Pairs<LocatedSheet> {
  const found = pairing(sheetsOf(before), sheetsOf(after));
  const key = ({ sheet }: LocatedSheet): string => sheet.key;
  found.byKey(key, key);
  found.byShares(({ sheet }) => sheet.parts.flatMap(idsOf));
  return found.done();
}

function idsOf(part: Part): readonly string[] {
  if (part.kind === 'rows') return [part.id, ...part.rows.map(({ id }) => id)];
  return part.kind === 'table' ? [part.id, ...part.columns.map(({ id }) => id)] : [part.id];
}

function matchParts(before: Book, after: Book, keyAfter: KeyAfter): Pairs<LocatedPart> {
  const found = pairing(partsOf(before), partsOf(after));
  /** Pairs by something said of a part, on the same sheet. */
  const bySheetAnd = (says: (part: Part) => string | undefined): void => {
    const key = (sheet: string | undefined, part: Part): string | undefined => {
      const said = says(part);
      return sheet === undefined || said === undefined ? undefined : `${sheet}|${part.kind}|${said}`;
    };
    found.byKey(
      ({ sheet, part }) => key(keyAfter.get(sheet.key), part),
      ({ sheet, part }) => key(sheet.key, part),
    );
  };
  bySheetAnd(({ id }) => id);
  const id = ({ part }: LocatedPart): string => `${part.kind}|${part.id}`;
  found.byKey(id, id, (a, b) => areAlikeParts(a.part, b.part));
  bySheetAnd((part) => (part.kind === 'table' ? part.name : undefined));
  bySheetAnd(contentOfPart);
  bySheetAnd(titleOfPart);
  found.byShares(({ sheet, part }) =>
    part.kind === 'rows'
      ? part.rows.map(({ name }) => `${keyAfter.get(sheet.key) ?? sheet.key}|${name}`)
      : [],
  );
  return found.done();
}

/** Whether parts of one identity on other sheets are one that was moved. */
function areAlikeParts(a: Part, b: Part): boolean {
  if (a.kind === 'rows' && b.kind === 'rows')
    return a.rows.some(({ id }) => b.rows.some((row) => row.id === id));
  if (a.kind === 'table' && b.kind === 'table') return a.name === b.name;
  return contentOfPart(a) === contentOfPart(b);
}

/** All that a part without lines says, but for its identity. */
function contentOfPart(part: Part): string | undefined {
  if (part.kind === 'rows' || part.kind === 'table') return undefined;
  const { id: _, ...content } = part;
  return canonicalJson(content);
}

function titleOfPart(part: Part): string | undefined {
  if (part.kind === 'rows') return part.title || undefined;
  if (part.kind === 'figure') return part.figure;
  return part.kind === 'chart' ? `${part.table} ${part.x}` : undefined;
}

const tableId = ({ sheet, part }: LocatedPart): string | undefined =>
  part.kind === 'table' ? `${sheet.key}.${part.name}` : undefined;

function matchLines(
  before: Book,
  after: Book,
  keyAfter: KeyAfter,
  parts: Pairs<LocatedPart>,
): Pairs<LocatedLine> {
  const found = pairing(linesOf(before), linesOf(after));
  const partAfter = new Map(parts.both.map((pair) => [pair.before.part.id, pair.after.part.id]));
  found.byKey(
    ({ part, row }) => `${partAfter.get(part.id)}|${row.id}`,
    ({ part, row }) => `${part.id}|${row.id}`,
    (a, b) => haveInCommon(a.row, b.row),
  );
  const id = ({ row }: LocatedLine): string => row.id;
  found.byKey(id, id, (a, b) => haveInCommon(a.row, b.row));
  found.byKey(
    ({ sheet, row }) => {
      const key = keyAfter.get(sheet.key);
      return key && `${key}.${row.name}`;
    },
    ({ sheet, row }) => `${sheet.key}.${row.name}`,
  );
  return found.done();
}

/** Whether two lines of one identity can be one line that was changed: they have their name, words or content in common. */
function haveInCommon(a: Row, b: Row): boolean {
  if (a.name === b.name || (a.label?.trim() && a.label === b.label)) return true;
  return a.kind === b.kind && contentOf(a) !== '' && contentOf(a) === contentOf(b);
}

function contentOf(row: Row): string {
  if (row.kind === 'given') return `${row.entry.trim()}${row.unit ?? ''}`;
  if (row.kind === 'choice') return row.entry;
  return row.kind === 'calc' && row.methods ? canonicalJson(row.methods) : (row.formula ?? '');
}

function matchColumns(parts: Pairs<LocatedPart>): Pairs<LocatedColumn> {
  const all = parts.both.map((pair: Pair<LocatedPart>) => {
    const found = pairing(columnsOf(pair.before), columnsOf(pair.after));
    const id = ({ column }: LocatedColumn): string => column.id;
    const name = ({ column }: LocatedColumn): string => column.name;
    found.byKey(id, id, ({ column: a }, { column: b }) => a.name === b.name || a.label === b.label);
    found.byKey(name, name);
    return found.done();
  });
  return {
    both: all.flatMap(({ both }) => both),
    removed: all.flatMap(({ removed }) => removed),
    added: all.flatMap(({ added }) => added),
  };
}
