import type { CallNode, GatherEvaluator } from '../../../language/index.ts';
import { type Answers, answersOn } from '../answers.ts';
import { type Collect, compileCollect } from '../collect.ts';
import { blockStream, type ElementCompiler, type NodeKind, streamsOf } from '../context.ts';
import { type GatherPlan, planGather } from '../gather.ts';
import { finite } from '../operations.ts';
import type { Stream, Thunk } from '../stream.ts';
import { chosenStream } from './chosen-stream.ts';
import { causeInGathered } from './gather-cause.ts';
import { sampleStream } from './sample-stream.ts';

/** An aggregate, a lookup or an interpolation: from whole columns, for each of its elementwise arguments. */
export function gatherKind(evaluate: GatherEvaluator): NodeKind<CallNode> {
  return {
    scalar: (node, compiler, depth) => {
      const plan = planGather(node, evaluate, compiler.world);
      const collect = compileCollect(plan, compiler, depth);
      const each = eachThunks(plan, compiler, depth);
      const values = each.map(() => 0);
      return () => {
        const columns = collect();
        if (!columns) return Number.NaN;
        for (let k = 0; k < each.length; k += 1) {
          const value = (each[k] as Thunk)();
          if (Number.isNaN(value)) return value;
          values[k] = value;
        }
        return finite(evaluate.of(columns, values, node.options));
      };
    },
    stream: (node, compiler, depth) => {
      const plan = planGather(node, evaluate, compiler.element.world);
      if (plan.parts.every((part) => part.space.tables.length === 0))
        return sampleStream(node, evaluate, plan, compiler, depth);
      const alongRows = compiler.space.axes[0]?.fresh !== true;
      if (evaluate.chosen && plan.comparisons && alongRows)
        return chosenStream(evaluate.chosen, plan.comparisons, plan, compiler, depth);
      const nodes = plan.each.map((arg) => arg.node);
      const each = streamsOf(nodes, compiler, depth + 1);
      const inner = depth + 1 + each.reduce((held, stream) => held + stream.holds, 0);
      const collect = compileCollect(plan, compiler.element, inner);
      const { formula, world } = compiler.element;
      const { normalOf } = world.texts;
      const along = alongRows ? formula.table : undefined;
      const perRow = plan.perRow && along !== undefined;
      let columns: ReturnType<Collect>;
      let answers: Answers | undefined;
      if (!perRow)
        compiler.before(() => {
          columns = collect();
          answers = columns && answersOn(evaluate, columns, node.options);
        });
      const values = each.map(() => 0);
      return blockStream(compiler, depth, (out, from, count) => {
        for (const stream of each) stream.run(from, count);
        for (let i = 0; i < count; i += 1) {
          if (perRow) {
            along.row = from + i;
            columns = collect();
          }
          let known = columns !== undefined;
          for (let k = 0; k < each.length; k += 1) {
            const { data, offset, mask } = each[k] as Stream;
            const value = data[offset + (i & mask)] as number;
            values[k] = plan.each[k]?.normal ? normalOf(value) : value;
            if (Number.isNaN(value)) known = false;
          }
          if (!known || !columns) out[i] = Number.NaN;
          else out[i] = finite(answers ? answers.of(values) : evaluate.of(columns, values, node.options));
        }
      });
    },
    cause: (node, finder) => causeInGathered(node, evaluate, finder),
  };
}

function eachThunks(plan: GatherPlan, compiler: ElementCompiler, depth: number): readonly Thunk[] {
  const { normalOf } = compiler.world.texts;
  return plan.each.map(({ node, normal }) => {
    const thunk = compiler.scalar(node, depth);
    return normal ? () => normalOf(thunk()) : thunk;
  });
}
