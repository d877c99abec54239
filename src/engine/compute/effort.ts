import { type CallNode, type GatherEvaluator, partsOf, type Typed } from '../../language/index.ts';
import type { Effort, Formula } from '../store/cells.ts';
import type { World } from './context.ts';
import { type GatherPlan, gatheredSize, planGather, workOf } from './gather.ts';

/** How much work a formula is, judged by its aggregates and lookups. */
export function effortOf(formula: Formula, world: World): Effort {
  formula.effort ??= judge(formula, world);
  return formula.effort;
}

function judge({ typed }: Formula, world: World): Effort {
  const plans = callsIn(typed).map(([node, evaluate]) => planGather(node, evaluate, world));
  return {
    ofValue: () => plans.reduce((sum, plan) => sum + workOf(plan), 1),
    ofRow: () => plans.reduce((sum, plan) => sum + effortOnARow(plan), 1),
  };
}

function callsIn(node: Typed): readonly (readonly [CallNode, GatherEvaluator])[] {
  const inside = partsOf(node).flatMap(callsIn);
  return node.kind === 'call' && node.fn.evaluate.kind === 'gather'
    ? [...inside, [node, node.fn.evaluate]]
    : inside;
}

function effortOnARow(plan: GatherPlan): number {
  if (!plan.perRow || plan.comparisons?.length === 1) return 1;
  return gatheredSize(plan) * (plan.comparisons ? 1 : plan.weight);
}
