import type { BookComparison, Difference, RowMatching } from '../../review/index.ts';
import { changeWords, inOneLine } from './change-words.ts';

/** The most cells and rows of one table, or of one column, that are listed. */
const LISTED = 40;

/** A sheet of either book, as a list of changes heads it. */
interface Headed {
  readonly key: string;
  readonly title: string;
}

/** The sheets of the two books that are compared. */
export interface ComparedSheets {
  readonly before: readonly Headed[];
  readonly after: readonly Headed[];
}

/**
 * What is different between two books, as an office lists changes: sheet by sheet, first what a person changed, then what
 * followed from it, verdicts that turned in front, then by size. `rest` says behind what is only counted where all of it is.
 */
export function changeList(
  { differences, tables }: BookComparison,
  { before, after }: ComparedSheets,
  rest = '',
): readonly string[] {
  const newKey = renamedSheets(differences);
  const sheetOf = (one: Difference): string | undefined => {
    if (!('subject' in one)) return undefined;
    const { subject } = one;
    const old = subject.before?.sheet ?? '';
    return subject.after?.sheet ?? newKey.get(old) ?? old;
  };
  const ofBook = differences.filter((one) => one.kind === 'book');
  const groups = new Map<string, Difference[]>();
  for (const one of differences) {
    const key = sheetOf(one);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  const titles = new Map(
    [...after, ...before.filter(({ key }) => !newKey.has(key))].map((one) => [one.key, one]),
  );
  return [
    ...(ofBook.length > 0 ? ['Title block and settings', ...ofBook.map(indented)] : []),
    ...[...titles.values()].flatMap(({ key, title }) => {
      const own = groups.get(key) ?? [];
      if (own.length === 0) return [];
      const matchings = tables.filter(({ table }) => table.after?.sheet === key && isToSay(table, own));
      return [
        inOneLine(`Sheet ${key}${title === '' ? '' : `, ${title}`}`),
        ...sheetLines(own, matchings, rest),
      ];
    }),
  ];
  function isToSay(table: RowMatching['table'], own: readonly Difference[]): boolean {
    return own.some((one) => 'subject' in one && one.subject.after?.part === table.after?.part);
  }
}

function sheetLines(
  own: readonly Difference[],
  tables: readonly RowMatching[],
  rest: string,
): readonly string[] {
  const edits = own.filter((one) => !('causes' in one));
  const followed = own.filter((one) => 'causes' in one).toSorted((a, b) => weight(b) - weight(a));
  return [
    ...(edits.length > 0 ? ['  changed', ...editLines(edits, rest), ...tables.flatMap(matchingLine)] : []),
    ...(followed.length > 0 ? ['  followed', ...followed.map((one) => `    ${changeWords(one)}`)] : []),
  ];
}

/** The edits a line each; of many cells or rows of one column or table only the first. */
function editLines(edits: readonly Difference[], rest: string): readonly string[] {
  const counts = new Map<string, number>();
  const lines: string[] = [];
  for (const edit of edits) {
    const place = 'subject' in edit ? (edit.subject.after ?? edit.subject.before) : undefined;
    const isMany = 'subject' in edit && (edit.subject.kind === 'row' || edit.subject.kind === 'cell');
    if (isMany && place) {
      const key = `${edit.kind} ${place.id}`;
      const count = (counts.get(key) ?? 0) + 1;
      counts.set(key, count);
      if (count > LISTED) continue;
    }
    lines.push(`    ${changeWords(edit)}`);
  }
  for (const [key, count] of counts)
    if (count > LISTED) lines.push(`    and ${count - LISTED} more (${key})${rest}`);
  return lines;
}

/** Rows that were not told apart by their identities could be read in another way, so that it is said how they were. */
function matchingLine({ table, by, key }: RowMatching): readonly string[] {
  const id = table.after?.id ?? '';
  if (by === 'identity') return [];
  if (by === 'position') return [`    (rows of ${id} are told apart by their places)`];
  return [`    (rows of ${id} are told apart by what stands in ${key?.after ?? ''})`];
}

/** Verdicts that turned, then what has a value in one book only, then by size. */
function weight(one: Difference): number {
  if (one.kind === 'check') {
    if (one.from.word !== one.to.word) return one.to.word === 'fails' ? 4e300 : 3e300;
    const [a = 0, b = 0] = [one.from.verdict?.utilisation, one.to.verdict?.utilisation];
    return a === 0 ? Math.abs(b) : Math.abs((b - a) / a);
  }
  if (one.kind === 'values') return toNineDecimals(one.largest?.size.relative);
  if (one.kind !== 'result' && one.kind !== 'total') return 2e300;
  if (one.from.status !== one.to.status) return 1e300;
  return toNineDecimals(one.size?.relative);
}

/** What is as large but for rounding stays in the order of the book. */
function toNineDecimals(relative = 0): number {
  return Math.round(Math.abs(relative) * 1e9) / 1e9;
}

function renamedSheets(differences: readonly Difference[]): ReadonlyMap<string, string> {
  return new Map(
    differences.flatMap((one) => {
      if (one.kind !== 'field' || one.subject.kind !== 'sheet' || one.field !== 'key') return [];
      const { before, after } = one.subject;
      return before && after ? [[before.id, after.id] as const] : [];
    }),
  );
}

const indented = (one: Difference): string => `  ${changeWords(one)}`;
