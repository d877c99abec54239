import type { Book, Column, Part, Review, Row, Subject } from '../../document/index.ts';
import { methodWords } from '../../notebook/index.ts';
import type { Difference } from './difference.ts';
import { type FieldChange, fieldChanges, methodChanges, type Speaks } from './fields.ts';
import { type Located, type LocatedLine, type LocatedPart, subjectOf } from './located.ts';
import type { Matching } from './match-books.ts';
import { movedAmong } from './moved.ts';
import type { NamesSaid, SaidAt } from './names-said.ts';
import type { Pair, Pairs } from './pairs.ts';

type Field = Extract<Difference, { kind: 'field' }>;

const ANYWHERE: SaidAt = { before: { sheet: '' }, after: { sheet: '' } };
const SPEAKS: Speaks = {
  formula: 'formulas',
  applies: 'formulas',
  by: 'names',
  from: 'names',
  'link.from': 'names',
};

/** What is different in the title block, the settings, and all else that a book says of itself. */
export function editedBook(before: Book, after: Book, said: NamesSaid): readonly Difference[] {
  const of = ({ example, ...book }: Book) => ({
    ...book,
    review: reviewInShort(book.review),
    ...(example && { example: example.title }),
  });
  const changes = fieldChanges(of(before), of(after), new Set(['sheets', 'version']), {}, said, ANYWHERE);
  return changes.map((change) => ({ kind: 'book', ...change }));
}

/** What the checker says, a line of words each; on which state of the book it was said is told of each by its page. */
function reviewInShort({ tolerance = '', handValues, seen, comments, signOffs, revisions }: Review) {
  const at = ({ of, called }: { readonly of: Subject; readonly called?: string }): string =>
    called ?? of.item;
  return {
    tolerance,
    handValues: handValues.map((one) => `${at(one)}: ${one.entry} (${one.by})`).join('; '),
    seen: seen.map((one) => `${at(one)} (${one.by})`).join('; '),
    comments: comments
      .map(
        ({ text, by, answers, closed }) =>
          `${text} (${by}${answers.map((one) => `; ${one.text}`).join('')}${closed ? '; closed' : ''})`,
      )
      .join('; '),
    signOffs: signOffs.map(({ role, by, date = '' }) => `${role} ${by} ${date}`.trim()).join('; '),
    revisions: revisions.map(({ label }) => label).join(', '),
  };
}

/** Sheets that came, went, moved, or have another key, title, group or origin. */
export function editedSheets({ sheets }: Matching, said: NamesSaid): readonly Difference[] {
  const moved = movedIn(sheets.both, ({ before, after }) => [before.sheet.key, after.sheet.key]);
  return [
    ...sheets.both.flatMap((pair) => {
      const { before, after } = pair;
      const changes = fieldChanges(before.sheet, after.sheet, SHEET_APART, {}, said, ANYWHERE);
      return about(pair, moved.get(pair), changes);
    }),
    ...cameAndWent(sheets),
  ];
}

/** Parts that came, went or moved, or say something else; what is in them is compared by itself. */
export function editedParts(matching: Matching, said: NamesSaid): readonly Difference[] {
  const { both, removed, added } = matching.parts;
  const moved = movedWithin(
    both,
    ({ before, after }) => matching.isSame(before.sheet, after.sheet),
    ({ after }) => after.sheet.key,
    ({ before, after }) => [before.part.id, after.part.id],
  );
  return [
    ...both.flatMap((pair) => {
      const [before, after] = [fieldsOfPart(pair.before.part), fieldsOfPart(pair.after.part)];
      const speaks: Speaks = Object.fromEntries(
        Object.entries({ ...before.names, ...after.names }).map(([field]) => [field, 'names' as const]),
      );
      const changes = fieldChanges(
        { ...before.fields, ...before.names },
        { ...after.fields, ...after.names },
        NO_FIELDS,
        speaks,
        said,
        saidAt(pair),
      );
      return about(pair, moved.get(pair), changes);
    }),
    ...cameAndWent(onSheetsOfBoth({ both, removed, added }, matching), saysOfPart),
  ];
}

