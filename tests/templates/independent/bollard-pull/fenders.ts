import type { Worked } from '../program.ts';
import { type Entries, largestOf, positive } from './entries.ts';
import type { State } from './sharing.ts';
import { doesNotApply, judge, refused } from './verdicts.ts';

/** A fender: where it stands along the berth, m, its stiffness, kN/m, and the reaction it may give, kN. */
export interface Fender {
  readonly x: number;
  readonly stiffness: number;
  readonly reaction: number;
}

/** Reads the table of fenders. */
export function readFenders(entries: Entries): readonly Fender[] {
  return (entries.rows('moor.fenders') ?? []).map((row) => ({
    x: row.number('x_f'),
    stiffness: positive(row.number('k_f')),
    reaction: positive(row.number('R_f')),
  }));
}

/** How far a fender is pushed in, m: not at all where the ship has moved off. */
export const squeezeOf = (
  { x }: Fender,
  { sway, turn }: { readonly sway: number; readonly turn: number },
): number => Math.max(0, -(sway + turn * x));

/** The largest push on each fender over all states; none is known where the ship is not held in one of them. */
export function workFenders(fenders: readonly Fender[], states: readonly (State | undefined)[]): Worked {
  if (fenders.length === 0) return { 'moor.n_d': 0, 'moor.c_fender': doesNotApply };
  const isHeld = states.every((state) => state !== undefined);
  const pushes = fenders.map((fender) =>
    isHeld
      ? fender.stiffness * largestOf(states, (state) => (state ? squeezeOf(fender, state.share) : 0))
      : Number.NaN,
  );
  const use = pushes.map((push, row) => push / (fenders[row]?.reaction ?? Number.NaN));
  const largest = largestOf(use, (one) => one);
  return {
    'moor.n_d': fenders.length,
    'moor.fenders.F_f': pushes,
    'moor.fenders.U_f': use,
    'moor.c_fender': Number.isNaN(largest) ? refused : judge(largest, 1),
  };
}
