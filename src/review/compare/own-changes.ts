import type { Cause, Difference, Subject } from './difference.ts';

/** What a person changed of one line, column or table that values may rest on. */
export interface OwnChange {
  readonly by: ReadonlySet<string>;
  /** How many of its cells, and the name of the row where it is one. */
  readonly cells: number;
  readonly rowName?: string;
}

/** By the id in the new book. */
export type OwnChanges = ReadonlyMap<string, OwnChange>;

/** Words about a line: no value rests on them. */
const WORDS: ReadonlySet<string> = new Set([
  'label',
  'reference',
  'note',
  'name',
  'title',
  'toLink',
  'reason',
  'reasonFor',
]);

/** Fields that decide how a line is computed, and so from what. */
const COMPUTING: ReadonlySet<string> = new Set([
  'kind',
  'formula',
  'applies',
  'by',
  'method',
  'for',
  'order of methods',
  'stated.entry',
  'stated.demand.entry',
  'stated.capacity.entry',
]);

/** Gathers what was changed of each line, column and table; `idAfter` gives the new id of what is in both books. */
export function ownChanges(edits: readonly Difference[], idAfter: ReadonlyMap<string, string>): OwnChanges {
  const found = new Map<string, OwnChange>();
  for (const edit of edits) {
    const change = changeOf(edit);
    if (!change || !('subject' in edit)) continue;
    const { before, after } = edit.subject;
    const id = after?.id ?? (before && idAfter.get(before.id));
    if (id === undefined) continue;
    const known = found.get(id);
    found.set(id, known ? joined(known, change) : change);
  }
  return found;
}

/** Whether what was changed decides how the line is computed. */
export function isRecomputed({ by }: OwnChange): boolean {
  return [...by].some((field) => COMPUTING.has(field));
}

/**
 * What was changed as a cause; undefined where no value rests on it. `hasValues`: the line has a value in both books, which
 * the unit it is shown in and its permitted range do not change.
 */
export function causeOf(
  subject: Subject,
  { by, cells, rowName }: OwnChange,
  hasValues: boolean,
): Cause | undefined {
  const counted = [...by].filter((field) => !hasValues || !/^(unit|range\..*)$/.test(field));
  if (counted.length === 0) return undefined;
  return {
    subject,
    by: counted,
    ...(cells > 0 && { cells }),
    ...(cells === 1 && rowName !== undefined && { rowName }),
  };
}

function changeOf(edit: Difference): OwnChange | undefined {
  if (edit.kind !== 'cell' && edit.kind !== 'field') {
    const isRow = 'subject' in edit && edit.subject.kind === 'row';
    return isRow ? { by: new Set(['rows']), cells: 0 } : undefined;
  }
  const { subject } = edit;
  if (edit.kind === 'field' && (edit.only === 'writing' || isWords(edit.field))) return undefined;
  if (subject.kind === 'cell') {
    const rowName = subject.after?.rowName;
    return { by: new Set(['cells']), cells: 1, ...(rowName !== undefined && { rowName }) };
  }
  const isComputed = edit.kind === 'field' && (subject.kind === 'line' || subject.kind === 'column');
  return isComputed ? { by: new Set([edit.field]), cells: 0 } : undefined;
}

const isWords = (field: string): boolean => WORDS.has(field.split('.').at(-1) ?? field);

function joined(a: OwnChange, b: OwnChange): OwnChange {
  return { ...a, by: new Set([...a.by, ...b.by]), cells: a.cells + b.cells };
}
