import type { CallNode, GatherEvaluator } from '../../../language/index.ts';
import { blockStream, type SpaceCompiler, streamsOf } from '../context.ts';
import type { GatherPlan } from '../gather.ts';
import { finite } from '../operations.ts';
import type { Stream } from '../stream.ts';

/** A gathering call none of whose arguments is a whole column, MIN(a; b) on each row: a few values an element. */
export function sampleStream(
  node: CallNode,
  evaluate: GatherEvaluator,
  plan: GatherPlan,
  compiler: SpaceCompiler,
  depth: number,
): Stream {
  const { normalOf } = compiler.element.world.texts;
  const args = [...plan.parts, ...plan.each];
  const streams = streamsOf(
    args.map((arg) => arg.node),
    compiler,
    depth,
  );
  const gathered = plan.parts.length;
  const pool = new Float64Array(gathered);
  const columns = plan.pooled ? [pool] : plan.parts.map((_, at) => pool.subarray(at, at + 1));
  const each = plan.each.map(() => 0);
  return blockStream(compiler, depth, (out, from, count) => {
    for (const stream of streams) stream.run(from, count);
    for (let i = 0; i < count; i += 1) {
      let known = true;
      for (let k = 0; k < streams.length; k += 1) {
        const { data, offset, mask } = streams[k] as Stream;
        let value = data[offset + (i & mask)] as number;
        if (Number.isNaN(value)) known = false;
        else if (args[k]?.normal) value = normalOf(value);
        if (k < gathered) pool[k] = value;
        else each[k - gathered] = value;
      }
      out[i] = known ? finite(evaluate.of(columns, each, node.options)) : Number.NaN;
    }
  });
}
