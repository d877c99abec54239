import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import type { ColumnReading } from '../engine/index.ts';
import { blankPoints, isToldByPoint } from './blank-points.ts';
import { failuresOf } from './check-methods.ts';
import { columnWarnings, rangeWarnings } from './column-warnings.ts';
import { isToldByKey, keyPoints } from './key-points.ts';
import { lineRangeProblems } from './line-ranges.ts';
import type { FormulaColumnItem, InputColumnItem, Item, Model } from './model.ts';
import { ownProblems } from './own-problems.ts';
import { standing } from './read-result.ts';
import type { ColumnResult, Result } from './result.ts';
import type { Side } from './stated.ts';
import { createUnreadEntries } from './unread-entries.ts';

/** How lines and columns stand at the moment. */
export interface Standings {
  readonly result: (id: string) => Result;
  /** What a stated line or side of a check would come to; undefined where nothing is stated. */
  readonly computed: (id: string, side?: Side) => Result | undefined;
  /** What the formula of a column with stated cells comes to; undefined where none is stated. */
  readonly computedColumn: (id: string) => ColumnResult | undefined;
  readonly column: (id: string) => ColumnResult;
}

/** The problems of a book, kept line by line, so that after an edit only what it has changed is explained anew. */
export interface ProblemList {
  /** Everything wrong with the book, in its order: every problem once, then what waits. Warnings too. */
  readonly of: (model: Model, standings: Standings) => readonly Problem[];
  /** Says that these lines and columns, or the reasons they have no value, may have changed. */
  readonly forget: (changed: Iterable<string>) => void;
  /**
   * Says that the book is understood anew: what waits for another line to be mended may wait no longer, and columns may be
   * described in other words.
   */
  readonly forgetWaiting: () => void;
  readonly forgetAll: () => void;
}

interface Found {
  readonly problems: readonly Problem[];
  /** Why it, or rows of it, wait for blank cells of tables, or for keys that are entered. */
  readonly blanks: readonly Problem[];
}

interface Kept extends Found {
  readonly item: Item;
  /** Whether something stood in the way before any computing. */
  readonly stopped: boolean;
}

/** A list that knows nothing yet. */
export function createProblemList(): ProblemList {
  const kept = new Map<string, Kept>();
  const unread = createUnreadEntries();
  // Several parts of a screen ask for the problems of one state.
  let all: readonly Problem[] | undefined;

  const ofItem = (item: Item, model: Model, standings: Standings): Found => {
    const before = kept.get(item.id);
    if (before?.item === item) return before;
    const found = { ...foundOf(item, model, standings), item, stopped: standing(item, model) !== undefined };
    kept.set(item.id, found);
    return found;
  };

  return {
    of: (model, standings) => {
      if (!all) {
        const found = allOf(model, (item) => ofItem(item, model, standings));
        const entries = unread.of({ model, ...standings });
        // A blank choice is the cause of what fails for want of what it asks for.
        const isCause = ({ data }: Problem): boolean => data.blank === true;
        const rest = entries.filter((one) => !isCause(one));
        all = [...model.problems, ...entries.filter(isCause), ...found, ...rest];
      }
      return all;
    },
    forget: (changed) => {
      all = undefined;
      // Where nothing is kept, nobody needs to know what has changed.
      if (kept.size > 0) for (const id of changed) kept.delete(id);
    },
    forgetWaiting: () => {
      all = undefined;
      for (const [id, { stopped, problems }] of kept)
        if (stopped || problems.some(tellsDescription)) kept.delete(id);
    },
    forgetAll: () => {
      all = undefined;
      kept.clear();
    },
  };
}

/** Whether the words of a problem, or those it passes on, hold how a column is described. */
function tellsDescription({ code, data }: Problem): boolean {
  return code === 'no-row-meets' || data.uncovered === true;
}

/** All problems of lines and columns in the order of the book, with what is blank where it is blank. */
function allOf(model: Model, foundOfItem: (item: Item) => Found): readonly Problem[] {
  const found = [...model.items.values()].map(foundOfItem);
  const blanks = found.flatMap((one) => one.blanks);
  const points = blanks.length === 0 ? [] : [...keyPoints(blanks, model), ...blankPoints(blanks, model)];
  if (points.length === 0) return found.flatMap(({ problems }) => problems);
  return [...model.items.keys()].flatMap((id, at) => [
    ...points.filter(({ cell }) => cell === id),
    ...(found[at]?.problems ?? []),
  ]);
}

function foundOf(item: Item, model: Model, standings: Standings): Found {
  const { result, column } = standings;
  const ofLine = ownProblems(item, standings).map((found) => inCell(found, item.id));
  const own = [...ofLine, ...aboutMethods(item, ofLine).map((found) => inCell(found, item.id))];
  if (ofLine.some((found) => found.severity === 'error')) return { problems: own, blanks: [] };
  if (item.kind === 'input' || item.kind === 'formula') {
    const read = result(item.id);
    if (read.status !== 'problem' && read.status !== 'waiting')
      return { problems: [...own, ...lineRangeProblems(item, read, model)], blanks: [] };
    return { problems: [...own, read.problem], blanks: [read.problem] };
  }
  const read = column(item.id);
  if (read.status !== 'ok') return { problems: [...own, read.problem], blanks: [read.problem] };
  const warnings =
    item.kind === 'input column'
      ? columnWarnings(item, read.reading.values, model.registry)
      : rangeWarnings(item, read.reading.values, model.registry);
  const rows = rowProblems(item, read.reading, model);
  const problems = [...own, ...warnings.map((found) => inCell(found, item.id)), ...rows.problems];
  return { problems, blanks: rows.blanks };
}

/** What is to be said of the methods of a line, but what is said of it already: of the one in force, by its formula. */
function aboutMethods(item: Item, told: readonly Problem[]): readonly Problem[] {
  if (!('methods' in item) || !item.methods) return [];
  const { list, chosen, remarks } = item.methods;
  const known = new Set(told.map(({ message }) => message));
  const others = list.flatMap((one, index) => (index === chosen ? [] : failuresOf(one)));
  return [...remarks, ...others].filter(({ message }) => !known.has(message));
}

/** The first rows of a column that have a problem, and why rows wait for blank cells. */
function rowProblems(item: InputColumnItem | FormulaColumnItem, reading: ColumnReading, model: Model): Found {
  const problems: Problem[] = [];
  const blanks: Problem[] = [];
  if (reading.gaps === 0) return { problems, blanks };
  let looked = 0;
  for (let row = 0; row < reading.length && problems.length < listed && looked < explained; row += 1) {
    if (!Number.isNaN(reading.values[row])) continue;
    looked += 1;
    const because = reading.problemAt(row);
    if (!because) continue;
    if (blanks.length < listed) blanks.push(because);
    // Told once where it is blank, or where its key is entered, not by every column that needs it.
    if (isToldByPoint(because, model) || isToldByKey(because, model)) continue;
    const message = because.message;
    const told = problem('row-fails', { from: 0, to: 0 }, { row: row + 1, message });
    problems.push(inCell({ ...told, hints: because.hints }, item.id));
  }
  return { problems, blanks };
}

/** So many rows of one column are listed; the column itself shows all. */
const listed = 5;

/** So many rows without a value are asked for their reason: most of a long blank column have the same. */
const explained = 100;
