import { problem } from '../../diagnostics/index.ts';
import {
  isTameDimension,
  PLAIN,
  powerDimension,
  type Rational,
  rational,
  sameDimension,
} from '../../units/index.ts';
import type { PowerSyntax, Syntax } from '../syntax.ts';
import { numberType, onAxes, plainType, unionAxes } from '../type.ts';
import type { PowerNode, Typed } from '../typed.ts';
import { broken, type Context, written } from './context.ts';
import { describe } from './words.ts';

/** The denominators of the fractions a decimal may stand for exactly (0.5, 0.25, 0.125, 0.2, 0.05) or rounded (0.33). */
const denominators = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 16, 20] as const;

/** `a^b` as written; of `a^b^c`, which is reported when it is read, only the names are looked up. */
export function checkRaised(node: PowerSyntax, context: Context): Typed {
  if (node.base.kind !== 'power' && node.exponent.kind !== 'power') return checkPower(node, context);
  context.check(node.base);
  context.check(node.exponent);
  return broken(node);
}

/** The power of two parts: a plain base takes any plain exponent, a base with a dimension a constant exact fraction. */
export function checkPower(node: PowerSyntax, context: Context): Typed {
  const base = context.check(node.base);
  const exponent = context.check(node.exponent, plainType);
  const { from, to } = node;
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
  if (!isTameDimension(dimension)) {
    context.report(problem('dimension-too-high', node, { written: written(context, node) }));
    return broken(node);
  }
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
    const near = fractionMeant(found, facts.exponent);
    const { from, to } = node.exponent;
    const fixes = near === '' ? [] : [{ label: `(${near})`, from, to, insert: `(${near})` }];
    context.report(problem('exponent-not-exact', node.exponent, { ...facts, near }, fixes));
    return undefined;
  }
  return found;
}

/** The constant a part is: an exact fraction, a number that is none, or undefined for what is no constant. */
function constantFraction(node: Syntax): Rational | number | undefined {
  switch (node.kind) {
    case 'number': {
      if (node.unit) return undefined;
      for (const d of denominators) {
        const n = Math.round(node.value * d);
        if (n < 1000 && n / d === node.value) return rational(n, d);
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

/** The fraction a decimal is rounded from as far as its digits say, '' if there is none: 0.333 is 1/3, 0.63 none. */
function fractionMeant(x: number, text: string): string {
  const half = 0.5 * 10 ** -(/\.(\d+)/.exec(text)?.[1]?.length ?? 0);
  for (const d of denominators) {
    const n = Math.round(x * d);
    if (Math.abs(n / d - x) <= half * (1 + 1e-9)) return d === 1 ? `${n}` : `${n}/${d}`;
  }
  return '';
}