/** Lines that came, went or moved, or of which a field is another. */
export function editedLines(matching: Matching, said: NamesSaid): readonly Difference[] {
  const { both } = matching.lines;
  const moved = movedWithin(
    both,
    ({ before, after }) => matching.isSame(before.part, after.part),
    ({ after }) => after.part.id,
    ({ before, after }) => [before.row.id, after.row.id],
  );
  return [
    ...both.flatMap((pair) => {
      const { before, after } = pair;
      const at = saidAt(pair);
      const changes = [
        ...fieldChanges(before.row, after.row, LINE_APART, SPEAKS, said, at),
        ...methodChanges(methodsOf(before.row), methodsOf(after.row), said, at),
      ];
      return about(pair, moved.get(pair), changes);
    }),
    ...cameAndWent(onSheetsOfBoth(matching.lines, matching), saysOfLine),
  ];
}

/** Columns that came, went or moved, or of which a field is another; cells are compared by themselves. */
export function editedColumns(matching: Matching, said: NamesSaid): readonly Difference[] {
  const { both } = matching.columns;
  const moved = movedWithin(
    both,
    () => true,
    ({ after }) => after.table.id,
    ({ before, after }) => [before.column.id, after.column.id],
  );
  return [
    ...both.flatMap((pair) => {
      const { before, after } = pair;
      const own = saidAt(pair);
      const at = {
        before: { ...own.before, table: `${before.sheet.key}.${before.table.name}` },
        after: { ...own.after, table: `${after.sheet.key}.${after.table.name}` },
      };
      const apart = before.column.kind === after.column.kind ? COLUMN_APART : KINDS_APART;
      const changes = [
        ...fieldChanges(before.column, after.column, apart, SPEAKS, said, at),
        ...methodChanges(methodsOf(before.column), methodsOf(after.column), said, at),
      ];
      return about(pair, moved.get(pair), changes);
    }),
    ...cameAndWent(matching.columns, ({ column }) =>
      column.kind === 'given' ? undefined : formulaOf(column),
    ),
  ];
}

/** What a sheet was when it came is told by the page of origins. */
const SHEET_APART: ReadonlySet<string> = new Set(['parts', 'start']);
const NO_FIELDS: ReadonlySet<string> = new Set();
const LINE_APART: ReadonlySet<string> = new Set(['id', 'methods']);
const COLUMN_APART: ReadonlySet<string> = new Set(['id', 'methods', 'chunks', 'stated']);
const KINDS_APART: ReadonlySet<string> = new Set(['id', 'methods', 'chunks']);

const saidAt = ({ before, after }: Pair<{ readonly sheet: { readonly key: string } }>): SaidAt => ({
  before: { sheet: before.sheet.key },
  after: { sheet: after.sheet.key },
});

function methodsOf(one: Row | Column) {
  return one.kind === 'calc' ? one.methods : undefined;
}

/** What a part says: its fields, and those that are names. */
function fieldsOfPart(part: Part): {
  readonly fields: object;
  readonly names: Readonly<Record<string, string>>;
} {
  switch (part.kind) {
    case 'rows':
      return { fields: titled(part), names: {} };
    case 'table':
      return { fields: { name: part.name, ...titled(part) }, names: {} };
    case 'prose':
      return { fields: { role: part.role, text: part.text }, names: {} };
    case 'figure': {
      const cells = Object.entries(part.cells).map(([role, name]) => [`cells.${role}`, name] as const);
      return { fields: { figure: part.figure, ...titled(part) }, names: Object.fromEntries(cells) };
    }
    case 'chart': {
      const column = (name: string): string => `${part.table}.${name}`;
      const curves = part.y.map((name, at) => [`y ${at + 1}`, column(name)] as const);
      const names = { table: part.table, x: column(part.x), ...Object.fromEntries(curves) };
      return { fields: { form: part.form, ...titled(part) }, names };
    }
  }
}

