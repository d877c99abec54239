import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import type { ColumnReading } from '../engine/index.ts';
import { columnWarnings } from './column-warnings.ts';

import type { FormulaColumnItem, InputColumnItem, Item, Model } from './model.ts';
import { ownProblems } from './own-problems.ts';
import { standing } from './read-result.ts';
import type { ColumnResult, Result } from './result.ts';
import type { Side } from './stated.ts';

/** How lines and columns stand at the moment. */
export interface Standings {
  readonly result: (id: string) => Result;
  /** What a stated line or side of a check would come to; undefined where nothing is stated. */
  readonly computed: (id: string, side?: Side) => Result | undefined;
  readonly column: (id: string) => ColumnResult;
}

/** The problems of a book, kept line by line, so that after an edit only what it has changed is explained anew. */
export interface ProblemList {
  /** Everything wrong with the book, in its order: every problem once, then what waits. Warnings too. */
  readonly of: (model: Model, standings: Standings) => readonly Problem[];
  /** Says that these lines and columns, or the reasons they have no value, may have changed. */
  readonly forget: (changed: Iterable<string>) => void;
  /** Says that the book is understood anew: what waits for another line to be mended may wait no longer. */
  readonly forgetWaiting: () => void;
  readonly forgetAll: () => void;
}

interface Kept {
  readonly item: Item;
  readonly problems: readonly Problem[];
  /** Whether something stood in the way before any computing. */
  readonly stopped: boolean;
}

/** A list that knows nothing yet. */
export function createProblemList(): ProblemList {
  const kept = new Map<string, Kept>();
  // Several parts of a screen ask for the problems of one state.
  let all: readonly Problem[] | undefined;

  const ofItem = (item: Item, model: Model, standings: Standings): readonly Problem[] => {
    const before = kept.get(item.id);
    if (before?.item === item) return before.problems;
    const problems = problemsOf(item, model, standings);
    kept.set(item.id, { item, problems, stopped: standing(item, model) !== undefined });
    return problems;
  };

  return {
    of: (model, standings) => {
      all ??= [
        ...model.problems,
        ...[...model.items.values()].flatMap((item) => ofItem(item, model, standings)),
      ];
      return all;
    },
    forget: (changed) => {
      all = undefined;
      for (const id of changed) kept.delete(id);
    },
    forgetWaiting: () => {
      all = undefined;
      for (const [id, { stopped }] of kept) if (stopped) kept.delete(id);
    },
    forgetAll: () => {
      all = undefined;
      kept.clear();
    },
  };
}

function problemsOf(item: Item, model: Model, { result, computed, column }: Standings): readonly Problem[] {
  const own = ownProblems(item, computed).map((found) => inCell(found, item.id));
  if (own.some((found) => found.severity === 'error')) return own;
  if (item.kind === 'input' || item.kind === 'formula') {
    const read = result(item.id);
    if (read.status === 'problem' || read.status === 'waiting') return [...own, read.problem];
    return own;
  }
  const read = column(item.id);
  if (read.status !== 'ok') return [...own, read.problem];
  const warnings =
    item.kind === 'input column' ? columnWarnings(item, read.reading.values, model.registry) : [];
  const rows = rowProblems(item, read.reading);
  return [...own, ...warnings.map((found) => inCell(found, item.id)), ...rows];
}

/** The first rows of a column that have a problem, and a blank where the column may not have one. */
function rowProblems(item: InputColumnItem | FormulaColumnItem, reading: ColumnReading): readonly Problem[] {
  if (reading.gaps === 0) return [];
  const found: Problem[] = [];
  for (let row = 0; row < reading.length && found.length < listed; row += 1) {
    if (!Number.isNaN(reading.values[row])) continue;
    const because = reading.problemAt(row);
    if (!because) continue;
    const message = because.message;
    const told = problem('row-fails', { from: 0, to: 0 }, { row: row + 1, message });
    found.push(inCell({ ...told, hints: because.hints }, item.id));
  }
  return found;
}

/** So many rows of one column are listed; the column itself shows all. */
const listed = 5;
