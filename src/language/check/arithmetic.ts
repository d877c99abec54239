import { problem } from '../../diagnostics/index.ts';
import {
  overDimension,
  PLAIN,
  type PointKind,
  readUnit,
  sameDimension,
  timesDimension,
  toSI,
} from '../../units/index.ts';
import type { BinarySyntax, NegateSyntax, PercentSyntax, Syntax } from '../syntax.ts';
import {
  differenceOf,
  type NumberType,
  numberType,
  onAxes,
  plainType,
  type Type,
  textType,
  unionAxes,
} from '../type.ts';
import type { ArithmeticNode, Typed } from '../typed.ts';
import { broken, type Context, written } from './context.ts';
import { describe, massAndForce } from './words.ts';

const doing = { '+': 'added', '-': 'subtracted', '*': 'multiplied', '/': 'divided' } as const;

/** `-x`. A point has no negative, but a sign before a literal one belongs to its number: `-5 degC`. */
export function checkNegate(node: NegateSyntax, context: Context, want?: Type): Typed {
  const operand = context.check(node.operand, want);
  const { from, to } = node;
  if (node.operand.kind === 'number' && operand.kind === 'number' && operand.unit?.point)
    return { ...operand, from, si: toSI(-operand.written, operand.unit), written: -operand.written };
  if (operand.type.kind === 'number') {
    const { dimension, angle, axes } = operand.type;
    return { kind: 'negate', type: numberType(dimension, angle, axes), from, to, operand };
  }
  refuseOperand(operand, 'negated', context);
  return broken(node);
}

/** `x%`. */
export function checkPercent(node: PercentSyntax, context: Context): Typed {
  const operand = context.check(node.operand, plainType);
  const { from, to } = node;
  const { type } = operand;
  if (type.kind === 'number' && sameDimension(type.dimension, PLAIN) && !type.angle)
    return { kind: 'percent', type: onAxes(plainType, type.axes), from, to, operand };
  const grouped = ['group', 'call', 'number'].includes(node.operand.kind);
  if (type.kind !== 'unknown' && grouped)
    context.report(
      problem('number-wanted', operand, {
        written: written(context, operand),
        is: describe(operand, context.scope.units),
        doing: 'taken as a percentage',
      }),
    );
  return broken(node);
}

/** Sums, differences, products, quotients and joined texts. */
export function checkBinary(node: BinarySyntax, context: Context, want?: Type): Typed {
  if (unitOrName(node, context)) {
    context.check(node.left);
    return broken(node);
  }
  const sum = node.op === '+' || node.op === '-';
  const [left, right] = sum ? checkPair(node.left, node.right, context, want) : checkBoth(node, context);
  if (node.op === '&') return checkJoin(node, left, right, context);
  if (left.type.kind === 'unknown' || right.type.kind === 'unknown') return broken(node);
  const points = [left, right].some((side) => side.type.kind === 'point');
  const type = points ? pointResult(node, left, right, context) : numberResult(node, left, right, context);
  if (!type) return broken(node);
  const axes = unionAxes([left.type.axes, right.type.axes]);
  const { from, to, op } = node;
  return { kind: 'arithmetic', op, type: onAxes(type, axes), from, to, left, right } satisfies ArithmeticNode;
}

/** Checks two parts that must be alike, an unknown name after its partner, so that the partner ranks remedies. */
export function checkPair(
  left: Syntax,
  right: Syntax,
  context: Context,
  want?: Type,
): readonly [left: Typed, right: Typed] {
  if (left.kind === 'name' && !context.scope.resolve(left.name)) {
    const second = context.check(right, want);
    return [context.check(left, want ?? second.type), second];
  }
  const first = context.check(left, want);
  return [first, context.check(right, want ?? first.type)];
}

function checkBoth(node: BinarySyntax, context: Context): readonly [Typed, Typed] {
  return [context.check(node.left), context.check(node.right)];
}

function checkJoin(node: BinarySyntax, left: Typed, right: Typed, context: Context): Typed {
  const sides = [left, right];
  if (sides.some((side) => side.type.kind === 'unknown')) return broken(node);
  const strange = sides.find((side) => side.type.kind !== 'text');
  if (strange) {
    const is = describe(strange, context.scope.units);
    const text = written(context, strange);
    const as = { number: `TEXT(${text}; "unit"; decimals)`, truth: `IF(${text}; "yes"; "no")` };
    const instead = as[strange.type.kind as keyof typeof as] ?? '';
    context.report(problem('join-number', strange, { written: text, is, instead }));
    return broken(node);
  }
  const axes = unionAxes([left.type.axes, right.type.axes]);
  return { kind: 'join', type: onAxes(textType, axes), from: node.from, to: node.to, left, right };
}

function numberResult(node: BinarySyntax, left: Typed, right: Typed, context: Context): Type | undefined {
  const strange = [left, right].find((side) => side.type.kind !== 'number');
  if (strange) {
    refuseOperand(strange, doing[node.op as keyof typeof doing], context);
    return undefined;
  }
  const a = left.type as NumberType;
  const b = right.type as NumberType;
  if (node.op === '*' || node.op === '/') {
    const dimension = (node.op === '*' ? timesDimension : overDimension)(a.dimension, b.dimension);
    // An angle stays one when scaled by a plain number; one over an angle, or an angle times a length, is none.
    const scaled = node.op === '*' ? a.angle !== b.angle : a.angle && !b.angle;
    const plain = sameDimension(a.dimension, PLAIN) && sameDimension(b.dimension, PLAIN);
    return numberType(dimension, scaled && plain);
  }
  const common = commonNumber(a, b);
  if (common) return common;
  refusePair(node, left, right, doing[node.op as '+' | '-'], context);
  return undefined;
}

