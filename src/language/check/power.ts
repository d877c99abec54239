import { problem } from '../../diagnostics/index.ts';
import { PLAIN, powerDimension, type Rational, rational, sameDimension } from '../../units/index.ts';
import type { PowerSyntax, Syntax } from '../syntax.ts';
import { numberType, onAxes, plainType, unionAxes } from '../type.ts';
import type { PowerNode, Typed } from '../typed.ts';
import { broken, type Context, written } from './context.ts';
import { describe } from './words.ts';

/** The largest denominator of a decimal that counts as an exact fraction (0.5, 0.25, 0.125, 0.2). */
const largestDenominator = 12;

/** `a^b`: a plain base takes any plain exponent, a base with a dimension a constant exact fraction. */
export function checkPower(node: PowerSyntax, context: Context): Typed {
  const base = context.check(node.base);
  const exponent = context.check(node.exponent, plainType);
  const { from, to } = node;
  if (node.base.kind === 'power' || node.exponent.kind === 'power') return broken(node);
  if (base.type.kind === 'unknown' || exponent.type.kind === 'unknown') return broken(node);
  const units = context.scope.units;
  if (base.type.kind !== 'number') {
    const facts = { written: written(context, base), is: describe(base, units), doing: 'raised to a power' };
    context.report(problem('number-wanted', base, facts));
    return broken(node);
  }
  if (exponent.type.kind !== 'number' || !sameDimension(exponent.type.dimension, PLAIN)) {
    const facts = { written: written(context, exponent), is: describe(exponent, units) };
    context.report(problem('exponent-not-plain', exponent, facts));
    return broken(node);
  }
  const axes = unionAxes([base.type.axes, exponent.type.axes]);
  if (sameDimension(base.type.dimension, PLAIN))
    return { kind: 'power', type: onAxes(plainType, axes), from, to, base, exponent } satisfies PowerNode;
  const rationalExponent = exactExponent(node, base, context);
  if (!rationalExponent) return broken(node);
  const dimension = powerDimension(base.type.dimension, rationalExponent);
  const type = numberType(dimension, false, axes);
  return { kind: 'power', type, from, to, base, exponent, rational: rationalExponent } satisfies PowerNode;
}

function exactExponent(node: PowerSyntax, base: Typed, context: Context): Rational | undefined {
  const found = constantFraction(node.exponent);
  const facts = {
    base: written(context, base),
    baseIs: describe(base, context.scope.units),
    exponent: written(context, node.exponent),
  };
  if (found === undefined) {
    context.report(problem('exponent-not-constant', node.exponent, facts));
    return undefined;
  }
  if (typeof found === 'number') {
    const near = nearestFraction(found);
    const { from, to } = node.exponent;
    const fixes = [{ label: `(${near})`, from, to, insert: `(${near})` }];
    context.report(problem('exponent-not-exact', node.exponent, { ...facts, near }, fixes));
    return undefined;
  }
  return found;
}

/** The constant a part is: an exact fraction, a number that is none, or undefined for what is no constant. */
export function constantFraction(node: Syntax): Rational | number | undefined {
  switch (node.kind) {
    case 'number': {
      if (node.unit) return undefined;
      for (let d = 1; d <= largestDenominator; d += 1) {
        const n = Math.round(node.value * d);
        if (Math.abs(n) < 1000 && n / d === node.value) return rational(n, d);
      }
      return node.value;
    }
    case 'group':
      return constantFraction(node.inner);
    case 'negate': {
      const inner = constantFraction(node.operand);
      if (typeof inner === 'object') return rational(-inner.n, inner.d);
      return inner === undefined ? undefined : -inner;
    }
    case 'binary': {
      const left = constantFraction(node.left);
      const right = constantFraction(node.right);
      if (node.op !== '/' || typeof left !== 'object' || typeof right !== 'object' || right.n === 0)
        return undefined;
      return rational(left.n * right.d, left.d * right.n);
    }
    default:
      return undefined;
  }
}

function nearestFraction(x: number): string {
  let best = { n: Math.round(x), d: 1 };
  for (let d = 2; d <= largestDenominator; d += 1) {
    const n = Math.round(x * d);
    if (Math.abs(n / d - x) < Math.abs(best.n / best.d - x) - 1e-12) best = { n, d };
  }
  return best.d === 1 ? `${best.n}` : `${best.n}/${best.d}`;
}
