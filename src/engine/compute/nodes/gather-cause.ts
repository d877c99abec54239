import { problem } from '../../../diagnostics/index.ts';
import type { CallNode, GatherEvaluator } from '../../../language/index.ts';
import { failsAsWhole } from '../../store/cells.ts';
import { type Answers, answersOn } from '../answers.ts';
import { type Cause, type CauseFinder, firstCause, ownFault } from '../cause.ts';
import {
  type GatherPlan,
  gatheredSize,
  isTooMuch,
  MOST_GATHERED,
  MOST_WORK,
  planGather,
  workOf,
} from '../gather.ts';
import { failedTable, placeCursors } from '../space.ts';
import { type Sample, takeSample } from './gather-sample.ts';
import { referenceIn } from './references.ts';
import { refusalOf } from './refusal.ts';
import { unlistedKey } from './unlisted-key.ts';

/** What blaming a call gathers: the same for all rows of its formula, unless its columns change with the row. */
interface Gathering {
  readonly plan: GatherPlan;
  readonly look: () => Look;
}

/** What a look at the columns of a call shows. */
interface Look {
  /** The elements one by one, where not all of them have values. */
  readonly sample: Sample | undefined;
  readonly columns: readonly Float64Array[];
  /** What the function makes of these columns. */
  readonly answers: Answers;
  /** Which place it picks, where it picks an element of a column. */
  readonly places: Answers | undefined;
}

/** Why an aggregate, a lookup or an interpolation has no value. */
export function causeInGathered(node: CallNode, evaluate: GatherEvaluator, finder: CauseFinder): Cause {
  const { plan, look } = finder.once(node, () => gatheringOf(node, evaluate, finder));
  const each = plan.each.map((arg) => arg.node);
  const argument = firstCause(each, finder);
  if (argument) return argument;
  for (const part of plan.parts) {
    const table = failedTable(part.space);
    if (table) return { kind: 'table', table, node: part.node };
    const column = part.columns.find(failsAsWhole);
    if (column) return { kind: 'cell', cell: column, node: referenceIn(part.node, column.id) ?? part.node };
  }
  if (isTooMuch(plan)) return ownFault(problem('too-much-work', node, workFacts(node, plan, finder)));
  const values = plan.each.map(({ node: arg, normal }) => {
    const value = finder.value(arg);
    return normal ? finder.normalOf(value) : value;
  });
  const found = look();
  const { sample, answers } = found;
  if (sample?.cause) return sample.cause;
  if (sample?.failing) {
    const facts = { function: node.fn.name, ...sample.failing };
    return ownFault(problem('aggregate-row-fails', node, facts), 'waiting');
  }
  if (sample && sample.blank.size > 0)
    return ownFault(
      blankRows(node, sample, () => answers.of(values), finder),
      'waiting',
    );
  const picked = causeInPicked(plan, found, values, finder);
  if (picked) return picked;
  const refusal = answers.refuse(values);
  if (!refusal) return ownFault(problem('too-large', node, { written: finder.written(node) }));
  if ('unlisted' in refusal) return unlistedKey(node, found.columns[0] ?? new Float64Array(), finder);
  const single = node.args.map((arg) => (each.includes(arg) ? finder.value(arg) : Number.NaN));
  return ownFault(refusalOf(node, refusal, single, finder));
}

function gatheringOf(node: CallNode, evaluate: GatherEvaluator, finder: CauseFinder): Gathering {
  const plan = planGather(node, evaluate, finder);
  let shared: Look | undefined;
  const look = (): Look => lookAt(node, evaluate, plan, finder);
  return {
    plan,
    look: () => {
      if (plan.perRow) return look();
      shared ??= look();
      return shared;
    },
  };
}

function lookAt(node: CallNode, evaluate: GatherEvaluator, plan: GatherPlan, finder: CauseFinder): Look {
  // Element by element one looks only for a gap, and mostly there is none.
  const whole = keepingCursors(plan, () => finder.gathered(node));
  const sample = whole ? undefined : keepingCursors(plan, () => takeSample(plan, finder));
  const columns = whole ?? columnsOf(plan, sample?.columns ?? []);
  const answers = answersOn(evaluate, columns, node.options);
  const picked = plan.parts.findIndex((part) => part.picked);
  if (picked < 0) return { sample, columns, answers, places: undefined };
  // With the places in place of the values, the function gives the place it picks.
  const places = columns.map((column, at) => (at === picked ? column.map((_, place) => place) : column));
  return { sample, columns, answers, places: answersOn(evaluate, places, node.options) };
}

function columnsOf({ pooled }: GatherPlan, columns: readonly number[][]): readonly Float64Array[] {
  return pooled ? [Float64Array.from(columns.flat())] : columns.map((column) => Float64Array.from(column));
}

/** The cause of the element a lookup picks, if it picks one that has no value. */
function causeInPicked(
  plan: GatherPlan,
  { places }: Look,
  each: readonly number[],
  finder: CauseFinder,
): Cause | undefined {
  const part = plan.parts.find((one) => one.picked);
  const place = places?.of(each);
  if (!part || place === undefined || !Number.isInteger(place)) return undefined;
  return keepingCursors(plan, () => {
    placeCursors(part.space, place);
    return Number.isNaN(finder.value(part.node)) ? finder.cause(part.node) : undefined;
  });
}

/** So many blanks are told one by one. */
const TOLD_BLANKS = 5;

/** The functions whose value of the known rows means something. */
const TELLS_KNOWN_PART: ReadonlySet<string> = new Set(['arithmetic', 'aggregates', 'conditional aggregates']);

function blankRows(node: CallNode, sample: Sample, valueOfKnown: () => number, finder: CauseFinder) {
  const [first] = sample.blank.values();
  const part = TELLS_KNOWN_PART.has(node.fn.group) ? valueOfKnown() : Number.NaN;
  const known = Number.isFinite(part) && sample.known > 0;
  return problem('rows-blank', node, {
    function: node.fn.name,
    name: first?.name ?? '',
    blank_rows: sample.blank.size,
    first_row: first?.row ?? 0,
    known_rows: sample.known,
    known_part: known ? part : null,
    known_text: known ? finder.shown(part, node) : '',
    blanks: [...sample.blank.values()].slice(0, TOLD_BLANKS).map(({ cell, row }) => ({ cell, row })),
  });
}

function workFacts(node: CallNode, plan: GatherPlan, finder: CauseFinder) {
  const gathered = gatheredSize(plan);
  const crowded = gathered > MOST_GATHERED;
  return {
    written: finder.written(node),
    elements: crowded ? gathered : workOf(plan),
    limit: crowded ? MOST_GATHERED : MOST_WORK,
  };
}

function keepingCursors<T>(plan: GatherPlan, look: () => T): T {
  const tables = [...new Set(plan.parts.flatMap((part) => part.space.tables))];
  const before = tables.map((table) => table.fresh);
  const found = look();
  for (const [at, table] of tables.entries()) table.fresh = before[at] ?? 0;
  return found;
}
