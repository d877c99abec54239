import { problem } from '../../../diagnostics/index.ts';
import type { BrokenNode, NumberNode, TextNode, TruthNode, Typed } from '../../../language/index.ts';
import { ownFault } from '../cause.ts';
import type { ElementCompiler, NodeKind } from '../context.ts';
import { constantStream } from '../stream.ts';

function constant<N extends Typed>(of: (node: N, compiler: ElementCompiler) => number): NodeKind<N> {
  return {
    scalar: (node, compiler) => {
      const value = of(node, compiler);
      return () => value;
    },
    stream: (node, compiler) => constantStream(of(node, compiler.element)),
    cause: (node) => ownFault(problem('formula-broken', node, {})),
  };
}

/** A number as written, in SI. */
export const number = constant<NumberNode>((node) => node.si);
/** A text, as its code. */
export const text = constant<TextNode>((node, compiler) => compiler.world.texts.codeOf(node.text));
/** TRUE as 1, FALSE as 0. */
export const truth = constant<TruthNode>((node) => (node.value ? 1 : 0));
/** What could not be understood has no value. */
export const broken = constant<BrokenNode>(() => Number.NaN);
