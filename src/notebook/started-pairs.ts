import type { Book, Sheet, Start } from '../document/index.ts';
import { type NamedPart, type Names, namesOf } from './names.ts';

/** A line, table or column of a sheet beside what it was when the sheet came: added without `was`, gone without `is`. */
export interface StartedPair {
  /** The key that the sheet which came has now. */
  readonly sheet: string;
  readonly start: Start;
  /** Its id is the one it had there. */
  readonly was?: NamedPart;
  readonly is?: NamedPart;
}

const pairsByBook = new WeakMap<Book, readonly StartedPair[]>();
const namesByStart = new WeakMap<Start, Names>();

/**
 * Everything with a name on the sheets that know what they were: by its identity, which it keeps under another name and on
 * another sheet, else by its name. In the order of the book, what is gone at the end of its sheet.
 */
export function startedPairs(book: Book): readonly StartedPair[] {
  const known = pairsByBook.get(book);
  if (known) return known;
  const now = new Map([...namesOf(book).values()].map((part) => [itemId(part), part]));
  const before = new Map<
    string,
    { readonly start: Start; readonly sheet: string; readonly was: NamedPart }
  >();
  const gone: StartedPair[] = [];
  const taken = new Map<NamedPart, NonNullable<ReturnType<typeof before.get>>>();
  const started = book.sheets.flatMap(({ key: sheet, start }) => (start ? [{ sheet, start }] : []));
  for (const { sheet, start } of started)
    for (const was of namesAtStart(start).values()) {
      const is = now.get(itemId(was));
      if (is?.kind === was.kind) taken.set(is, { start, sheet, was });
      else before.set(`${sheet} ${nowCalled(was, start, sheet)}`, { start, sheet, was });
    }
  for (const is of now.values()) {
    const found = before.get(`${is.sheet} ${is.id}`);
    if (!found || taken.has(is) || found.was.kind !== is.kind) continue;
    taken.set(is, found);
    before.delete(`${is.sheet} ${is.id}`);
  }
  for (const { sheet, start, was } of before.values()) gone.push({ sheet, start, was });
  const pairs = book.sheets.flatMap(({ key, start }): StartedPair[] => {
    const own = [...now.values()].filter(({ sheet }) => sheet === key);
    return [
      ...own.flatMap((is): StartedPair[] => {
        const found = taken.get(is);
        if (found) return [{ ...found, is }];
        return start && start.held?.[itemId(is)] === undefined ? [{ sheet: key, start, is }] : [];
      }),
      ...gone.filter(({ sheet }) => sheet === key),
    ];
  });
  pairsByBook.set(book, pairs);
  return pairs;
}

/** What a name that a sheet came with would be in its book now, had nothing been changed but the key of the sheet. */
function nowCalled(was: NamedPart, start: Start, sheet: string): string {
  return `${sheet}${was.id.slice(start.key.length)}`;
}

/** Everything with a name on a sheet as it came, by the full ids that it had there. */
export function namesAtStart(start: Start): Names {
  const known = namesByStart.get(start);
  if (known) return known;
  const sheet: Sheet = { key: start.key, title: '', parts: start.parts };
  const names = namesOf({ sheets: [sheet] });
  namesByStart.set(start, names);
  return names;
}

/** The identity of a line, table or column. */
export function itemId(part: NamedPart): string {
  if (part.kind === 'row') return part.row.id;
  return part.kind === 'table' ? part.table.id : part.column.id;
}

/**
 * What lines, tables and columns of a book were called in the template or book of one content, by their full ids now; those
 * that stand for what did not come along are called as that was.
 */
export function namesInOrigin(book: Book, content: string): ReadonlyMap<string, string> {
  const called = new Map<string, string>();
  for (const { start, was, is } of startedPairs(book))
    if (was && is && start.content === content) called.set(is.id, was.id);
  for (const part of namesOf(book).values()) {
    const start = book.sheets.find(({ key }) => key === part.sheet)?.start;
    const stands = start?.content === content ? start.held?.[itemId(part)] : undefined;
    if (stands !== undefined) called.set(part.id, stands);
  }
  return called;
}
