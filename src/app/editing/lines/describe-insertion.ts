import { problem } from '../../../diagnostics/index.ts';
import type { Edit } from '../../../document/index.ts';

const done = { paste: 'pasted', take: 'taken', add: 'added' } as const;

/** So many columns are named; of more than these their number says as much. */
const MOST_NAMED = 4;

/** What else there is to say of rows put into a table. */
interface Insertion {
  /** What is put in, rows unless said otherwise. */
  readonly what?: 'row' | 'line' | 'cell';
  /** How many of them are new. */
  readonly fresh?: number;
  /** The columns of rows that were there that hold what they held, because the text has nothing for them. */
  readonly kept?: readonly string[];
  /** The columns whose entries went with the items they are of. */
  readonly followed?: readonly string[];
  /** The columns whose entries are gone in these rows. */
  readonly emptied?: readonly string[];
  /** The rows of the list that was there that stay below. */
  readonly below?: readonly string[];
  /** Those of them that stand among the new rows as well. */
  readonly twice?: readonly string[];
  /** The stated values that are gone. */
  readonly deleted?: readonly string[];
  /** The stated values whose reasons are to be confirmed. */
  readonly open?: readonly string[];
  /** The entries that are blank now. */
  readonly blanked?: readonly string[];
  /** What became of the cells of the text, in words. */
  readonly account?: string;
}

/** The label of an edit that puts rows into a table, lines onto a sheet or cells onto lines: "paste 5 rows (2 of them new); 10 cells: 10 taken". */
export function insertionLabel(
  verb: keyof typeof done,
  rows: number,
  {
    what = 'row',
    fresh = 0,
    kept = [],
    followed = [],
    emptied = [],
    below = [],
    twice = [],
    deleted = [],
    open = [],
    blanked = [],
    account = '',
  }: Insertion = {},
): string {
  const added = fresh > 0 && fresh < rows ? ` (${fresh} of them new)` : '';
  const others =
    kept.length > 0 ? `; ${namesOf(kept)} ${kept.length === 1 ? 'keeps' : 'keep'} what was there` : '';
  const went =
    followed.length > 0
      ? `; ${namesOf(followed)} ${followed.length === 1 ? 'follows its item' : 'follow their items'}`
      : '';
  const gone =
    emptied.length > 0
      ? `; ${namesOf(emptied)} ${emptied.length === 1 ? 'is' : 'are'} blank now in these rows`
      : '';
  const stay =
    below.length === 0
      ? ''
      : below.length === 1
        ? '; 1 row below stays'
        : `; ${below.length} rows below stay`;
  const told = [deletedWords(deleted), openWords(open), twiceWords(twice), blankedWords(blanked)];
  const first = told.map((words) => (words === '' ? '' : `; ${words}`)).join('');
  return `${verb} ${rows} ${what}${rows === 1 ? '' : 's'}${added}${first}${others}${went}${gone}${stay}${account === '' ? '' : `; ${account}`}`;
}

/** So many entries are named; stated values are named all, as far as a sentence can. */
const MOST_ENTRIES = 4;

/** Which stated values are gone: value and reason of each. */
export function deletedWords(values: readonly string[]): string {
  return values.length === 0 ? '' : problem('table-stated-gone', { from: 0, to: 0 }, { values }).message;
}

/** Which stated values have reasons that were given for something else. */
export function openWords(values: readonly string[]): string {
  if (values.length === 0) return '';
  const are = values.length === 1 ? '1 reason is' : `${values.length} reasons are`;
  const they = values.length === 1 ? 'it was' : 'they were';
  return `${are} to be confirmed, for what ${they} given for has changed: ${someOf(values, MOST_ENTRIES)}`;
}

/** Which items stand among the new rows and stay below them. */
export function twiceWords(items: readonly string[]): string {
  if (items.length === 0) return '';
  return `${namesOf(items)} ${items.length === 1 ? 'stands' : 'stand'} there twice now, in the new rows and below them`;
}

/** Which entries the new rows have nothing in the place of. */
export function blankedWords(entries: readonly string[]): string {
  if (entries.length === 0) return '';
  const are = entries.length === 1 ? '1 entry becomes' : `${entries.length} entries become`;
  return `${are} blank: ${someOf(entries, MOST_ENTRIES)}`;
}

function someOf(items: readonly string[], most: number): string {
  const more = items.length - most;
  return more > 0 ? `${items.slice(0, most).join(', ')} and ${more} more` : items.join(', ');
}

/** The first of some columns by name, and how many more there are. */
export function namesOf(columns: readonly string[]): string {
  const named = columns.slice(0, MOST_NAMED).map((name) => `“${name}”`);
  const more = columns.length - named.length;
  const last = more > 0 ? [`${more} more`] : named.splice(-1);
  return [named.join(', '), ...last].filter((words) => words !== '').join(' and ');
}

/** What an edit with such a label put in, in words: "5 rows (2 of them new) pasted"; undefined for any other. */
export function describeInsertion({ label }: Edit): string | undefined {
  const [, verb = '', rows, kept = ''] =
    /^(paste|take|add) (\d+ (?:row|line|cell)s?[^;]*)(;.*)?$/.exec(label) ?? [];
  return rows === undefined ? undefined : `${rows} ${done[verb as keyof typeof done]}${kept}`;
}

/** What became of the cells of a text, as the label of such an edit says it: "10 cells: 10 taken". */
export function accountIn({ label }: Edit): string {
  return label.slice(label.indexOf('; ') + 2);
}
