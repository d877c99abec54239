import { problem } from '../../diagnostics/index.ts';
import { PLAIN, sameDimension } from '../../units/index.ts';
import type { FunctionEntry, Parameter } from '../functions/entry.ts';
import type { Type } from '../type.ts';
import type { Typed } from '../typed.ts';
import { angleFixes, commonNumber } from './arithmetic.ts';
import { type Context, written } from './context.ts';
import { describe, massAndForce } from './words.ts';

const wantedWords = {
  plain: 'a plain number',
  number: 'a number',
  truth: 'true or false, such as a comparison',
  text: 'text',
  date: 'a date',
} as const;

/** Whether an argument is of the kind its parameter takes; reports it if not. */
export function takes(fn: FunctionEntry, parameter: Parameter, arg: Typed, context: Context): boolean {
  const { kind } = parameter.takes;
  const { type } = arg;
  if (type.kind === 'unknown') return false;
  if (kind === 'any' || kind === 'option') return true;
  if (kind === 'angle') return takesAngle(fn, parameter, arg, context);
  if (kind === 'like') {
    const { points, texts } = parameter.takes;
    if (type.kind === 'number' || (points && type.kind === 'point')) return true;
    if (texts && (type.kind === 'text' || type.kind === 'truth')) return true;
    return refuse(
      fn,
      parameter,
      arg,
      points ? 'a number, a date, a temperature or an elevation' : 'a number',
      context,
    );
  }
  // The digits of an angle depend on its unit as those of a quantity do.
  const rounded = kind === 'plain' && fn.group === 'rounding' && parameter === fn.parameters[0];
  const fits =
    kind === 'date'
      ? type.kind === 'point' && type.of === 'date'
      : kind === 'plain'
        ? type.kind === 'number' && sameDimension(type.dimension, PLAIN) && !(rounded && type.angle)
        : type.kind === kind;
  if (fits) return true;
  if (rounded) {
    const is = describe(arg, context.scope.units);
    context.report(problem('round-quantity', arg, { function: fn.name, written: written(context, arg), is }));
    return false;
  }
  return refuse(fn, parameter, arg, wantedWords[kind], context);
}

function takesAngle(fn: FunctionEntry, parameter: Parameter, arg: Typed, context: Context): boolean {
  const { type } = arg;
  if (type.kind !== 'number' || !sameDimension(type.dimension, PLAIN))
    return refuse(fn, parameter, arg, 'an angle', context);
  if (type.angle || type.zero) return true;
  const facts = { function: fn.name, written: written(context, arg) };
  context.report(problem('angle-wanted', arg, facts, angleFixes(arg, context)));
  return false;
}

function refuse(
  fn: FunctionEntry,
  parameter: Parameter,
  arg: Typed,
  wanted: string,
  context: Context,
): false {
  const facts = {
    function: fn.name,
    argument: parameter.name,
    written: written(context, arg),
    is: describe(arg, context.scope.units),
    wanted,
  };
  context.report(problem('argument-kind', arg, facts));
  return false;
}

/** The common type of arguments that must be alike; reports the first that is not and gives undefined. */
export function alike(fn: FunctionEntry, args: readonly Typed[], context: Context): Type | undefined {
  const [first, ...rest] = args;
  if (!first) return undefined;
  let holder = first;
  let type = first.type;
  for (const arg of rest) {
    const common = commonType(type, arg.type);
    if (!common) {
      refuseUnlike(fn, holder, arg, context);
      return undefined;
    }
    if (common !== type) holder = arg;
    type = common;
  }
  return type;
}

/** The type two values share: numbers of one dimension (0 fitting any), points of one kind, texts, truth values. */
function commonType(a: Type, b: Type): Type | undefined {
  if (a.kind === 'number' && b.kind === 'number') {
    if (a.zero && b.zero) return a;
    return commonNumber(a, b);
  }
  if (a.kind === 'point' && b.kind === 'point') return a.of === b.of ? a : undefined;
  return a.kind === b.kind ? a : undefined;
}

function refuseUnlike(fn: FunctionEntry, left: Typed, right: Typed, context: Context): void {
  const units = context.scope.units;
  const span = { from: left.from, to: right.to };
  const facts = {
    left: written(context, left),
    leftIs: describe(left, units),
    right: written(context, right),
    rightIs: describe(right, units),
  };
  const a = left.type;
  const b = right.type;
  if (a.kind === 'number' && b.kind === 'number' && sameDimension(a.dimension, b.dimension)) {
    const doing = `arguments of ${fn.name} together`;
    const fixes = angleFixes(a.angle ? right : left, context);
    context.report(problem('angle-and-plain', span, { ...facts, doing }, fixes));
  } else if (massAndForce(a, b))
    context.report(problem('mass-and-force', span, { ...facts, doing: `arguments of ${fn.name} together` }));
  else context.report(problem('arguments-differ', span, { function: fn.name, ...facts }));
}
