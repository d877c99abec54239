import { problem } from '../../diagnostics/index.ts';
import type { ComparisonSyntax } from '../syntax.ts';
import { onAxes, truthType, unionAxes } from '../type.ts';
import type { ArithmeticNode, CompareNode, Typed } from '../typed.ts';
import { checkPair, commonNumber, refusePair } from './arithmetic.ts';
import { broken, type Context, written } from './context.ts';
import { describe } from './words.ts';

/** A comparison of two numbers of one dimension, two points of one kind, two texts, or two truth values. */
export function checkComparison(node: ComparisonSyntax, context: Context): Typed {
  const [left, right] = checkPair(node.left, node.right, context);
  const a = left.type;
  const b = right.type;
  const chained = node.left.kind === 'comparison';
  if (chained || a.kind === 'unknown' || b.kind === 'unknown') return broken(node);
  if (a.kind === 'number' && b.kind === 'number') {
    if (!commonNumber(a, b)) {
      refusePair(node, left, right, 'compared', context);
      return broken(node);
    }
  } else if (!comparable(node, left, right)) {
    const units = context.scope.units;
    context.report(
      problem('text-and-number', node, {
        left: written(context, left),
        leftIs: describe(left, units),
        right: written(context, right),
        rightIs: describe(right, units),
      }),
    );
    return broken(node);
  }
  const { from, to, op } = node;
  const type = onAxes(truthType, unionAxes([a.axes, b.axes]));
  const balance = balanceOf(left, right);
  return {
    kind: 'compare',
    op,
    type,
    from,
    to,
    left,
    right,
    ...(balance && { balance }),
  } satisfies CompareNode;
}

function comparable(node: ComparisonSyntax, left: Typed, right: Typed): boolean {
  const a = left.type;
  const b = right.type;
  if (a.kind === 'point' && b.kind === 'point') return a.of === b.of;
  if (a.kind === 'text' && b.kind === 'text') return true;
  return a.kind === 'truth' && b.kind === 'truth' && (node.op === '=' || node.op === '<>');
}

/** The positive against the negative terms of a difference compared with 0 or 0 kN, so that ties stay ties. */
function balanceOf(left: Typed, right: Typed): CompareNode['balance'] | undefined {
  const zeroRight = isZero(right);
  const difference = zeroRight ? left : isZero(left) ? right : undefined;
  if (difference?.kind !== 'arithmetic') return undefined;
  const plus: Typed[] = [];
  const minus: Typed[] = [];
  collect(difference, 1, plus, minus);
  if (minus.length === 0 || plus.length === 0) return undefined;
  const [p, m] = [sumOf(plus), sumOf(minus)];
  return zeroRight ? { plus: p, minus: m } : { plus: m, minus: p };
}

function isZero(node: Typed): boolean {
  return node.kind === 'number' && node.type.kind === 'number' && node.written === 0;
}

function collect(node: Typed, sign: 1 | -1, plus: Typed[], minus: Typed[]): void {
  if (node.kind === 'arithmetic' && (node.op === '+' || node.op === '-') && node.type.kind === 'number') {
    if (node.left.type.kind === 'point') {
      (sign === 1 ? plus : minus).push(node.left);
      (sign === 1 ? minus : plus).push(node.right);
      return;
    }
    collect(node.left, sign, plus, minus);
    collect(node.right, node.op === '+' ? sign : sign === 1 ? -1 : 1, plus, minus);
  } else if (node.kind === 'negate') collect(node.operand, sign === 1 ? -1 : 1, plus, minus);
  else (sign === 1 ? plus : minus).push(node);
}

function sumOf(terms: readonly Typed[]): Typed {
  return terms.reduce(
    (left, right): ArithmeticNode => ({
      kind: 'arithmetic',
      op: '+',
      type: onAxes(left.type, unionAxes([left.type.axes, right.type.axes])),
      from: left.from,
      to: right.to,
      left,
      right,
    }),
  );
}
