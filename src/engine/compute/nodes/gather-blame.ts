import { problem } from '../../../diagnostics/index.ts';
import type { CallNode, GatherEvaluator } from '../../../language/index.ts';
import { failsAsWhole, type TableCell } from '../../store/cells.ts';
import { type Blame, type Blamer, blameFirst, ownFault } from '../blame.ts';
import {
  type GatheredPart,
  type GatherPlan,
  gatheredSize,
  isTooMuch,
  MOST_GATHERED,
  MOST_WORK,
  planGather,
  workOf,
} from '../gather.ts';
import { failedTable, rowsAt, type Space, sizeOf } from '../space.ts';
import { referenceIn } from './references.ts';
import { refusalOf } from './refusal.ts';

/** Why an aggregate, a lookup or an interpolation has no value. */
export function blameGather(node: CallNode, evaluate: GatherEvaluator, blamer: Blamer): Blame {
  const plan = planGather(node, evaluate, blamer);
  const each = plan.each.map((arg) => arg.node);
  const argument = blameFirst(each, blamer);
  if (argument) return argument;
  for (const part of plan.parts) {
    const table = failedTable(part.space);
    if (table) return { kind: 'table', table, node: part.node };
    const column = part.columns.find(failsAsWhole);
    if (column) return { kind: 'cell', cell: column, node: referenceIn(part.node, column.id) ?? part.node };
  }
  if (isTooMuch(plan)) return ownFault(problem('too-much-work', node, workFacts(node, plan, blamer)));
  const values = plan.each.map(({ node: arg, normal }) => {
    const value = blamer.value(arg);
    return normal ? blamer.normalOf(value) : value;
  });
  // Element by element one looks only for a gap, and mostly there is none.
  const whole = keepingCursors(plan, () => blamer.gathered(node));
  const sample = whole ? undefined : keepingCursors(plan, () => takeSample(plan, blamer));
  if (sample?.blame) return sample.blame;
  if (sample?.failing) {
    const facts = { function: node.fn.name, ...sample.failing };
    return ownFault(problem('aggregate-row-fails', node, facts), 'waiting');
  }
  if (sample && sample.blank.size > 0)
    return ownFault(blankRows(node, evaluate, sample, values, blamer), 'waiting');
  const columns = whole ?? columnsOf(plan, sample?.columns ?? []);
  const picked = blamePicked(plan, evaluate, columns, values, node.options, blamer);
  if (picked) return picked;
  const refusal = evaluate.refuse?.(columns, values, node.options);
  if (!refusal) return ownFault(problem('too-large', node, { written: blamer.written(node) }));
  const single = node.args.map((arg) => (each.includes(arg) ? blamer.value(arg) : Number.NaN));
  return ownFault(refusalOf(node, refusal, single, blamer));
}

function columnsOf({ pooled }: GatherPlan, columns: readonly number[][]): readonly Float64Array[] {
  return pooled ? [Float64Array.from(columns.flat())] : columns.map((column) => Float64Array.from(column));
}

/** The blame of the element a lookup picks, if it picks one that has no value. */
function blamePicked(
  plan: GatherPlan,
  evaluate: GatherEvaluator,
  columns: readonly Float64Array[],
  each: readonly number[],
  options: readonly string[],
  blamer: Blamer,
): Blame | undefined {
  const part = plan.parts.find((one) => one.picked);
  if (!part) return undefined;
  // With the places in place of the values, the evaluator gives the place it picks.
  const places = columns.map((column, at) =>
    plan.parts[at] === part ? column.map((_, place) => place) : column,
  );
  const place = evaluate.of(places, each, options);
  if (!Number.isInteger(place)) return undefined;
  return keepingCursors(plan, () => {
    placeCursors(part.space, place);
    return Number.isNaN(blamer.value(part.node)) ? blamer.blame(part.node) : undefined;
  });
}

/** The elements of an aggregate that have values, and what is wrong with the others. */
interface Sample {
  /** One list of known values for each part. */
  readonly columns: number[][];
  /** What takes the value from all elements alike. */
  blame?: Blame;
  /** The first row that fails. */
  failing?: { readonly table: string; readonly row: number; readonly because: string };
  /** The blank rows, by column and row, in the order they were met. */
  readonly blank: Map<string, { readonly name: string; readonly cell: string; readonly row: number }>;
  /** The rows that have values. */
  known: number;
}

function takeSample(plan: GatherPlan, blamer: Blamer): Sample {
  const sample: Sample = { columns: plan.parts.map(() => []), blank: new Map(), known: 0 };
  if (plan.pooled) for (const [at, part] of plan.parts.entries()) takeElements([part], at, sample, blamer);
  else takeElements(plan.parts, 0, sample, blamer);
  return sample;
}

