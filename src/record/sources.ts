import { type Item, methodInForce, methodsUsed, type Notebook, referencesOfItem } from '../notebook/index.ts';

/**
 * What a reference is. A work is cited where nothing says otherwise; what names no work is the working itself, or, beside
 * an entry, of the project at hand.
 */
export type SourceKind = (typeof SOURCE_KINDS)[number];

/** The kinds of references, the weakest first. */
export const SOURCE_KINDS = [
  'no reference',
  'from memory',
  'maker’s data wanted',
  'common practice',
  'of this project',
  'own working',
  'cited',
] as const;

/** One reference of a book, and how much rests on it. */
export interface Source {
  readonly reference: string;
  readonly kind: SourceKind;
  /** The lines and columns that have it, by id, in the order of the book. */
  readonly lines: readonly string[];
  /** How many calculated lines, columns and checks have it or are computed from what has it. */
  readonly results: number;
}

/** How references say of themselves what they are; the first that fits counts, so the weakest kind comes first. */
const words: readonly (readonly [RegExp, SourceKind])[] = [
  [/\b(from memory|doubtful)\b/i, 'from memory'],
  [
    /\b(maker|manufacturer|certificate|data sheet|placeholder|example value|chart of the)/i,
    'maker’s data wanted',
  ],
  [/\bcommon practice\b/i, 'common practice'],
  // A year, or the letters and number that a standard goes by.
  [/\b(1[89]|20)\d\d\b|\b[A-Z]{2,}[A-Z-]*\s?\d|\b[A-Z]{3,}\b|\bch(apter)?\. ?\d|\bexam|published/, 'cited'],
];

/** All references of a book, those that most results rest on first within each kind. */
export function sourcesOf(notebook: Notebook): readonly Source[] {
  const { items } = notebook.model;
  const holders = new Map<string, { readonly lines: string[]; inputs: number }>();
  const users = new Map<string, string[]>();
  for (const item of items.values()) {
    for (const reference of referencesIn(notebook, item)) {
      const held = holders.get(reference) ?? { lines: [], inputs: 0 };
      holders.set(reference, held);
      held.lines.push(item.id);
      if (!isFormula(item)) held.inputs += 1;
    }
    if (!isFormula(item)) continue;
    // What chooses the method counts too.
    const chosenBy = item.methods?.byId;
    for (const from of new Set([...referencesOfItem(item), ...(chosenBy === undefined ? [] : [chosenBy])])) {
      const known = users.get(from);
      if (known) known.push(item.id);
      else users.set(from, [item.id]);
    }
  }
  const sources = [...holders].map(
    ([reference, { lines, inputs }]): Source => ({
      reference,
      kind: kindOf(reference, inputs > 0),
      lines,
      results: resting(lines, users).filter((id) => isFormula(items.get(id))).length,
    }),
  );
  return sources.sort((a, b) => b.results - a.results || b.lines.length - a.lines.length);
}

/** What a reference is, as it says of itself. */
function kindOf(reference: string, onEntry: boolean): SourceKind {
  if (reference === '') return 'no reference';
  const found = words.find(([pattern]) => pattern.test(reference));
  return found?.[1] ?? (onEntry ? 'of this project' : 'own working');
}

/** The references of a line: of one with methods, of those in force; a method without one has that of its line. */
function referencesIn(notebook: Notebook, item: Item): readonly string[] {
  const own = (item.kind === 'input' || item.kind === 'formula' ? item.row : item.column).reference ?? '';
  if (!isFormula(item) || !item.methods) return [own.trim()];
  const used =
    item.kind === 'formula'
      ? [methodInForce(notebook, item.id)]
      : methodsUsed(notebook, item).map(({ item: method }) => method);
  return [...new Set(used.map((one) => (one?.method.reference ?? own).trim()))];
}

/** The lines themselves and all that is computed from them. */
function resting(lines: readonly string[], users: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const reached = new Set(lines);
  for (const id of reached) for (const user of users.get(id) ?? []) reached.add(user);
  return [...reached];
}

function isFormula(item: Item | undefined): item is Extract<Item, { kind: 'formula' | 'formula column' }> {
  return item?.kind === 'formula' || item?.kind === 'formula column';
}
