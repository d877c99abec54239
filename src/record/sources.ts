import {
  type FormulaColumnItem,
  type FormulaItem,
  type Item,
  type MethodItem,
  methodInForce,
  methodsUsed,
  type Notebook,
  referencesOfItem,
  statedIn,
} from '../notebook/index.ts';

/**
 * What a reference is. A work is cited where nothing says otherwise; what names no work is the working itself, or, beside
 * an entry, the words of whoever entered it. A stated value rests on its reason, not on the formula it stands in place of.
 */
export type SourceKind = (typeof SOURCE_KINDS)[number];

/** The kinds of references, the weakest first. */
export const SOURCE_KINDS = [
  'no reference',
  'to be linked',
  'from memory',
  'maker’s data wanted',
  'common practice',
  'stated',
  'no work cited',
  'own working',
  'cited',
] as const;

/** What each kind of reference asks of the person who relies on it. */
export const SOURCE_ADVICE: Readonly<Record<SourceKind, string>> = {
  'no reference': 'Nothing says where these come from.',
  'from memory': 'Written down from memory: look them up before the result is relied on.',
  'maker’s data wanted': 'Example figures until the maker’s own are here.',
  'common practice': 'Usual in the trade; no work is cited.',
  'to be linked': 'Values that came with copied sheets, and what they stood for there.',
  stated: 'Values stated in place of what formulas come to, by the reason given.',
  'no work cited': 'Words of whoever entered these: a drawing, a survey, a decision, a constant.',
  'own working': 'Follows from other lines by arithmetic, geometry or statics.',
  cited: 'The work cited was read for the template, or is cited by whoever wrote the line.',
};

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

type Computed = FormulaItem | FormulaColumnItem;

/** All references of a book, those that most results rest on first within each kind. */
export function sourcesOf(notebook: Notebook): readonly Source[] {
  const { items } = notebook.model;
  const found = new Map<string, Omit<Source, 'results' | 'lines'> & { readonly lines: string[] }>();
  const users = new Map<string, string[]>();
  for (const item of items.values()) {
    for (const { reference, kind } of sourcesOfItem(notebook, item)) {
      const key = `${kind}: ${reference}`;
      const source = found.get(key) ?? { reference, kind, lines: [] };
      found.set(key, source);
      source.lines.push(item.id);
    }
    if (!isComputed(item)) continue;
    for (const from of usedBy(notebook, item)) {
      const known = users.get(from);
      if (known) known.push(item.id);
      else users.set(from, [item.id]);
    }
  }
  const sources = [...found.values()].map((source): Source => {
    const results = resting(source.lines, users).filter((id) => isComputed(items.get(id))).length;
    return { ...source, results };
  });
  return sources.sort((a, b) => b.results - a.results || b.lines.length - a.lines.length);
}

type Kinded = Pick<Source, 'reference' | 'kind'>;

/** What a line rests on itself: nothing where it is linked, the reason where it is stated. */
function sourcesOfItem(notebook: Notebook, item: Item): readonly Kinded[] {
  if (!isComputed(item)) {
    const { reference, toLink } = item.kind === 'input' ? item.row : item.column;
    if (toLink !== undefined) return [{ reference: toLink, kind: 'to be linked' }];
    return [kinded(reference, 'no work cited')];
  }
  if (item.kind === 'formula' && 'link' in item.row && item.row.link) return [];
  const stated = statedIn(notebook, item).map(
    ({ statement }): Kinded => ({ reference: statement.reason.trim(), kind: 'stated' }),
  );
  const own = isStated(item)
    ? []
    : referencesInForce(notebook, item).map((one) => kinded(one, 'own working'));
  return distinct([...own, ...stated]);
}

function kinded(reference = '', otherwise: SourceKind): Kinded {
  const written = reference.trim();
  const found = words.find(([pattern]) => pattern.test(written));
  return { reference: written, kind: written === '' ? 'no reference' : (found?.[1] ?? otherwise) };
}

/** What a reference says of itself that keeps it from being relied on unseen; undefined for what cites a work, or nothing. */
export function saysOfItself(reference: string): SourceKind | undefined {
  const kind = words.find(([pattern]) => pattern.test(reference))?.[1];
  return kind === 'cited' ? undefined : kind;
}

function distinct(all: readonly Kinded[]): readonly Kinded[] {
  return [...new Map(all.map((one) => [`${one.kind}: ${one.reference}`, one])).values()];
}

/** The references of the formulas that are used; a method without one has that of its line. */
function referencesInForce(notebook: Notebook, item: Computed): readonly string[] {
  const own = (item.kind === 'formula' ? item.row : item.column).reference ?? '';
  return item.methods ? methodsOf(notebook, item).map(({ method }) => method.reference ?? own) : [own];
}

/** What a line is computed from: by the methods in force and what chooses them; from nothing where it is stated. */
function usedBy(notebook: Notebook, item: Computed): ReadonlySet<string> {
  if (isStated(item)) return new Set();
  if (!item.methods) return referencesOfItem(item);
  const { byId } = item.methods;
  const formulas = methodsOf(notebook, item).flatMap(({ checked }) => [...checked.references]);
  return new Set([...formulas, ...(byId === undefined ? [] : [byId])]);
}

function methodsOf(notebook: Notebook, item: Computed): readonly MethodItem[] {
  if (item.kind === 'formula column') return methodsUsed(notebook, item).map(({ item: method }) => method);
  const used = methodInForce(notebook, item.id);
  return used ? [used] : [];
}

function isStated(item: Computed): boolean {
  return item.kind === 'formula' && item.stated !== undefined;
}

/** The lines themselves and all that is computed from them. */
function resting(lines: readonly string[], users: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const reached = new Set(lines);
  for (const id of reached) for (const user of users.get(id) ?? []) reached.add(user);
  return [...reached];
}

function isComputed(item: Item | undefined): item is Computed {
  return item?.kind === 'formula' || item?.kind === 'formula column';
}
