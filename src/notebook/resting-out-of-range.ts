import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import { rangeWarnings } from './column-warnings.ts';
import { lineRangeProblems } from './line-ranges.ts';
import { rangeWarning } from './load-column.ts';
import type { FormulaItem, Item, Model } from './model.ts';
import type { Standings } from './problem-list.ts';
import { type Marks, marksFrom } from './resting-on.ts';
import type { OutOfRangeRemark } from './result.ts';

/**
 * Which lines and columns rest on values beyond their permitted ranges. Whether a value is beyond its range is looked at
 * again where it changed; the way from these values through all that is computed from them is gone once, and kept until
 * other values lie beyond their ranges or the book is understood anew.
 */
export interface RestingOutOfRange {
  /**
   * The lines and columns beyond their ranges among some and all that these are computed from, by id, in the order of the
   * book. A formula counts with all its branches; what a stated value stands in place of does not.
   */
  readonly under: (ids: Iterable<string>, model: Model, standings: Standings) => readonly string[];
  /** Says that the values of these lines and columns may have changed. */
  readonly forget: (changed: { readonly has: (id: string) => boolean }) => void;
  readonly forgetAll: () => void;
}

/** One that has looked at nothing yet. */
export function createRestingOutOfRange(): RestingOutOfRange {
  const judged = new Map<string, { readonly item: Item; readonly isBeyond: boolean }>();
  let known: { readonly model: Model; readonly ranged: readonly string[] } | undefined;
  let marked: { readonly beyond: readonly string[]; readonly marks: Marks } | undefined;

  const isBeyond = (id: string, model: Model, standings: Standings): boolean => {
    const item = model.items.get(id);
    if (!item) return false;
    const before = judged.get(id);
    if (before?.item === item) return before.isBeyond;
    const found = { item, isBeyond: rangeProblems(item, model, standings).some(isOutOfRange) };
    judged.set(id, found);
    return found.isBeyond;
  };

  const marksOf = (model: Model, standings: Standings): Marks => {
    if (known?.model !== model) {
      known = { model, ranged: [...model.items.values()].filter(hasRange).map(({ id }) => id) };
      marked = undefined;
    }
    const beyond = known.ranged.filter((id) => isBeyond(id, model, standings));
    if (!marked || !sameIds(marked.beyond, beyond)) marked = { beyond, marks: marksFrom(beyond, model) };
    return marked.marks;
  };

  return {
    under: (ids, model, standings) => {
      const marks = marksOf(model, standings);
      if (marks.size === 0) return [];
      const found = new Set<string>();
      for (const id of ids) for (const source of marks.get(id) ?? []) found.add(source);
      return (marked?.beyond ?? []).filter((id) => found.has(id));
    },
    forget: (changed) => {
      for (const id of judged.keys()) if (changed.has(id)) judged.delete(id);
    },
    forgetAll: () => {
      judged.clear();
      known = undefined;
    },
  };
}

/** The remark of a check that rests on values beyond their ranges; undefined where there are none. */
export function outOfRangeRemark(
  { id, sheet }: Pick<FormulaItem, 'id' | 'sheet'>,
  on: readonly string[],
): OutOfRangeRemark | undefined {
  if (on.length === 0) return undefined;
  const facts = { on: [...on], sheet };
  return { ...inCell(problem('rests-out-of-range', { from: 0, to: 0 }, facts), id), data: facts };
}

function hasRange(item: Item): boolean {
  const own = item.kind === 'input' || item.kind === 'formula' ? item.row : item.column;
  return (
    ('range' in own && own.range !== undefined) ||
    ('link' in own && own.link?.kind === 'given' && own.link.range !== undefined)
  );
}

/** What the permitted range of a line or column says of its values. */
function rangeProblems(item: Item, model: Model, { result, column }: Standings): readonly Problem[] {
  if (item.kind === 'input') return item.problems;
  if (item.kind === 'formula') return lineRangeProblems(item, result(item.id), model);
  const read = column(item.id);
  if (read.status !== 'ok') return [];
  const { values } = read.reading;
  if (item.kind === 'formula column') return rangeWarnings(item, values, model.registry);
  return [rangeWarning(item, values, model.registry)].filter((found) => found !== undefined);
}

function isOutOfRange({ code }: Problem): boolean {
  return code === 'out-of-range' || code === 'column-out-of-range';
}

function sameIds(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((id, at) => id === b[at]);
}
