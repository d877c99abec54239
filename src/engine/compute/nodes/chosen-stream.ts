import type { ChosenValues } from '../../../language/index.ts';
import { type Choose, chooseRows } from '../choose-rows.ts';
import { cannotRun } from '../collect.ts';
import { blockStream, type SpaceCompiler, streamsOf } from '../context.ts';
import { type GatheredPart, type GatherPlan, isTooMuch } from '../gather.ts';
import { finite } from '../operations.ts';
import type { Separated } from '../separate.ts';
import { sizeOf } from '../space.ts';
import type { Stream } from '../stream.ts';

/** A function of the rows of a table that compare with this row: the table is sorted once, and searched on each row. */
export function chosenStream(
  made: ChosenValues,
  comparisons: readonly Separated[],
  plan: GatherPlan,
  compiler: SpaceCompiler,
  depth: number,
): Stream {
  const { element } = compiler;
  const { normalOf } = element.world.texts;
  const [condition, value] = plan.parts as readonly [GatheredPart, GatheredPart | undefined];
  const owns = streamsOf(
    comparisons.map(({ own }) => own),
    compiler,
    depth + 1,
  );
  const inner = depth + 1 + owns.reduce((held, stream) => held + stream.holds, 0);
  const sides = comparisons.map(({ gathered }) => element.whole(gathered, condition.space, inner));
  const values = value && element.whole(value.node, condition.space, inner);
  const isText = comparisons.map(({ own }) => own.type.kind === 'text');
  let choose: Choose | undefined;
  let size = 0;
  compiler.before(() => {
    choose = undefined;
    size = sizeOf(condition.space);
    if (plan.parts.some(cannotRun) || isTooMuch(plan)) return;
    const columns = sides.map((side, at) => (isText[at] ? side().map(normalOf) : side()));
    const chosenFrom = values?.() ?? columns[0] ?? new Float64Array();
    if (![...columns, chosenFrom].every(isKnown)) return;
    choose = chooseRows(
      comparisons.map(({ op }, at) => ({ op, keys: columns[at] as Float64Array })),
      chosenFrom,
      made,
    );
  });
  const sought = owns.map(() => 0);
  return blockStream(compiler, depth, (out, from, count) => {
    for (const own of owns) own.run(from, count);
    for (let i = 0; i < count; i += 1) {
      // Over no rows no key is looked at.
      let known = true;
      for (let k = 0; k < owns.length; k += 1) {
        const { data, offset, mask } = owns[k] as Stream;
        const key = data[offset + (i & mask)] as number;
        sought[k] = isText[k] ? normalOf(key) : key;
        if (Number.isNaN(key) && size > 0) known = false;
      }
      out[i] = known && choose ? finite(choose(sought)) : Number.NaN;
    }
  });
}

function isKnown(values: Float64Array): boolean {
  for (let at = 0; at < values.length; at += 1) if (Number.isNaN(values[at])) return false;
  return true;
}
