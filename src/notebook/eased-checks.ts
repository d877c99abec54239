import type { Allowance, Engine } from '../engine/index.ts';
import { ChangedLines } from './changed-lines.ts';
import { easedByStated } from './eased-by-stated.ts';
import type { Model } from './model.ts';
import type { EasedRemark } from './result.ts';
import { SIDES } from './stated.ts';

/** Which checks are eased by stated values, as it was worked out last. */
export interface EasedChecks {
  /** What is said of a check; nothing while it, or a line that is named, has changed since or is gone. */
  readonly of: (id: string, model: Model) => EasedRemark | undefined;
  /** Says that these values may have changed. Gives them with the checks of which nothing is said any more for that. */
  readonly forget: (changed: ChangedLines) => ChangedLines;
  /** Works it out, if need be, until the allowance is over; the checks of which something else is said, undefined while more is left. */
  readonly judge: (
    model: Model,
    engine: Engine,
    system: 'SI' | 'US',
    allowance?: Allowance,
  ) => ChangedLines | undefined;
}

const isSide = (text: string): boolean => SIDES.some((side) => side === text);

/** One that has judged nothing yet. */
export function createEasedChecks(): EasedChecks {
  /** What is said now: what may have changed is taken out at once. */
  let known = new Map<string, EasedRemark>();
  let isKnown = false;
  let judging: ReturnType<typeof easedByStated> | undefined;

  return {
    of: (id, model) => {
      const remark = known.get(id);
      return remark?.data.by.every((one) => isSide(one) || model.items.has(one)) ? remark : undefined;
    },
    forget: (changed) => {
      isKnown = false;
      judging = undefined;
      const withdrawn: string[] = [];
      for (const [id, { data }] of known) {
        const isChanged = changed.has(id);
        if (!isChanged && !data.by.some((one) => changed.has(one))) continue;
        known.delete(id);
        if (!isChanged) withdrawn.push(id);
      }
      return withdrawn.length === 0 ? changed : new ChangedLines(changed, withdrawn);
    },
    judge: (model, engine, system, allowance) => {
      if (isKnown) return new ChangedLines([]);
      // What is not computed yet is not computed twice either.
      if (engine.pending) return undefined;
      judging ??= easedByStated(model, engine, system);
      let step = judging.next();
      while (step.done !== true && allowance?.isOver() !== true) step = judging.next();
      if (step.done !== true) return undefined;
      const shown = known;
      known = new Map(step.value);
      isKnown = true;
      judging = undefined;
      const checks = [...shown.keys(), ...known.keys()];
      return new ChangedLines(checks.filter((id) => shown.get(id)?.message !== known.get(id)?.message));
    },
  };
}
