import type { Allowance, Engine } from '../engine/index.ts';
import { ChangedLines } from './changed-lines.ts';
import { easedByStated } from './eased-by-stated.ts';
import type { Model } from './model.ts';
import type { EasedRemark } from './result.ts';
import { SIDES } from './stated.ts';

/** Which checks are eased by stated values, as it was worked out last. */
export interface EasedChecks {
  /** What is said of a check; nothing where a line that it names is gone since. */
  readonly of: (id: string, model: Model) => EasedRemark | undefined;
  /** Says that values may have changed. */
  readonly forget: () => void;
  /** Works it out, if need be, until the allowance is over; the checks whose remark is another, undefined while more is left. */
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
  let known: ReadonlyMap<string, EasedRemark> = new Map();
  let isKnown = false;
  let judging: ReturnType<typeof easedByStated> | undefined;

  return {
    of: (id, model) => {
      const remark = known.get(id);
      return remark?.data.by.every((one) => isSide(one) || model.items.has(one)) ? remark : undefined;
    },
    forget: () => {
      isKnown = false;
      judging = undefined;
    },
    judge: (model, engine, system, allowance) => {
      if (isKnown) return new ChangedLines([]);
      // What is not computed yet is not computed twice either.
      if (engine.pending) return undefined;
      judging ??= easedByStated(model, engine, system);
      let step = judging.next();
      while (step.done !== true && allowance?.isOver() !== true) step = judging.next();
      if (step.done !== true) return undefined;
      const before = known;
      known = step.value;
      isKnown = true;
      judging = undefined;
      const checks = [...before.keys(), ...known.keys()];
      return new ChangedLines(checks.filter((id) => before.get(id)?.message !== known.get(id)?.message));
    },
  };
}
