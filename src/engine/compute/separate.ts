import {
  type CompareNode,
  type ComparisonOperator,
  comparedSides,
  findFunction,
  type Typed,
} from '../../language/index.ts';
import { dependsOnRow } from './context.ts';
import { type Space, spans } from './space.ts';

/** A comparison of every row of a table with what stands on this row: `gathered` `op` `own`. */
export interface Separated {
  readonly op: ComparisonOperator;
  /** Changes along the table's rows only. */
  readonly gathered: Typed;
  /** Changes with this row, or not at all. */
  readonly own: Typed;
}

const turned: Readonly<Record<ComparisonOperator, ComparisonOperator>> = {
  '=': '=',
  '<>': '<>',
  '<': '>',
  '<=': '>=',
  '>': '<',
  '>=': '<=',
};

const and = findFunction('AND');

/**
 * A condition as comparisons that all hold where it holds, if it is one or several joined by AND and the two sides of each
 * can be told apart: then the rows of the table can be sorted by one side and searched for the other. Undefined for any
 * other condition.
 */
export function separate(condition: Typed, space: Space): readonly Separated[] | undefined {
  if (condition.kind === 'compare') {
    const one = separateOne(condition, space);
    return one && [one];
  }
  if (condition.kind !== 'call' || condition.fn !== and) return undefined;
  const parts = condition.args.map((arg) => separate(arg, space));
  return parts.every((part) => part !== undefined) ? parts.flat() : undefined;
}

function separateOne(node: CompareNode, space: Space): Separated | undefined {
  const { op } = node;
  // Texts are sorted by their codes, which are equal where texts are and say nothing of their order.
  if (node.left.type.kind === 'text' && op !== '=' && op !== '<>') return undefined;
  const [left, right] = comparedSides(node);
  if (isGathered(left, space) && isOwn(right)) return { op, gathered: left, own: right };
  if (isGathered(right, space) && isOwn(left)) return { op: turned[op], gathered: right, own: left };
  return undefined;
}

function isGathered(node: Typed, space: Space): boolean {
  return spans(node.type.axes, space) && !dependsOnRow(node);
}

function isOwn({ type }: Typed): boolean {
  return type.axes.every((axis) => !axis.fresh);
}
