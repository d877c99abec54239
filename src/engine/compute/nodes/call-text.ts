import { problem } from '../../../diagnostics/index.ts';
import type { CallNode, TextEvaluator } from '../../../language/index.ts';
import type { TextPool } from '../../store/text-pool.ts';
import { firstCause, ownFault } from '../cause.ts';
import type { NodeKind } from '../context.ts';
import { finite } from '../operations.ts';
import { liftFunction } from './arithmetic.ts';
import { refusalOf } from './refusal.ts';

/** A function of texts and numbers, element by element; texts are decoded for it and its text is encoded. */
export function textKind(evaluate: TextEvaluator): NodeKind<CallNode> {
  const onCodes = (node: CallNode, texts: TextPool) => {
    const isText = node.args.map((arg) => arg.type.kind === 'text');
    return (...args: number[]): number => {
      const decoded = args.map((arg, at) => (isText[at] ? texts.textOf(arg) : arg));
      const result = evaluate.of(decoded, node.options);
      if (result === undefined) return Number.NaN;
      return typeof result === 'string' ? texts.codeOf(result) : finite(result);
    };
  };
  return {
    scalar: (node, compiler, depth) => {
      const args = node.args.map((arg) => compiler.scalar(arg, depth));
      const of = onCodes(node, compiler.world.texts);
      return () => {
        const values = args.map((arg) => arg());
        return values.some(Number.isNaN) ? Number.NaN : of(...values);
      };
    },
    stream: (node, compiler, depth) =>
      liftFunction(node.args, onCodes(node, compiler.element.world.texts), compiler, depth),
    cause: (node, finder) => {
      const inner = firstCause(node.args, finder);
      if (inner) return inner;
      const values = node.args.map((arg) => finder.value(arg));
      const decoded = values.map((value, at) =>
        node.args[at]?.type.kind === 'text' ? finder.textOf(value) : value,
      );
      const refusal = evaluate.refuse?.(decoded);
      if (refusal) return ownFault(refusalOf(node, refusal, values, finder));
      return ownFault(problem('too-large', node, { written: finder.written(node) }));
    },
  };
}
