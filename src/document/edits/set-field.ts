import * as z from 'zod/mini';
import { fail, type Outcome, problem } from '../../diagnostics/index.ts';
import { type Path, pathText } from '../json/path.ts';
import { type Book, bookSchema } from '../schema/book.ts';
import { schemaProblems } from '../schema/problems.ts';
import { isOptional, type Schema, schemaBelow } from '../schema/walk.ts';
import type { Patch } from './patch.ts';
import { type Change, changeAt, identityIn, missing, positionIn } from './places.ts';
import type { Step } from './step.ts';

type SetPatch = Extract<Patch, { kind: 'set' }>;

/** Applies a `set` patch: the new value passes the schema of its place; ids, kinds and the version stay. */
export function setField(book: Book, patch: SetPatch): Outcome<Step> {
  const { at } = patch;
  const step = at[at.length - 1];
  if (step === undefined || isFixed(at)) return fixed(at);
  let inverse: Patch = patch;
  const changed = changeAt(book, bookSchema, at, at.length - 1, (parent, schema) => {
    const below = schemaBelow(schema, parent, step);
    if (below === undefined || typeof parent !== 'object' || parent === null) return missing(at);
    const refused = valueRefused(patch, below);
    if (refused !== undefined) return refused;
    if (Array.isArray(parent)) {
      const position = positionIn(parent, at[at.length - 2], step);
      if (position < 0) return missing(at);
      inverse = { kind: 'set', at, value: parent[position] };
      return replaced(parent, position, patch);
    }
    const fields = parent as Readonly<Record<string, never>>;
    const backAt = step === 'key' && typeof patch.value === 'string' ? sheetCalled(at, patch.value) : at;
    const old = fields[step];
    inverse = old === undefined ? { kind: 'set', at: backAt } : { kind: 'set', at: backAt, value: old };
    return {
      ok: true,
      value: patch.value === undefined ? without(step, fields) : { ...fields, [step]: patch.value },
    };
  });
  return changed.ok ? { ok: true, value: { book: changed.value as Book, inverse } } : changed;
}

function without(step: string | number, fields: Readonly<Record<string, never>>): unknown {
  const { [step]: _, ...others } = fields;
  return others;
}

function valueRefused(patch: SetPatch, schema: Schema): Change | undefined {
  const { at, value } = patch;
  if (value === undefined) {
    if (isOptional(schema)) return undefined;
    const facts = { path: pathText(at.slice(0, -1)), field: String(at[at.length - 1]) };
    return fail(problem('book-field-missing', { from: 0, to: 0 }, facts));
  }
  const checked = z.safeParse(schema, value);
  return checked.success
    ? undefined
    : { ok: false, problems: schemaProblems(checked.error, schema, value, at) };
}

/** A list with one item replaced as a whole, by one with the same id or key. */
function replaced(list: readonly unknown[], position: number, patch: SetPatch): Change {
  const { at, value } = patch;
  const identity = identityIn(at[at.length - 2]);
  const item = value as Readonly<Record<string, unknown>>;
  if (identity !== undefined && item[identity] !== at[at.length - 1]) return fixed([...at, identity]);
  const next = list.slice();
  next[position] = value;
  return { ok: true, value: next };
}

/** Whether a path leads to the id or kind of a part (five steps), row or column (seven), method (nine), or to the book's version. */
function isFixed(at: Path): boolean {
  if (at[0] !== 'sheets') return at[0] === 'format' || at[0] === 'version';
  const field = at[at.length - 1];
  return (at.length === 5 || at.length === 7 || at.length === 9) && (field === 'id' || field === 'kind');
}

function fixed(at: Path): Outcome<never> {
  return fail(problem('edit-field-fixed', { from: 0, to: 0 }, { path: pathText(at) }));
}

function sheetCalled(at: Path, key: string): Path {
  return [...at.slice(0, -2), key, ...at.slice(-1)];
}
