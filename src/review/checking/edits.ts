import {
  type Comment,
  type Edit,
  type HandValue,
  joinEdits,
  type SeenMark,
  type Subject,
} from '../../document/index.ts';
import type { Item, Notebook } from '../../notebook/index.ts';
import { basisNow, freshId } from './bases.ts';
import { referenceOf } from './checking.ts';
import { findSubject } from './subjects.ts';

/** Who says something, and when, as they write dates. */
export interface Said {
  readonly by: string;
  readonly date?: string;
}

type List = 'handValues' | 'seen' | 'comments';

const isSame = (a: Subject, b: Subject): boolean => a.item === b.item && a.row === b.row;

/**
 * The edit that enters a hand value for a result, in place of the one there; with it goes how the book stands now, where
 * that is not noted yet.
 */
export function enterHandValue(
  notebook: Notebook,
  of: Subject,
  value: Pick<HandValue, 'entry' | 'tolerance' | 'note'> & Said,
): Edit {
  return putOn(notebook, 'handValues', 'h', of, value, 'enter a hand value');
}

/** The edit that marks an entry as seen at the source that stands beside it now. */
export function markSeen(
  notebook: Notebook,
  of: Subject,
  item: Item,
  { by, date, note }: Pick<SeenMark, 'note'> & Said,
): Edit {
  const source = referenceOf(item);
  const mark = {
    by,
    ...(date !== undefined && { date }),
    ...(note !== undefined && { note }),
    ...(source !== '' && { source }),
  };
  return putOn(notebook, 'seen', 's', of, mark, 'mark an entry as seen');
}

/** The edit that takes a hand value or a mark off. */
export function takeOff(list: 'handValues' | 'seen', id: string): Edit {
  const label = list === 'seen' ? 'take a mark off' : 'take a hand value off';
  return { label, patches: [{ kind: 'remove', at: ['review', list, id] }] };
}

/** The edit that gives one hand value a tolerance of its own; undefined for that of the review. What it was compared on stays. */
export function setOwnTolerance({ id }: HandValue, tolerance: string | undefined): Edit {
  const at = ['review', 'handValues', id, 'tolerance'];
  return {
    label: 'change the tolerance of a hand value',
    patches: [tolerance === undefined ? { kind: 'set', at } : { kind: 'set', at, value: tolerance }],
  };
}

/** The edit that sets the tolerance of all hand values without one of their own; undefined for the usual one. */
export function setTolerance(tolerance: string | undefined): Edit {
  const at = ['review', 'tolerance'];
  return {
    label: 'change the tolerance of hand values',
    patches: [tolerance === undefined ? { kind: 'set', at } : { kind: 'set', at, value: tolerance }],
  };
}

/** The edit that raises a comment, on a line or on the whole book. */
export function raiseComment(
  notebook: Notebook,
  of: Subject | undefined,
  said: Said & { readonly text: string },
): Edit {
  const list = notebook.book.review.comments;
  const value: Comment = {
    id: freshId(list, 'c'),
    ...(of && { of, ...calledNow(notebook, of) }),
    ...said,
    answers: [],
  };
  return insertInto('comments', list.length, value, 'raise a comment');
}

/** The edit that answers a comment. */
export function answerComment({ id, answers }: Comment, said: Said & { readonly text: string }): Edit {
  const at = ['review', 'comments', id, 'answers'];
  return {
    label: 'answer a comment',
    patches: [{ kind: 'insert', at, index: answers.length, value: { ...said } }],
  };
}

/** The edit that closes a comment, or opens it again. */
export function closeComment({ id }: Comment, said: Said | undefined): Edit {
  const at = ['review', 'comments', id, 'closed'];
  return said
    ? { label: 'close a comment', patches: [{ kind: 'set', at, value: { ...said } }] }
    : { label: 'open a comment again', patches: [{ kind: 'set', at }] };
}

/** What a line or cell is called now, in words that last. */
function calledNow({ model }: Notebook, of: Subject): { readonly called?: string } {
  const found = findSubject(model, of);
  if (!found) return {};
  const { item, row } = found;
  const { label = '' } = item.kind === 'input' || item.kind === 'formula' ? item.row : item.column;
  const words = `${item.id}${row === undefined ? '' : `, row ${row + 1}`}${label === '' ? '' : `, ${label}`}`;
  return { called: words.slice(0, 500) };
}

function putOn(
  notebook: Notebook,
  list: 'handValues' | 'seen',
  prefix: string,
  of: Subject,
  said: Omit<HandValue, 'id' | 'of' | 'basis' | 'entry'> | Omit<SeenMark, 'id' | 'of' | 'basis'>,
  label: string,
): Edit {
  const items = notebook.book.review[list];
  const before = items.findIndex((one) => isSame(one.of, of));
  const basis = basisNow(notebook);
  const id = items[before]?.id ?? freshId(items, prefix);
  const remove = before < 0 ? [] : [takeOff(list, id)];
  const index = before < 0 ? items.length : before;
  const value = { id, of, ...calledNow(notebook, of), ...said, basis: basis.id };
  return joinEdits(label, [
    ...(basis.edit ? [basis.edit] : []),
    ...remove,
    insertInto(list, index, value, label),
  ]);
}

function insertInto(
  list: List,
  index: number,
  value: Readonly<Record<string, unknown>>,
  label: string,
): Edit {
  const at = ['review', list];
  return { label, patches: [{ kind: 'insert', at, index, value: value as never }] };
}