/** The type of two numbers that must be alike, the literal 0 fitting the other; undefined if they are not. */
export function commonNumber(a: NumberType, b: NumberType): NumberType | undefined {
  if (a.zero && b.zero) return plainType;
  if (a.zero) return b;
  if (b.zero) return a;
  return sameDimension(a.dimension, b.dimension) && a.angle === b.angle ? a : undefined;
}

function pointResult(node: BinarySyntax, left: Typed, right: Typed, context: Context): Type | undefined {
  const a = left.type;
  const b = right.type;
  if (node.op === '-' && a.kind === 'point' && b.kind === 'point' && a.of === b.of)
    return numberType(differenceOf(a.of));
  if ((node.op === '+' || node.op === '-') && a.kind === 'point' && isDifference(b, a.of)) return a;
  if (node.op === '+' && b.kind === 'point' && isDifference(a, b.of)) return b;
  const units = context.scope.units;
  const operands =
    a.kind === 'point' && b.kind === 'point' && a.of === b.of
      ? `two values that are each ${describe(left, units)}`
      : `${describe(left, units)} and ${describe(right, units)}`;
  context.report(
    problem('point-operation', node, {
      written: written(context, node),
      operands,
      doing: doing[node.op as keyof typeof doing],
    }),
  );
  return undefined;
}

function isDifference(type: Type, point: PointKind): boolean {
  if (type.kind !== 'number') return false;
  return type.zero === true || sameDimension(type.dimension, differenceOf(point));
}

function refuseOperand(operand: Typed, verb: string, context: Context): void {
  const { type } = operand;
  if (type.kind === 'unknown') return;
  const is = describe(operand, context.scope.units);
  const text = written(context, operand);
  context.report(
    type.kind === 'point'
      ? problem('point-operation', operand, { written: text, operands: is, doing: verb })
      : problem('number-wanted', operand, { written: text, is, doing: verb }),
  );
}

/** Reports two sides that are not alike, in the words that fit best, with remedies for an angle. */
export function refusePair(
  node: { readonly from: number; readonly to: number },
  left: Typed,
  right: Typed,
  verb: string,
  context: Context,
): void {
  const units = context.scope.units;
  const facts = {
    left: written(context, left),
    leftIs: describe(left, units),
    right: written(context, right),
    rightIs: describe(right, units),
    doing: verb,
  };
  const a = left.type;
  const b = right.type;
  if (a.kind === 'number' && b.kind === 'number' && sameDimension(a.dimension, b.dimension)) {
    const plain = a.angle ? right : left;
    context.report(problem('angle-and-plain', node, facts, angleFixes(plain, context)));
  } else if (massAndForce(a, b)) context.report(problem('mass-and-force', node, facts));
  else context.report(problem('dimensions-differ', node, facts));
}

/** Both readings of a plain number as an angle. */
export function angleFixes(plain: Typed, context: Context) {
  const text = written(context, plain);
  const simple = plain.kind === 'number' && !plain.unit;
  const single = simple || plain.kind === 'cell' || plain.kind === 'call';
  return ['deg', 'rad'].map((unit) => {
    const insert = simple ? `${text} ${unit}` : `${single ? text : `(${text})`} * 1 ${unit}`;
    return { label: insert, from: plain.from, to: plain.to, insert };
  });
}

/** `5 m/s` where `s` is a unit too: reported, and true. Spaces and a name in scope make it a value. */
function unitOrName(node: BinarySyntax, context: Context): boolean {
  if (node.op !== '*' && node.op !== '/' && node.op !== '-') return false;
  const last = factorAt(node.left, 'last');
  const number = last.kind === 'negate' ? last.operand : last;
  const follower = factorAt(node.right, 'first');
  const name = follower.kind === 'power' ? follower.base : follower;
  if (number.kind !== 'number' || !number.unit || name.kind !== 'name') return false;
  const { units } = context.scope;
  if (name.name.includes('.') || !readUnit(name.name, units).ok || !readUnit(number.unit.text, units).ok)
    return false;
  const tight = node.opSpan.from === number.to && node.opSpan.to === follower.from;
  const value = context.scope.resolve(name.name) !== undefined;
  if (!tight && value) return false;
  const span = { from: number.from, to: follower.to };
  const sign = written(context, node.opSpan);
  const unitText = number.unit.compound ? `(${number.unit.text})` : number.unit.text;
  const after = written(context, follower);
  const one = follower.kind === 'power' ? `1 (${after})` : `1 ${after}`;
  const whole = `${number.unit.text}${sign}${after}`;
  const first = readUnit(whole, units).ok
    ? `${number.value} (${whole})`
    : `${number.value} ${unitText} ${sign} (${one})`;
  const second = `${number.value} ${unitText} ${sign} ${value ? after : `(${one})`}`;
  const readings = [...new Set([first, second])];
  context.report(
    problem(
      'unit-or-name',
      span,
      { written: written(context, span), name: name.name, value, first, second },
      readings.map((insert) => ({ label: insert, ...span, insert })),
    ),
  );
  return true;
}

function factorAt(node: Syntax, end: 'first' | 'last'): Syntax {
  if (node.kind !== 'binary' || (node.op !== '*' && node.op !== '/')) return node;
  return factorAt(end === 'last' ? node.right : node.left, end);
}
