import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import { applyPatch } from '../edits/apply-edit.ts';
import type { Edit, Patch } from '../edits/patch.ts';
import { identityIn } from '../edits/places.ts';
import { pathText } from '../json/path.ts';
import { type IdRun, idOfRow, rowIdsOf, rowWithId } from '../row-ids.ts';
import type { Book } from '../schema/book.ts';
import type { Table } from '../schema/parts.ts';
import { contentOf, spansOf } from './rows-seen.ts';
import { isAsSeen, type SeenEdit, type SeenPatch, valueAt } from './seen.ts';

const NOWHERE = { from: 0, to: 0 };

/**
 * The edit of `book` that does what an edit made apart means: to the same lines and rows, wherever they stand now.
 * Refused as a whole, with the reason, where something it changes is gone or is no longer as its author saw it.
 */
export function placeEdit(book: Book, { label, patches }: SeenEdit): Outcome<Edit> {
  const placed: Patch[] = [];
  let now = book;
  for (const seen of patches) {
    const found = placePatch(now, seen);
    if (!found.ok) return found;
    for (const patch of found.value) {
      const step = applyPatch(now, patch);
      if (!step.ok) return step;
      placed.push(patch);
      now = step.value.book;
    }
  }
  return succeed({ label, patches: placed });
}

function placePatch(book: Book, seen: SeenPatch): Outcome<readonly Patch[]> {
  const { patch } = seen;
  const changed = seen.saw.find((sight) => !isAsSeen(book, sight));
  if (changed) return otherwise(pathText(changed.at));
  switch (patch.kind) {
    case 'set':
    case 'remove':
      return succeed([patch]);
    case 'insert': {
      const index = behindFront(book, patch.at, seen.front);
      return index === undefined ? gone(pathText(patch.at), `${seen.front}`) : succeed([{ ...patch, index }]);
    }
    case 'move': {
      const list = patch.at.slice(0, -1);
      const to = behindFront(book, list, seen.front, patch.at.at(-1));
      return to === undefined ? gone(pathText(list), `${seen.front}`) : succeed([{ ...patch, to }]);
    }
    case 'cells':
      return placeCells(book, patch, seen);
    case 'splice':
      return placeSplice(book, patch, seen);
  }
}

/** The position behind the item that stood in front, not counting `without`; undefined if it is gone. */
function behindFront(
  book: Book,
  list: readonly (string | number)[],
  front: string | null | undefined,
  without?: string | number,
): number | undefined {
  if (front === null || front === undefined) return 0;
  const items = valueAt(book, list);
  const identity = identityIn(list.at(-1));
  if (!Array.isArray(items) || identity === undefined) return undefined;
  const names = items.map((item: Readonly<Record<string, string>>) => item[identity]);
  const at = names.filter((name) => name !== without).indexOf(front);
  return at < 0 ? undefined : at + 1;
}

function placeCells(
  book: Book,
  patch: Extract<Patch, { kind: 'cells' }>,
  { rows = [], stood }: SeenPatch,
): Outcome<readonly Patch[]> {
  const at = patch.at.slice(0, -2);
  const table = valueAt(book, at) as Table | undefined;
  const spans = table && spansOf(table, rows);
  if (!table || !spans) return gone(pathText(at), 'row');
  if (contentOf(table, spans, String(patch.at.at(-1))) !== stood) return otherwise(pathText(patch.at));
  let done = 0;
  return succeed(
    spans.map(({ from, to }) => {
      const values = patch.values.slice(done, done + to - from);
      done += to - from;
      return { ...patch, from, values };
    }),
  );
}

function placeSplice(
  book: Book,
  patch: Extract<Patch, { kind: 'splice' }>,
  { rows = [], behind = 0, stood }: SeenPatch,
): Outcome<readonly Patch[]> {
  const table = valueAt(book, patch.at) as Table | undefined;
  const spans = table && spansOf(table, rows);
  if (!table || !spans) return gone(pathText(patch.at), 'row');
  if (contentOf(table, spans) !== stood) return otherwise(pathText(patch.at));
  const ids = rowIdsOf(table);
  const front = behind === 0 ? -1 : rowWithId(ids, behind);
  if (patch.insert === 0) {
    // From the last to the first, so that none moves before its turn.
    const last = spans.toSorted((a, b) => b.from - a.from);
    return succeed(last.map(({ from, to }) => ({ ...patch, from, remove: to - from })));
  }
  if (front === undefined) return gone(pathText(patch.at), 'row');
  const isThere = (id: number): boolean => rowWithId(ids, id) !== undefined && !isAmong(rows, id);
  if (patch.ids?.some(({ first, count }) => isThere(first) || isThere(first + count - 1)))
    return otherwise(pathText(patch.at));
  if (patch.remove === 0) return succeed([{ ...patch, from: front + 1 }]);
  const [span, second] = spans;
  const together = span && !second && (idOfRow(ids, span.from - 1) ?? 0) === behind;
  return together ? succeed([{ ...patch, from: span.from }]) : otherwise(pathText(patch.at));
}

function isAmong(rows: readonly IdRun[], id: number): boolean {
  return rows.some(({ first, count }) => id >= first && id < first + count);
}

function otherwise(path: string): Outcome<never> {
  return fail(problem('edit-seen-otherwise', NOWHERE, { path }));
}

function gone(path: string, what: string): Outcome<never> {
  return fail(problem('edit-neighbour-gone', NOWHERE, { path, what }));
}
