import type { Span } from '../diagnostics/index.ts';
import type { ComparisonOperator } from './typed.ts';

/** A number, with its unit as written where it has one (`unit.text` without parentheses). */
export interface NumberSyntax extends Span {
  readonly kind: 'number';
  readonly value: number;
  readonly unit?: { readonly text: string; readonly compound: boolean } & Span;
}
export interface TextSyntax extends Span {
  readonly kind: 'text';
  readonly value: string;
}
export interface TruthSyntax extends Span {
  readonly kind: 'truth';
  readonly value: boolean;
}
/** A name of one to three parts: `t`, `basis.t`, `layers.top`, `basis.layers.top`. */
export interface NameSyntax extends Span {
  readonly kind: 'name';
  readonly name: string;
}
export interface CallSyntax extends Span {
  readonly kind: 'call';
  /** As written; the function table is looked up without regard to case. */
  readonly name: string;
  readonly nameSpan: Span;
  readonly args: readonly Syntax[];
}
export interface GroupSyntax extends Span {
  readonly kind: 'group';
  readonly inner: Syntax;
}
export interface NegateSyntax extends Span {
  readonly kind: 'negate';
  readonly operand: Syntax;
}
export interface PercentSyntax extends Span {
  readonly kind: 'percent';
  readonly operand: Syntax;
}
/** `√x`. */
export interface RootSyntax extends Span {
  readonly kind: 'root';
  readonly operand: Syntax;
}
/** `a^b`, or `a²` with a number of no width as exponent. */
export interface PowerSyntax extends Span {
  readonly kind: 'power';
  readonly base: Syntax;
  readonly exponent: Syntax;
}
export interface BinarySyntax extends Span {
  readonly kind: 'binary';
  readonly op: '+' | '-' | '*' | '/' | '&';
  readonly left: Syntax;
  readonly right: Syntax;
  readonly opSpan: Span;
}
export interface ComparisonSyntax extends Span {
  readonly kind: 'comparison';
  readonly op: ComparisonOperator;
  readonly left: Syntax;
  readonly right: Syntax;
}
/** What could not be parsed. */
export interface ErrorSyntax extends Span {
  readonly kind: 'error';
}

/** The tree of a formula as written; spans count UTF-16 units of its text. */
export type Syntax =
  | NumberSyntax
  | TextSyntax
  | TruthSyntax
  | NameSyntax
  | CallSyntax
  | GroupSyntax
  | NegateSyntax
  | PercentSyntax
  | RootSyntax
  | PowerSyntax
  | BinarySyntax
  | ComparisonSyntax
  | ErrorSyntax;

/** The direct parts of a node, in the order they are written. */
export function syntaxParts(node: Syntax): readonly Syntax[] {
  switch (node.kind) {
    case 'number':
    case 'text':
    case 'truth':
    case 'name':
    case 'error':
      return [];
    case 'call':
      return node.args;
    case 'group':
      return [node.inner];
    case 'negate':
    case 'percent':
    case 'root':
      return [node.operand];
    case 'power':
      return [node.base, node.exponent];
    case 'binary':
    case 'comparison':
      return [node.left, node.right];
  }
}

/** A node with each of its own parts changed. */
export function changeParts(node: Syntax, change: (part: Syntax) => Syntax): Syntax {
  switch (node.kind) {
    case 'number':
    case 'text':
    case 'truth':
    case 'name':
    case 'error':
      return node;
    case 'call':
      return { ...node, args: node.args.map(change) };
    case 'group':
      return { ...node, inner: change(node.inner) };
    case 'negate':
    case 'percent':
    case 'root':
      return { ...node, operand: change(node.operand) };
    case 'power':
      return { ...node, base: change(node.base), exponent: change(node.exponent) };
    case 'binary':
    case 'comparison':
      return { ...node, left: change(node.left), right: change(node.right) };
  }
}

/** Every name of a formula with its place, in the order written. */
export function namesIn(node: Syntax): readonly NameSyntax[] {
  if (node.kind === 'name') return [node];
  return syntaxParts(node).flatMap(namesIn);
}

/** Every text written in a formula, in the order written. */
export function textsIn(node: Syntax): readonly string[] {
  return node.kind === 'text' ? [node.value] : syntaxParts(node).flatMap(textsIn);
}
