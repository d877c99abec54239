import {
  type Book,
  type Case,
  canonicalJson,
  type Edit,
  type Example,
  type Part,
  type Patch,
  type Row,
} from '../../document/index.ts';
import { formerOf, partWithFormer } from './with-entries.ts';

/**
 * The edit that puts the inputs of a case on the sheets of a book; `entered` is the book with them. What stood there before is
 * kept in the book, so that it can be taken back at any time: of several cases one after the other, what stood there first.
 */
export function putCaseEdit(book: Book, entered: Book, template: string, { id, title }: Case): Edit {
  const own = withoutExample(book);
  const example: Example = {
    template,
    case: id,
    title,
    before: changesOf(own, entered).map(({ before }) => before),
  };
  return {
    label: `put the inputs of “${title}” on the sheets`,
    patches: [
      ...changesOf(book, entered).flatMap(({ patches }) => patches),
      { kind: 'set', at: ['example'], value: example },
    ],
  };
}

/** The edit that takes the inputs of a case off the sheets again; undefined where none stand there. */
export function takeCaseBackEdit(book: Book): Edit | undefined {
  if (!book.example) return undefined;
  const { title } = book.example;
  return {
    label: `take the inputs of “${title}” back`,
    patches: [
      ...changesOf(book, withoutExample(book)).flatMap(({ patches }) => patches),
      { kind: 'set', at: ['example'] },
    ],
  };
}

/** A book with its own entries where the inputs of a case stand. */
export function withoutExample(book: Book): Book {
  if (!book.example) return book;
  const former = formerOf(book.example.before);
  const sheets = book.sheets.map((sheet) => ({
    ...sheet,
    parts: sheet.parts.map((part) => partWithFormer(part, former)),
  }));
  return { ...book, sheets };
}

interface PartChange {
  /** What of the part is another, as it was. */
  readonly before: Part;
  readonly patches: readonly Patch[];
}

/** What has other entries in another state of a book, line by line and table by table. */
function changesOf(book: Book, other: Book): readonly PartChange[] {
  return book.sheets.flatMap(({ key, parts }): PartChange[] => {
    const others = new Map(
      other.sheets.find((sheet) => sheet.key === key)?.parts.map((part) => [part.id, part]),
    );
    return parts.flatMap((part) => changeOf(['sheets', key, 'parts', part.id], part, others.get(part.id)));
  });
}

function changeOf(at: readonly string[], part: Part, next: Part | undefined): readonly PartChange[] {
  if (!next || next === part || next.kind !== part.kind) return [];
  if (part.kind === 'table')
    return isSame(part, next) ? [] : [{ before: part, patches: [{ kind: 'set', at, value: next }] }];
  if (part.kind !== 'rows' || next.kind !== 'rows') return [];
  const rows = new Map(next.rows.map((row) => [row.id, row]));
  const changed = part.rows.flatMap((row): (readonly [Row, Row])[] => {
    const now = rows.get(row.id);
    return now && now !== row && !isSame(row, now) ? [[row, now]] : [];
  });
  if (changed.length === 0) return [];
  return [
    {
      before: { id: part.id, kind: 'rows', rows: changed.map(([row]) => row) },
      patches: changed.map(([row, now]) => ({ kind: 'set', at: [...at, 'rows', row.id], value: now })),
    },
  ];
}

const isSame = (a: Part | Row, b: Part | Row): boolean => canonicalJson(a) === canonicalJson(b);
