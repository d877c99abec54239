import type { Comment, HandValue, Review, SeenMark, Subject } from '../../document/index.ts';
import type { Item, Notebook } from '../../notebook/index.ts';
import { type Change, changesSince, type Since, stateAt } from './bases.ts';
import { type BookState, bookState } from './book-state.ts';
import { type Ground, groundsOf } from './grounds.ts';
import { type HandVerdict, judgeHandValue } from './judge-hand-value.ts';
import { findSubject, idInBook, subjectOf } from './subjects.ts';

/**
 * How far something has come in checking. A result: its hand value agrees, differs or cannot be compared; `idle` is a check that
 * does not apply, of which there is nothing to compare. An entry: it was seen at its source. Either is `stale` where something
 * it rests on has changed since, a check that was compared also where that has switched it off.
 */
export type CheckState = 'not checked' | 'agrees' | 'differs' | 'not comparable' | 'seen' | 'stale' | 'idle';

/** One result or entry of a book, with what the checker has said of it. */
export interface Checked {
  readonly subject: Subject;
  readonly item: Item;
  /** Of a cell, its row from 0. */
  readonly row?: number;
  /** Whether it is computed, and compared by hand, or entered, and seen at its source. */
  readonly is: 'result' | 'entry';
  readonly state: CheckState;
  readonly hand?: HandValue;
  readonly verdict?: HandVerdict;
  readonly seen?: SeenMark;
  /** What has changed since, the nearest first. */
  readonly changes: readonly Change[];
  /** The comments on it that are not closed. */
  readonly open: readonly Comment[];
}

/** Something a review speaks of that the book has no more. */
export interface Orphan {
  readonly subject: Subject;
  readonly hand?: HandValue;
  readonly seen?: SeenMark;
}

/** The whole of a review: everything there is to check in the order of the book, and what is gone. */
export interface Checking {
  readonly all: readonly Checked[];
  readonly gone: readonly Orphan[];
  /** The open comments on the book as a whole, or on lines that are gone. */
  readonly open: readonly Comment[];
}

const keyOf = ({ item, row }: Subject): string => (row === undefined ? item : `${item}#${row}`);

/** How far the checking of a book has come. */
export function checkingOf(notebook: Notebook): Checking {
  const { book, model } = notebook;
  const { review } = book;
  const checked = checkerOf(notebook);
  const cells = cellsSpokenOf(notebook);
  const all = [...model.items.values()].flatMap((item): readonly Checked[] => [
    checked(item),
    ...(cells.get(idInBook(item)) ?? []).map((row) => checked(item, row)),
  ]);
  const told = new Set(all.map(({ subject }) => keyOf(subject)));
  const isGone = (of: Subject): boolean => !told.has(keyOf(of));
  const gone = [
    ...review.handValues.flatMap((hand) => (isGone(hand.of) ? [{ subject: hand.of, hand }] : [])),
    ...review.seen.flatMap((seen) => (isGone(seen.of) ? [{ subject: seen.of, seen }] : [])),
  ];
  const open = review.comments.filter(({ of, closed }) => !closed && (!of || isGone(of)));
  return { all, gone, open };
}

/** How far one line, or a cell of a column in a row (from 0), has come in checking. */
export function checkedAt(notebook: Notebook, item: Item, row?: number): Checked {
  return checkerOf(notebook)(item, row);
}

/** Says of any line or cell how far it has come; what all of them need is worked out once. */
function checkerOf(notebook: Notebook): (item: Item, row?: number) => Checked {
  const { book, model } = notebook;
  const hands = new Map(book.review.handValues.map((one) => [keyOf(one.of), one]));
  const marks = new Map(book.review.seen.map((one) => [keyOf(one.of), one]));
  const comments = openComments(book.review);
  const since = sinceBases(notebook);
  return (item, row) => {
    const subject = subjectOf(model, item, row);
    const key = keyOf(subject);
    const [hand, seen] = [hands.get(key), marks.get(key)];
    const about = { subject, item, ...(row !== undefined && { row }), open: comments.get(key) ?? [] };
    const spoken = { ...about, ...(hand && { hand }), ...(seen && { seen }) };
    const ofHand = hand ? changesOfResult(notebook, subject, since(hand.basis)) : [];
    const verdict = hand && judgeHandValue(notebook, item, row, hand);
    const handState = !verdict ? 'not checked' : ofHand.length > 0 ? 'stale' : stateOf(verdict);
    const compared = verdict && { verdict };
    if (!isEntry(item, row)) {
      const state = isIdle(notebook, item) && handState !== 'stale' ? 'idle' : handState;
      return { ...spoken, is: 'result', state, changes: ofHand, ...compared };
    }
    const ofMark = seen ? changesOfEntry(notebook, seen, subject, item, since) : [];
    const markState = !seen ? 'not checked' : ofMark.length > 0 ? 'stale' : 'seen';
    // A value that was stated over a result that was checked: what the checker came to still stands against it.
    const isOpen = handState !== 'not checked' && handState !== 'agrees';
    const state = isOpen ? handState : markState;
    return { ...spoken, is: 'entry', state, changes: [...ofHand, ...ofMark], ...compared };
  };
}

