import * as z from 'zod/mini';
import { fail, type Outcome, problem } from '../../diagnostics/index.ts';
import { type Path, pathText } from '../json/path.ts';
import { type Book, bookSchema } from '../schema/book.ts';
import { schemaProblems } from '../schema/problems.ts';
import { listBelow, type Schema } from '../schema/walk.ts';
import type { Patch } from './patch.ts';
import { type Change, changeAt, identityIn, missing, positionIn } from './places.ts';
import type { Step } from './step.ts';

const NOWHERE = { from: 0, to: 0 };

/** Applies an `insert` patch: the item passes the schema of the list, and the list has room for it. */
export function insertItem(book: Book, patch: Extract<Patch, { kind: 'insert' }>): Outcome<Step> {
  const { at, index, value } = patch;
  const identity = identityIn(at[at.length - 1]);
  const changed = changeAt(book, bookSchema, at, at.length, (list, schema) => {
    const kept = listBelow(schema);
    if (kept === undefined || !Array.isArray(list)) return notList(at);
    if (!isPosition(index, list.length)) return outside(at, index, list.length);
    if (list.length >= kept.most) return tooLong(at, list.length + 1, kept.most);
    const checked = z.safeParse(kept.item, value);
    if (!checked.success) {
      return { ok: false, problems: schemaProblems(checked.error, kept.item, value, [...at, index]) };
    }
    return { ok: true, value: [...list.slice(0, index), value, ...list.slice(index)] };
  });
  if (!changed.ok) return changed;
  const name = identity === undefined ? index : (value as Readonly<Record<string, string>>)[identity];
  const inverse: Patch = { kind: 'remove', at: [...at, name ?? index] };
  return { ok: true, value: { book: changed.value as Book, inverse } };
}

/** Applies a `remove` patch. */
export function removeItem(book: Book, patch: Extract<Patch, { kind: 'remove' }>): Outcome<Step> {
  const { at } = patch;
  let inverse: Patch = patch;
  return listChanged(
    book,
    at,
    (list, position, schema) => {
      const least = listBelow(schema)?.least ?? 0;
      if (list.length <= least) {
        const path = pathText(at.slice(0, -1));
        const facts = { path, found: 'an empty list', expected: `a list of at least ${least}` };
        return fail(problem('book-value-wrong', NOWHERE, facts));
      }
      const value = list[position] as never;
      inverse = { kind: 'insert', at: at.slice(0, -1), index: position, value };
      return { ok: true, value: list.toSpliced(position, 1) };
    },
    () => inverse,
  );
}

/** Applies a `move` patch. */
export function moveItem(book: Book, patch: Extract<Patch, { kind: 'move' }>): Outcome<Step> {
  const { at, to } = patch;
  let inverse: Patch = patch;
  return listChanged(
    book,
    at,
    (list, position) => {
      if (!isPosition(to, list.length - 1)) return outside(at.slice(0, -1), to, list.length);
      const last = at[at.length - 1] ?? to;
      const name = typeof last === 'number' ? to : last;
      inverse = { kind: 'move', at: [...at.slice(0, -1), name], to: position };
      return { ok: true, value: list.toSpliced(position, 1).toSpliced(to, 0, list[position]) };
    },
    () => inverse,
  );
}

function listChanged(
  book: Book,
  at: Path,
  act: (list: readonly unknown[], position: number, schema: Schema) => Change,
  inverse: () => Patch,
): Outcome<Step> {
  const changed = changeAt(book, bookSchema, at, Math.max(0, at.length - 1), (list, schema) => {
    if (!Array.isArray(list)) return notList(at.slice(0, -1));
    const position = positionIn(list, at[at.length - 2], at[at.length - 1]);
    return position < 0 ? missing(at) : act(list, position, schema);
  });
  return changed.ok ? { ok: true, value: { book: changed.value as Book, inverse: inverse() } } : changed;
}

function isPosition(index: number, last: number): boolean {
  return Number.isInteger(index) && index >= 0 && index <= last;
}

function notList(at: Path): Outcome<never> {
  return fail(problem('edit-place-unfit', NOWHERE, { path: pathText(at), expected: 'a list' }));
}

function outside(at: Path, index: number, length: number): Outcome<never> {
  return fail(problem('edit-index-outside', NOWHERE, { path: pathText(at), index, length }));
}

function tooLong(at: Path, length: number, limit: number): Outcome<never> {
  return fail(problem('book-too-long', NOWHERE, { path: pathText(at), length, limit, of: 'item' }));
}
