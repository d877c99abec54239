import type { Problem } from '../../diagnostics/index.ts';
import type { Scope } from '../scope.ts';
import type { Syntax } from '../syntax.ts';
import { type Type, unknownType } from '../type.ts';
import type { BrokenNode, Typed } from '../typed.ts';

/** What every visitor of the checker shares while one formula is checked. */
export interface Context {
  readonly text: string;
  readonly scope: Scope;
  /** Whether the formula makes the rows of its table. */
  readonly series: boolean;
  readonly report: (problem: Problem) => void;
  /** Whether the formula parsed; what is missing in a broken one is not said twice. */
  readonly whole: boolean;
  /** Notes that the formula refers to a cell or column. */
  readonly refer: (id: string) => void;
  /** Checks a part; `want` is the type its place suggests, used only to rank remedies. */
  readonly check: (node: Syntax, want?: Type) => Typed;
}

/** The text of a part as written. */
export function written(context: Context, node: { readonly from: number; readonly to: number }): string {
  return context.text.slice(node.from, node.to);
}

/** A part whose problem is already reported. */
export function broken(node: { readonly from: number; readonly to: number }): BrokenNode {
  return { kind: 'broken', type: unknownType, from: node.from, to: node.to };
}