/** The comments that are not closed, by what they are on; those on the whole book at ''. */
function openComments({ comments }: Review): ReadonlyMap<string, readonly Comment[]> {
  const found = new Map<string, Comment[]>();
  for (const comment of comments) {
    if (comment.closed) continue;
    const key = comment.of ? keyOf(comment.of) : '';
    const known = found.get(key);
    if (known) known.push(comment);
    else found.set(key, [comment]);
  }
  return found;
}

/** How much of a book, or of some of it, is checked: what agrees or was seen, of all there is to check. */
export function coverageOf(
  all: readonly Checked[],
): Readonly<Record<CheckState, number>> & { readonly all: number } {
  const count = (state: CheckState): number => all.filter((one) => one.state === state).length;
  const idle = count('idle');
  return {
    all: all.length - idle,
    idle,
    'not checked': count('not checked'),
    agrees: count('agrees'),
    differs: count('differs'),
    'not comparable': count('not comparable'),
    seen: count('seen'),
    stale: count('stale'),
  };
}

/** Whether a person enters it: givens, choices, columns of entries, and stated values, which stand in place of a result. */
function isEntry(item: Item, row: number | undefined): boolean {
  if (item.kind === 'input' || item.kind === 'input column') return true;
  if (item.kind === 'formula') return item.stated !== undefined;
  return row !== undefined && item.cells?.has(row) === true;
}

/** Whether it is a check that does not apply. */
function isIdle(notebook: Notebook, item: Item): boolean {
  return item.kind === 'formula' && notebook.result(item.id).status === 'inapplicable';
}

function stateOf({ kind }: HandVerdict): CheckState {
  return kind === 'agrees' || kind === 'differs' ? kind : 'not comparable';
}

/** The cells that are spoken of, and those that are stated: their rows from 0, by the ids of their columns. */
function cellsSpokenOf({ book, model }: Notebook): ReadonlyMap<string, readonly number[]> {
  const { handValues, seen, comments } = book.review;
  const stated = [...model.items.values()].flatMap((item) =>
    item.kind === 'formula column' && item.column.kind === 'calc'
      ? (item.column.stated ?? []).map(({ row }) => ({ item: item.column.id, row }))
      : [],
  );
  const subjects = [...handValues, ...seen, ...comments].flatMap(({ of }) => (of ? [of] : []));
  const cells = new Map<string, Set<number>>();
  for (const subject of [...subjects, ...stated]) {
    const row = subject.row === undefined ? undefined : findSubject(model, subject)?.row;
    if (row !== undefined) cells.set(subject.item, (cells.get(subject.item) ?? new Set<number>()).add(row));
  }
  return new Map([...cells].map(([id, rows]) => [id, [...rows].sort((a, b) => a - b)]));
}

/** What has changed since each basis, worked out once for all that rests on it. */
function sinceBases(notebook: Notebook): (basis: string) => Since | undefined {
  const { review } = notebook.book;
  let now: BookState | undefined;
  const known = new Map<string, Since | undefined>();
  return (basis) => {
    if (!known.has(basis)) {
      const before = stateAt(review, basis);
      now ??= bookState(notebook);
      known.set(basis, before && changesSince(before, now));
    }
    return known.get(basis);
  };
}

/** What has changed of all that a result rests on; a basis that cannot be read tells that everything may have. */
function changesOfResult(notebook: Notebook, subject: Subject, since: Since | undefined): readonly Change[] {
  if (!since) return [{ item: '' }];
  if (since.isEmpty) return [];
  return [...groundsOf(notebook, subject).flatMap(since.of), ...since.units];
}

/** What has changed of an entry itself, or of the source it was seen at. */
function changesOfEntry(
  { model }: Notebook,
  { basis, source = '' }: SeenMark,
  subject: Subject,
  item: Item,
  sinceBasis: (basis: string) => Since | undefined,
): readonly Change[] {
  const since = sinceBasis(basis);
  if (!since) return [{ item: '' }];
  const isColumn = 'table' in item;
  const own: Ground = { item: subject.item, rows: isColumn ? (subject.row ?? 'all') : 'none' };
  const rows = isColumn && subject.row === undefined ? model.tables.get(item.table)?.part : undefined;
  const is = referenceOf(item);
  return [
    ...since.of(own),
    ...(rows ? since.of({ item: rows.id, rows: 'none' }) : []),
    ...(is === source ? [] : [{ item: subject.item, was: source, is }]),
  ];
}

/** The reference that stands beside a line or column. */
export function referenceOf(item: Item): string {
  return (item.kind === 'input' || item.kind === 'formula' ? item.row : item.column).reference ?? '';
}
