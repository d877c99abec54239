import { problem } from '../../../diagnostics/index.ts';
import type { JoinNode } from '../../../language/index.ts';
import type { TextPool } from '../../store/text-pool.ts';
import { firstCause, ownFault } from '../cause.ts';
import type { NodeKind } from '../context.ts';
import { liftFunction } from './arithmetic.ts';

/** `a & b`. */
export const join: NodeKind<JoinNode> = {
  scalar: (node, compiler, depth) => {
    const left = compiler.scalar(node.left, depth);
    const right = compiler.scalar(node.right, depth);
    const of = joined(compiler.world.texts);
    return () => {
      const a = left();
      const b = right();
      return !Number.isNaN(a) && !Number.isNaN(b) ? of(a, b) : Number.NaN;
    };
  },
  stream: (node, compiler, depth) =>
    liftFunction([node.left, node.right], joined(compiler.element.world.texts), compiler, depth),
  cause: (node, finder) =>
    firstCause([node.left, node.right], finder) ?? ownFault(problem('formula-broken', node, {})),
};

function joined(texts: TextPool): (a: number, b: number) => number {
  return (a, b) => texts.codeOf(texts.textOf(a) + texts.textOf(b));
}
