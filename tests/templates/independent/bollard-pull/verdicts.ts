import type { Verdict } from '../program.ts';

/** Demand against what is allowed: refused where either is no number, failed where nothing is allowed. */
export function judge(demand: number, allowed: number): Verdict {
  if (!Number.isFinite(demand) || Number.isNaN(allowed)) return { verdict: 'refused' };
  if (allowed <= 0) return { verdict: 'fails' };
  return {
    verdict: demand <= allowed ? 'holds' : 'fails',
    ...(demand > 0 && Number.isFinite(allowed) && { utilisation: demand / allowed }),
  };
}

/** A factor of safety against the least one wanted; the more is wanted, the more of it is used. */
export function judgeSafety(wanted: number, safety: number): Verdict {
  return judge(wanted, safety);
}

/** A condition that is met or not. */
export function judgeTruth(isMet: boolean): Verdict {
  return { verdict: isMet ? 'holds' : 'fails' };
}

/** What cannot be judged in this state. */
export const doesNotApply: Verdict = { verdict: 'does not apply' };
/** What has no value to judge. */
export const refused: Verdict = { verdict: 'refused' };