/** Goes through the common space of some parts; an element counts only where all of them have a value. */
function takeElements(parts: readonly GatheredPart[], first: number, sample: Sample, blamer: Blamer): void {
  const space = parts[0]?.space;
  const size = space ? sizeOf(space) : 0;
  for (let index = 0; index < size && space && !sample.blame; index += 1) {
    placeCursors(space, index);
    const values = parts.map((part) => blamer.value(part.node));
    const gap = values.findIndex((value, at) => Number.isNaN(value) && parts[at]?.picked !== true);
    if (gap < 0) {
      for (const [at, value] of values.entries()) {
        const normal = parts[at]?.normal ? blamer.normalOf(value) : value;
        sample.columns[first + at]?.push(normal);
      }
      sample.known += 1;
    } else judge(parts[gap] as GatheredPart, space, sample, blamer);
  }
}

/** What an element without a value means for the whole. */
function judge(part: GatheredPart, space: Space, sample: Sample, blamer: Blamer): void {
  const found = blamer.blame(part.node);
  const [table] = space.tables;
  if (found.kind === 'table' || !table) {
    sample.blame = found;
    return;
  }
  if (found.kind === 'own') {
    sample.failing ??= { table: table.id, row: table.fresh + 1, because: found.problem.message };
    return;
  }
  const { cell, row, node } = found;
  if (
    cell.shape === 'scalar' ||
    row === undefined ||
    !space.tables.includes(cell.table) ||
    node.type.axes[0]?.fresh === false
  ) {
    sample.blame = found;
    return;
  }
  if (part.known && blamer.isBlankRow(part.known, row)) return;
  const root = blamer.root(cell, row);
  if (root.kind === 'blank' && isWithin(root.cell, space)) {
    const name = root.cell === cell ? blamer.written(node) : root.cell.id;
    const blank = { name, cell: root.cell.id, row: (root.row ?? 0) + 1 };
    sample.blank.set(`${blank.cell} ${blank.row}`, blank);
  } else {
    const because = root.kind === 'fault' ? root.problem.message : blamer.blankWords(root);
    sample.failing ??= { table: cell.table.id, row: row + 1, because };
  }
}

function isWithin(cell: { readonly shape: string; readonly table?: TableCell }, space: Space): boolean {
  return cell.shape === 'column' && cell.table !== undefined && space.tables.includes(cell.table);
}

/** So many blanks are told one by one. */
const TOLD_BLANKS = 5;

/** The functions whose value of the known rows means something. */
const TELLS_KNOWN_PART: ReadonlySet<string> = new Set(['arithmetic', 'aggregates', 'conditional aggregates']);

function blankRows(
  node: CallNode,
  evaluate: GatherEvaluator,
  sample: Sample,
  each: readonly number[],
  blamer: Blamer,
) {
  const [first] = sample.blank.values();
  const columns = sample.columns.map((column) => Float64Array.from(column));
  const given = evaluate.pooled ? [Float64Array.from(sample.columns.flat())] : columns;
  const part = TELLS_KNOWN_PART.has(node.fn.group) ? evaluate.of(given, each, node.options) : Number.NaN;
  const known = Number.isFinite(part) && sample.known > 0;
  return problem('rows-blank', node, {
    function: node.fn.name,
    name: first?.name ?? '',
    blank_rows: sample.blank.size,
    first_row: first?.row ?? 0,
    known_rows: sample.known,
    known_part: known ? part : null,
    known_text: known ? blamer.shown(part, node) : '',
    blanks: [...sample.blank.values()].slice(0, TOLD_BLANKS).map(({ cell, row }) => ({ cell, row })),
  });
}

function workFacts(node: CallNode, plan: GatherPlan, blamer: Blamer) {
  const gathered = gatheredSize(plan);
  const crowded = gathered > MOST_GATHERED;
  return {
    written: blamer.written(node),
    elements: crowded ? gathered : workOf(plan),
    limit: crowded ? MOST_GATHERED : MOST_WORK,
  };
}

function placeCursors(space: Space, index: number): void {
  const rows = rowsAt(space, index);
  for (const [at, table] of space.tables.entries()) table.fresh = rows[at] ?? 0;
}

function keepingCursors<T>(plan: GatherPlan, look: () => T): T {
  const tables = [...new Set(plan.parts.flatMap((part) => part.space.tables))];
  const before = tables.map((table) => table.fresh);
  const found = look();
  for (const [at, table] of tables.entries()) table.fresh = before[at] ?? 0;
  return found;
}
