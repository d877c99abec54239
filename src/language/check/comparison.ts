import { problem } from '../../diagnostics/index.ts';
import { findFunction } from '../functions/table.ts';
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

/**
 * The positive against the negative terms of a difference compared with 0 or 0 kN, so that ties stay ties; also within ABS,
 * and within the greater or the lesser of it and 0.
 */
function balanceOf(left: Typed, right: Typed): CompareNode['balance'] | undefined {
  const zeroRight = isZero(right);
  const held = zeroRight ? left : isZero(left) ? right : undefined;
  const sides = held && sidesAgainstZero(held);
  if (!sides) return undefined;
  const [p, m] = sides;
  return zeroRight ? { plus: p, minus: m } : { plus: m, minus: p };
}

type Sides = readonly [plus: Typed, minus: Typed];

/** What is held against 0 as one side less another; undefined where it is no difference. */
function sidesAgainstZero(node: Typed): Sides | undefined {
  if (node.kind === 'arithmetic') return termsOf(node);
  if (node.kind !== 'call') return undefined;
  const within = ofDifference[node.fn.name];
  const others = node.args.filter((arg) => !isZero(arg));
  const [difference] = others;
  const hasZero = others.length < node.args.length;
  if (!within || others.length !== 1 || hasZero === (node.fn.name === 'ABS')) return undefined;
  if (difference?.kind !== 'arithmetic' || difference.type.axes.length > node.type.axes.length)
    return undefined;
  const terms = termsOf(difference);
  return terms?.every(({ type }) => type.kind === 'number') ? within(...terms) : undefined;
}

/** What functions of a difference p - m, and of 0, are as differences themselves: |p - m| is the greater less the lesser. */
const ofDifference: Readonly<Record<string, (p: Typed, m: Typed) => Sides>> = {
  ABS: (p, m) => [either('GREATER', p, m), either('LESSER', p, m)],
  GREATER: (p, m) => [either('GREATER', p, m), m],
  MAX: (p, m) => [either('GREATER', p, m), m],
  LESSER: (p, m) => [either('LESSER', p, m), m],
  MIN: (p, m) => [either('LESSER', p, m), m],
};

function either(name: 'GREATER' | 'LESSER', p: Typed, m: Typed): Typed {
  const fn = findFunction(name);
  if (!fn) throw new Error(`the language has no function ${name}`);
  const type = onAxes(p.type, unionAxes([p.type.axes, m.type.axes]));
  const [from, to] = [Math.min(p.from, m.from), Math.max(p.to, m.to)];
  return { kind: 'call', fn, type, from, to, args: [p, m], options: [] };
}

/** The positive and the negative terms of a sum, where it has both. */
function termsOf(difference: Typed): Sides | undefined {
  const plus: Typed[] = [];
  const minus: Typed[] = [];
  collect(difference, 1, plus, minus);
  return plus.length > 0 && minus.length > 0 ? [sumOf(plus), sumOf(minus)] : undefined;
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
