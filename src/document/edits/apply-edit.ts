import type { Outcome, Problem } from '../../diagnostics/index.ts';
import { bookProblems, identityProblems, RULED_FIELDS, sheetProblems } from '../rules/book-rules.ts';
import type { Book } from '../schema/book.ts';
import { overwrite, spliceRows } from './change-cells.ts';
import { insertItem, moveItem, removeItem } from './change-list.ts';
import type { Edit, Patch } from './patch.ts';
import { setField } from './set-field.ts';
import type { Step } from './step.ts';
import { type Touched, touchedBy } from './touched.ts';

/** A book after an edit, the edit that takes it back, and what was touched (the same thing may be told twice). */
export interface Applied {
  readonly book: Book;
  readonly inverse: Edit;
  readonly touched: readonly Touched[];
}

type Appliers = {
  readonly [Kind in Patch['kind']]: (book: Book, patch: Extract<Patch, { kind: Kind }>) => Outcome<Step>;
};

const APPLIERS: Appliers = {
  set: setField,
  insert: insertItem,
  remove: removeItem,
  move: moveItem,
  cells: overwrite,
  splice: spliceRows,
};

/**
 * Applies an edit to a book: the book after it, its inverse, and what it touched. The result shares with `book` all
 * that did not change. New values pass the schema of their place; the rules between parts are looked at once, after
 * the last patch, and only where the edit could break them. A refused edit changes nothing.
 */
export function applyEdit(book: Book, edit: Edit): Outcome<Applied> {
  let after = book;
  const inverses: Patch[] = [];
  const touched: Touched[] = [];
  for (const patch of edit.patches) {
    const step = applyPatch(after, patch);
    if (!step.ok) return step;
    after = step.value.book;
    inverses.push(step.value.inverse);
    touched.push(...touchedBy(patch));
  }
  const problems = brokenRules(after, edit.patches.filter(isRuled));
  if (problems.length > 0) return { ok: false, problems };
  const inverse = { label: edit.label, patches: inverses.reverse() };
  return { ok: true, value: { book: after, inverse, touched } };
}

/** Applies one patch; the rules between the parts of the book are for the whole edit. */
export function applyPatch(book: Book, patch: Patch): Outcome<Step> {
  const apply: (book: Book, patch: never) => Outcome<Step> = APPLIERS[patch.kind];
  return apply(book, patch as never);
}

/** Whether a patch could break a rule between the parts of a book. */
function isRuled({ kind, at }: Patch): boolean {
  if (at[0] === 'origins') return true;
  if (at[0] !== 'sheets' || kind === 'cells' || kind === 'splice') return false;
  return kind !== 'set' || RULED_FIELDS.has(String(at.at(-1))) || RULED_FIELDS.has(String(at.at(-2)));
}

function brokenRules(book: Book, patches: readonly Patch[]): readonly Problem[] {
  if (patches.length === 0) return [];
  const indices = new Set(patches.map(({ at }) => book.sheets.findIndex(({ key }) => key === at[1])));
  const sheetsChanged = patches.some(({ at }) => at.length <= 2 || at[2] === 'key' || at[0] === 'origins');
  if (sheetsChanged || indices.has(-1)) return bookProblems(book);
  return [...identityProblems(book), ...[...indices].flatMap((index) => sheetProblems(book, index))];
}
