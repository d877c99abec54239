import type { Rational, Unit } from '../units/index.ts';
import type { FunctionEntry } from './functions/entry.ts';
import type { Type } from './type.ts';

interface Node {
  readonly type: Type;
  /** Where it stands in the formula's text. */
  readonly from: number;
  readonly to: number;
}

/** A number as written, with its value in SI. */
export interface NumberNode extends Node {
  readonly kind: 'number';
  readonly si: number;
  readonly written: number;
  readonly unit?: Unit;
}
export interface TextNode extends Node {
  readonly kind: 'text';
  readonly text: string;
}
export interface TruthNode extends Node {
  readonly kind: 'truth';
  readonly value: boolean;
}
/** A scalar cell, or this row's value of a column of the formula's own table (its type then has the row axis). */
export interface CellNode extends Node {
  readonly kind: 'cell';
  /** `sheet.name` or `sheet.table.column`. */
  readonly id: string;
  /** The name as the formula writes it. */
  readonly name: string;
  readonly unit?: Unit;
}
/** A whole column, on the fresh axis of its table. */
export interface ColumnNode extends Node {
  readonly kind: 'column';
  readonly id: string;
  readonly name: string;
  readonly unit?: Unit;
}
export interface NegateNode extends Node {
  readonly kind: 'negate';
  readonly operand: Typed;
}
/** `x%`, one hundredth of x. */
export interface PercentNode extends Node {
  readonly kind: 'percent';
  readonly operand: Typed;
}
export type ArithmeticOperator = '+' | '-' | '*' | '/';
export interface ArithmeticNode extends Node {
  readonly kind: 'arithmetic';
  readonly op: ArithmeticOperator;
  readonly left: Typed;
  readonly right: Typed;
}
/** A power; `rational` is the constant exponent where the base has a dimension. */
export interface PowerNode extends Node {
  readonly kind: 'power';
  readonly base: Typed;
  readonly exponent: Typed;
  readonly rational?: Rational;
}
export type ComparisonOperator = '=' | '<>' | '<' | '<=' | '>' | '>=';
/**
 * A comparison, to a relative 1e-12 with ties equal for numbers and points. Where a difference is compared with
 * the literal 0, `balance` holds its positive and its negative terms, and those are compared.
 */
export interface CompareNode extends Node {
  readonly kind: 'compare';
  readonly op: ComparisonOperator;
  readonly left: Typed;
  readonly right: Typed;
  readonly balance?: { readonly plus: Typed; readonly minus: Typed };
}
export interface JoinNode extends Node {
  readonly kind: 'join';
  readonly left: Typed;
  readonly right: Typed;
}
/** IF, IFS, SWITCH and CHOOSE alike: the first arm whose condition holds, else `otherwise`, else a problem. */
export interface BranchNode extends Node {
  readonly kind: 'branch';
  readonly fn: FunctionEntry;
  /** The arguments as written, for those who draw the call. */
  readonly args: readonly Typed[];
  readonly arms: readonly { readonly when: Typed; readonly value: Typed }[];
  readonly otherwise?: Typed;
  /** The text that chooses, where the arms are the methods of a line. */
  readonly chosenBy?: Typed;
}
/** The row above in stored order, `first` on the first row. */
export interface AboveNode extends Node {
  readonly kind: 'above';
  readonly fn: FunctionEntry;
  readonly column: CellNode;
  readonly first: Typed;
}
/** The number of this row, from 1. */
export interface RowNode extends Node {
  readonly kind: 'row';
  readonly fn: FunctionEntry;
}
/** Whether a cell is blank; the one look at a missing value that is no problem. */
export interface BlankNode extends Node {
  readonly kind: 'blank';
  readonly fn: FunctionEntry;
  readonly cell: CellNode;
}
/** The filled rows of a column; only directly inside an aggregate. */
export interface KnownNode extends Node {
  readonly kind: 'known';
  readonly fn: FunctionEntry;
  readonly column: ColumnNode;
}
/** Evenly stepped numbers that make the rows of a table. */
export interface SeriesNode extends Node {
  readonly kind: 'series';
  readonly fn: FunctionEntry;
  readonly start: Typed;
  readonly stop: Typed;
  readonly step: Typed;
}
/** Every other function; `fn.evaluate` says how its arguments become its value. */
export interface CallNode extends Node {
  readonly kind: 'call';
  readonly fn: FunctionEntry;
  /** Without the option arguments. */
  readonly args: readonly Typed[];
  /** The literal options (a kind of match, a unit and decimals), one a parameter that takes an option. */
  readonly options: readonly string[];
}
/** What could not be understood; its problem is already reported. */
export interface BrokenNode extends Node {
  readonly kind: 'broken';
}

/** The typed tree every reader walks: engine, recheck, typesetter, explainer, tracer. */
export type Typed =
  | NumberNode
  | TextNode
  | TruthNode
  | CellNode
  | ColumnNode
  | NegateNode
  | PercentNode
  | ArithmeticNode
  | PowerNode
  | CompareNode
  | JoinNode
  | BranchNode
  | AboveNode
  | RowNode
  | BlankNode
  | KnownNode
  | SeriesNode
  | CallNode
  | BrokenNode;

/** The two sides a comparison really compares. */
export function comparedSides(node: CompareNode): readonly [Typed, Typed] {
  return node.balance ? [node.balance.plus, node.balance.minus] : [node.left, node.right];
}

/** The direct parts of a node, in the order they are written; a branch gives its arms' conditions and values. */
export function partsOf(node: Typed): readonly Typed[] {
  switch (node.kind) {
    case 'number':
    case 'text':
    case 'truth':
    case 'cell':
    case 'column':
    case 'row':
    case 'broken':
      return [];
    case 'negate':
    case 'percent':
      return [node.operand];
    case 'arithmetic':
    case 'join':
      return [node.left, node.right];
    case 'power':
      return [node.base, node.exponent];
    case 'compare':
      return comparedSides(node);
    case 'branch': {
      const arms = node.arms.flatMap((arm) => [arm.when, arm.value]);
      return node.otherwise ? [...arms, node.otherwise] : arms;
    }
    case 'above':
      return [node.column, node.first];
    case 'blank':
      return [node.cell];
    case 'known':
      return [node.column];
    case 'series':
      return [node.start, node.stop, node.step];
    case 'call':
      return node.args;
  }
}

/** The cells and columns a tree refers to, each once; what only `ABOVE` reads of its own table counts too. */
export function referencesOf(node: Typed): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (part: Typed): void => {
    if (part.kind === 'cell' || part.kind === 'column') found.add(part.id);
    for (const inner of partsOf(part)) visit(inner);
  };
  visit(node);
  return found;
}
