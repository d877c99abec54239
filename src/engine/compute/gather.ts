import {
  type CallNode,
  type GatherEvaluator,
  type Parameter,
  partsOf,
  type Typed,
  unionAxes,
} from '../../language/index.ts';
import type { ColumnCell, TableCell } from '../store/cells.ts';
import { dependsOnRow, type ElementCompiler } from './context.ts';
import { type Separated, separate } from './separate.ts';
import { freshSpace, type Space, sizeOf, spaceOf } from './space.ts';

/** The most elements an aggregate may gather at once: 80 MB of numbers. */
export const MOST_GATHERED = 10_000_000;
/** The most element operations a column may spend on aggregates over other rows, some seconds of work. */
export const MOST_WORK = 2_000_000_000;

/** One column argument of an aggregate. */
export interface GatheredPart {
  readonly node: Typed;
  /** What it is gathered over. */
  readonly space: Space;
  /** The columns whose rows it runs over. */
  readonly columns: readonly ColumnCell[];
  /** The column whose blank rows are left out, for KNOWN. */
  readonly known?: ColumnCell;
  /** Whether its texts are made equal when their normal forms are. */
  readonly normal: boolean;
  /** Whether one element is picked from it, so that the others need no value. */
  readonly picked: boolean;
}

/** How a call's arguments fall into gathered columns and elementwise ones. */
export interface GatherPlan {
  readonly parts: readonly GatheredPart[];
  readonly each: readonly { readonly node: Typed; readonly normal: boolean }[];
  readonly pooled: boolean;
  /** Whether what is gathered changes with the row the formula stands on. */
  readonly perRow: boolean;
  /** What the call is computed for: the rows of its formula, and the fresh rows around it. */
  readonly calls: Space;
  /** Operations for each gathered element and call. */
  readonly weight: number;
  /** Of a function that chooses rows by a condition on this row: the condition in comparisons that can be searched. */
  readonly comparisons: readonly Separated[] | undefined;
  /** Whether many calls share the work on what is gathered, so that each is a search. */
  readonly searches: boolean;
}

/** The parameter of each argument, options left out. */
function parametersOf(node: CallNode): readonly Parameter[] {
  const kept = node.fn.parameters.filter((parameter) => parameter.role !== 'option');
  const repeating = kept.findIndex((parameter) => parameter.repeats);
  return node.args.map((_, at) => {
    const wraps = repeating >= 0 && at >= repeating;
    const parameter = kept[wraps ? repeating + ((at - repeating) % (kept.length - repeating)) : at];
    if (!parameter) throw new Error(`${node.fn.name} has no parameter ${at}`);
    return parameter;
  });
}

/** Plans a call: pooled arguments each over their own tables, aligned ones over their common tables. */
export function planGather(
  node: CallNode,
  evaluate: GatherEvaluator,
  world: Pick<ElementCompiler['world'], 'table' | 'column'>,
): GatherPlan {
  const parameters = parametersOf(node);
  const isColumn = (_: Typed, at: number) => parameters[at]?.role === 'column';
  const columns = node.args.filter(isColumn);
  const common = freshSpace(unionAxes(columns.map((arg) => arg.type.axes)), world.table);
  const pooled = evaluate.pooled === true;
  const parts: GatheredPart[] = [];
  const each: { node: Typed; normal: boolean }[] = [];
  for (const [at, arg] of node.args.entries()) {
    const picked = parameters[at]?.picked === true;
    const normal = arg.type.kind === 'text' && !picked;
    if (!isColumn(arg, at)) each.push({ node: arg, normal });
    else if (arg.kind === 'known') {
      const space = freshSpace(arg.type.axes, world.table);
      const known = world.column(arg.column.id, (space.tables[0] as TableCell).id);
      parts.push({ node: arg.column, space, columns: [known], known, normal, picked });
    } else {
      const space = pooled ? freshSpace(arg.type.axes, world.table) : common;
      parts.push({ node: arg, space, columns: columnsAlong(arg, space, world), normal, picked });
    }
  }
  const perRow = parts.some((part) => dependsOnRow(part.node));
  const weight = perRow ? columns.reduce((count, arg) => count + countNodes(arg), 0) : 1;
  const comparisons = evaluate.chosen && perRow ? comparisonsOf(parts) : undefined;
  const searches = evaluate.search !== undefined && !perRow;
  const calls = spaceOf(node.type.axes, world.table);
  return { parts, each, pooled, perRow, calls, weight, comparisons, searches };
}

/** The comparisons a condition is made of, where the rows chosen are those of one table and their values are no row's own. */
function comparisonsOf([condition, value]: readonly GatheredPart[]): readonly Separated[] | undefined {
  if (condition?.space.tables.length !== 1 || condition.known) return undefined;
  if (value && (value.known || dependsOnRow(value.node))) return undefined;
  return separate(condition.node, condition.space);
}

/** How many elements a call gathers; over the limit it has no value. */
export function gatheredSize({ parts, pooled }: GatherPlan): number {
  if (!pooled) return parts[0] ? sizeOf(parts[0].space) * parts.length : 0;
  return parts.reduce((total, part) => total + sizeOf(part.space), 0);
}

/** Whether a call asks for more than the engine undertakes, over all rows it is computed for. */
export function isTooMuch(plan: GatherPlan): boolean {
  return gatheredSize(plan) > MOST_GATHERED || workOf(plan) > MOST_WORK;
}

/** The element operations of a call, over all it is computed for. */
export function workOf(plan: GatherPlan): number {
  const [gathered, calls] = [gatheredSize(plan), sizeOf(plan.calls)];
  if (plan.searches || plan.comparisons?.length === 1) return (gathered + calls) * Math.log2(gathered + 2);
  return gathered * (plan.comparisons ? 1 : plan.weight) * calls;
}

/** The whole columns in a part that lie along its space. */
function columnsAlong(
  node: Typed,
  space: Space,
  world: Pick<ElementCompiler['world'], 'column'>,
): readonly ColumnCell[] {
  if (node.kind !== 'column') return partsOf(node).flatMap((part) => columnsAlong(part, space, world));
  const table = space.tables.find(({ id }) => id === node.type.axes[0]?.table);
  return table ? [world.column(node.id, table.id)] : [];
}

function countNodes(node: Typed): number {
  return partsOf(node).reduce((count, part) => count + countNodes(part), 1);
}