function titled({ title }: { readonly title?: string }): object {
  return title === undefined ? {} : { title };
}

function saysOfPart({ part }: LocatedPart): string | undefined {
  return part.kind === 'prose' ? part.text : undefined;
}

function saysOfLine({ row }: LocatedLine): string {
  return row.kind === 'given' || row.kind === 'choice' ? row.entry : formulaOf(row);
}

/** The formula of a line, or that of each of its methods behind what the method is for. */
function formulaOf(
  one: Exclude<Row, { kind: 'given' | 'choice' }> | Exclude<Column, { kind: 'given' }>,
): string {
  if (one.kind !== 'calc' || !one.methods) return one.formula ?? '';
  return one.methods.map((method) => `${methodWords(method)}: ${method.formula}`).join('; ');
}

/** What came and went on sheets that are in both books: a whole sheet is told as one. */
function onSheetsOfBoth<Item extends LocatedPart | LocatedLine>(
  { both, removed, added }: Pairs<Item>,
  { sheets }: Matching,
): Pairs<Item> {
  const gone = new Set(sheets.removed.map(({ sheet }) => sheet));
  const come = new Set(sheets.added.map(({ sheet }) => sheet));
  return {
    both,
    removed: removed.filter(({ sheet }) => !gone.has(sheet)),
    added: added.filter(({ sheet }) => !come.has(sheet)),
  };
}

function cameAndWent<Item extends Located>(
  { added, removed }: Pairs<Item>,
  saysOf: (item: Item) => string | undefined = () => undefined,
): readonly Difference[] {
  const told = (kind: 'added' | 'removed', item: Item): Difference => {
    const says = saysOf(item);
    const subject = subjectOf(kind === 'added' ? { after: item } : { before: item });
    return { kind, subject, ...(says !== undefined && { says }) };
  };
  return [...added.map((item) => told('added', item)), ...removed.map((item) => told('removed', item))];
}

function about(
  pair: Pair<Located>,
  within: boolean | undefined,
  changes: readonly FieldChange[],
): readonly Difference[] {
  const subject = subjectOf(pair);
  const moved: readonly Difference[] = within === undefined ? [] : [{ kind: 'moved', subject, within }];
  return [...moved, ...changes.map((change): Field => ({ kind: 'field', subject, ...change }))];
}

/** What moved, and whether among what stands in the same part or sheet, or out of it. */
function movedWithin<Item extends Located>(
  both: readonly Pair<Item>[],
  isSame: (pair: Pair<Item>) => boolean,
  groupOf: (pair: Pair<Item>) => string,
  ids: (pair: Pair<Item>) => readonly string[],
): ReadonlyMap<Pair<Item>, boolean> {
  const groups = new Map<string, Pair<Item>[]>();
  const out: Pair<Item>[] = [];
  for (const pair of both) {
    const group = groups.get(groupOf(pair));
    if (!isSame(pair)) out.push(pair);
    else if (group) group.push(pair);
    else groups.set(groupOf(pair), [pair]);
  }
  return new Map([
    ...out.map((pair) => [pair, false] as const),
    ...[...groups.values()].flatMap((group) => [...movedIn(group, ids)]),
  ]);
}

function movedIn<Item extends Located>(
  both: readonly Pair<Item>[],
  ids: (pair: Pair<Item>) => readonly string[],
): ReadonlyMap<Pair<Item>, boolean> {
  const moved = movedAmong(
    both.map((pair) => ({
      before: pair.before.index,
      after: pair.after.index,
      label: [...ids(pair)].sort().join('|'),
    })),
  );
  return new Map(both.filter((_, at) => moved.has(at)).map((pair) => [pair, true]));
}
