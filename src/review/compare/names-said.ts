import type { Book } from '../../document/index.ts';
import { parseFormula, printSyntax, renameInFormula } from '../../language/index.ts';
import { type Names, namesOf, resolveName } from '../../notebook/index.ts';
import type { Matching } from './match-books.ts';

/** Where a formula or a name stands, in either book: its sheet, and of a column formula its table (`sheet.table`). */
export interface SaidAt {
  readonly before: SaidIn;
  readonly after: SaidIn;
}
interface SaidIn {
  readonly sheet: string;
  readonly table?: string;
}

/** What is to be said of two formulas or names: nothing, how they are written, what their names stand for, or all. */
export type Said = 'same' | 'writing' | 'names' | 'other';

/** Tells whether what is said in two books with names is the same, where names may have become others. */
export interface NamesSaid {
  readonly formulas: (before: string, after: string, at: SaidAt) => Said;
  readonly names: (before: string, after: string, at: SaidAt) => Said;
}

/** Names stand for what the books have; two say the same where they stand for the same line, column or table of both. */
export function namesSaid(before: Book, after: Book, matching: Matching): NamesSaid {
  const known = { before: namesOf(before), after: namesOf(after) };
  const words = wordsTouched(known.before, known.after, matching);
  const label = labels(known.before, known.after, matching);

  const formulas = (a: string, b: string, at: SaidAt): Said => {
    if (a === b && isUntouched(a, at, words)) return 'same';
    const [old, next] = [
      renameInFormula(a, (name) => label.before(name, at)),
      renameInFormula(b, (name) => label.after(name, at)),
    ];
    if (old === next) return 'same';
    const [x, y] = [parseFormula(old), parseFormula(next)];
    const isWhole = x.problems.length === 0 && y.problems.length === 0;
    if (isWhole && printSyntax(x.syntax) === printSyntax(y.syntax)) return 'writing';
    return a === b ? 'names' : 'other';
  };
  return {
    formulas,
    names: (a, b, at) => {
      if (label.before(a, at) === label.after(b, at)) return 'same';
      return a === b ? 'names' : 'other';
    },
  };
}

/** What a name is written as for comparing: the new id of what it stands for; what no book knows stays as it is. */
function labels(before: Names, after: Names, { idAfter, idBefore }: Matching) {
  const gone = (id: string): string => `gone.${id}`;
  return {
    before: (name: string, at: SaidAt): string => {
      const found = resolveName(name, before, at.before.sheet, at.before.table);
      if (found) return idAfter.get(found.id) ?? gone(found.id);
      const added = resolveName(name, after, at.after.sheet, at.after.table);
      return added && !idBefore.has(added.id) ? added.id : name;
    },
    after: (name: string, at: SaidAt): string => {
      const found = resolveName(name, after, at.after.sheet, at.after.table);
      if (found) return found.id;
      const removed = resolveName(name, before, at.before.sheet, at.before.table);
      return removed && !idAfter.has(removed.id) ? gone(removed.id) : name;
    },
  };
}

const WORD = /[\p{L}][\p{L}\p{Nd}_']*/gu;

/** The words by which names were written that stand for something else than before, or are written in another way now. */
function wordsTouched(before: Names, after: Names, { idAfter, idBefore }: Matching): ReadonlySet<string> {
  const touched = new Set<string>();
  const touch = (id: string): void => {
    for (const word of id.split('.')) touched.add(word);
  };
  for (const id of before.keys()) {
    const next = idAfter.get(id);
    if (next === id || (next === undefined && !after.has(id))) continue;
    touch(id);
    if (next !== undefined) touch(next);
  }
  for (const id of after.keys()) if (!idBefore.has(id) && before.has(id)) touch(id);
  return touched;
}

/** Whether a text that stands in both books alike says the same in both without a look at its names. */
function isUntouched(text: string, { before, after }: SaidAt, words: ReadonlySet<string>): boolean {
  if (before.sheet !== after.sheet || before.table !== after.table) return false;
  return words.size === 0 || !(text.match(WORD) ?? []).some((word) => words.has(word));
}
