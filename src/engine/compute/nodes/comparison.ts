import { problem } from '../../../diagnostics/index.ts';
import { type CompareNode, comparedSides } from '../../../language/index.ts';
import { EQUALITY } from '../../../units/index.ts';
import type { TextPool } from '../../store/text-pool.ts';
import { firstCause, ownFault } from '../cause.ts';
import { blockStream, type NodeKind, streamsOf } from '../context.ts';
import { order, type Verdicts, verdict, verdictsOf } from '../operations.ts';
import type { Stream } from '../stream.ts';

/** Compares numbers and points to a relative 1e-12 with ties equal, texts by their normal forms, truth values. */
export const compare: NodeKind<CompareNode> = {
  scalar: (node, compiler, depth) => {
    const [a, b] = comparedSides(node);
    const left = compiler.scalar(a, depth);
    const right = compiler.scalar(b, depth);
    const verdicts = verdictsOf[node.op];
    if (!comparesTexts(node)) return () => verdict(verdicts, order(left(), right()));
    const { texts } = compiler.world;
    return () => verdict(verdicts, textOrder(left(), right(), texts));
  },
  stream: (node, compiler, depth) => {
    const [left, right] = streamsOf(comparedSides(node), compiler, depth) as [Stream, Stream];
    const verdicts = verdictsOf[node.op];
    const { texts } = compiler.element.world;
    const kernel = comparesTexts(node) ? compareTexts : compareNumbers;
    return blockStream(compiler, depth, (out, from, count) => {
      left.run(from, count);
      right.run(from, count);
      kernel(left, right, verdicts, out, count, texts);
    });
  },
  cause: (node, finder) =>
    firstCause(comparedSides(node), finder) ??
    ownFault(problem('too-large', node, { written: finder.written(node) })),
};

function comparesTexts(node: CompareNode): boolean {
  return node.left.type.kind === 'text';
}

/** Texts are ordered by their normal forms, character code by character code. */
function textOrder(a: number, b: number, texts: TextPool): number {
  const left = texts.normalOf(a);
  const right = texts.normalOf(b);
  if (left === right) return 0;
  if (Number.isNaN(left) || Number.isNaN(right)) return Number.NaN;
  return texts.textOf(left) < texts.textOf(right) ? -1 : 1;
}

/** `order` and `verdict` in one loop. */
function compareNumbers(a: Stream, b: Stream, of: Verdicts, out: Float64Array, count: number): void {
  const { data: xs, offset: xo, mask: xm } = a;
  const { data: ys, offset: yo, mask: ym } = b;
  const { below, equal, above } = of;
  for (let i = 0; i < count; i += 1) {
    const x = xs[xo + (i & xm)] as number;
    const y = ys[yo + (i & ym)] as number;
    const difference = x - y;
    const margin = EQUALITY * Math.max(Math.abs(x), Math.abs(y));
    if (Math.abs(difference) <= margin) out[i] = equal;
    else out[i] = difference < 0 ? below : difference > 0 ? above : Number.NaN;
  }
}

function compareTexts(
  a: Stream,
  b: Stream,
  of: Verdicts,
  out: Float64Array,
  count: number,
  texts: TextPool,
): void {
  const { data: xs, offset: xo, mask: xm } = a;
  const { data: ys, offset: yo, mask: ym } = b;
  for (let i = 0; i < count; i += 1) {
    out[i] = verdict(of, textOrder(xs[xo + (i & xm)] as number, ys[yo + (i & ym)] as number, texts));
  }
}
