import { problem } from '../../../diagnostics/index.ts';
import type { CallNode, EachEvaluator } from '../../../language/index.ts';
import { firstCause, ownFault } from '../cause.ts';
import type { NodeKind } from '../context.ts';
import { finite } from '../operations.ts';
import type { Thunk } from '../stream.ts';
import { liftFunction } from './arithmetic.ts';
import { refusalOf } from './refusal.ts';

/** A function of single numbers, element by element. It never sees NaN. */
export function eachKind(evaluate: EachEvaluator): NodeKind<CallNode> {
  return {
    scalar: (node, compiler, depth) =>
      applied(
        evaluate.of,
        node.args.map((arg) => compiler.scalar(arg, depth)),
      ),
    stream: (node, compiler, depth) => liftFunction(node.args, evaluate.of, compiler, depth),
    cause: (node, finder) => {
      const inner = firstCause(node.args, finder);
      if (inner) return inner;
      const values = node.args.map((arg) => finder.value(arg));
      if (evaluate.refuse) return ownFault(refusalOf(node, evaluate.refuse(values), values, finder));
      return ownFault(problem('too-large', node, { written: finder.written(node) }));
    },
  };
}

function applied(of: (...args: number[]) => number, args: readonly Thunk[]): Thunk {
  const [first, second] = args;
  if (args.length === 1 && first)
    return () => {
      const x = first();
      return !Number.isNaN(x) ? finite(of(x)) : x;
    };
  if (args.length === 2 && first && second)
    return () => {
      const x = first();
      const y = second();
      return !Number.isNaN(x) && !Number.isNaN(y) ? finite(of(x, y)) : Number.NaN;
    };
  const values = args.map(() => 0);
  return () => {
    for (let k = 0; k < args.length; k += 1) {
      const value = (args[k] as Thunk)();
      if (Number.isNaN(value)) return value;
      values[k] = value;
    }
    return finite(of(...values));
  };
}
