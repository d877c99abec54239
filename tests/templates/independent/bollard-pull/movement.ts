import type { Verdict, Worked } from '../program.ts';
import { type Entries, sumOf } from './entries.ts';
import type { Force } from './flow.ts';
import { type Line, sharesAlong } from './lines.ts';
import { fromSwayOf, type Rule, type State } from './sharing.ts';
import { doesNotApply, judge, refused } from './verdicts.ts';

/** How far the ship moves in all combinations with all lines, against what the berth permits; none where she is not held in one. */
export function workMovement(
  { number }: Entries,
  lines: readonly Line[],
  rule: Rule,
  forces: readonly Force[],
  states: readonly (State | undefined)[],
  isShared: boolean,
): Worked {
  const moves = states.map((state, row) => {
    const force = forces[row];
    return state && force
      ? { along: alongOf(lines, rule, force, state), across: acrossOf(state, number('ship.LOA')) }
      : { along: Number.NaN, across: Number.NaN };
  });
  const [along, across] = [
    Math.max(...moves.map((move) => move.along)),
    Math.max(...moves.map((move) => move.across)),
  ];
  // Next to no movement is rounding.
  const isSmall = (move: number): boolean => move < 1e-9;
  const verdict = (move: number, allowed: number): Verdict => {
    if (!isShared) return doesNotApply;
    if (Number.isNaN(move)) return refused;
    return isSmall(move) ? { verdict: 'holds' } : judge(move, allowed);
  };
  return {
    ...(!isSmall(along) && { 'moor.x_m': along }),
    ...(!isSmall(across) && { 'moor.y_m': across }),
    'moor.c_surge': verdict(along, number('moor.lim_x')),
    'moor.c_sway': verdict(across, number('moor.lim_y')),
  };
}

/** Where her stem and stern come to by sway and yaw, m. */
function acrossOf({ share }: State, length: number): number {
  const ends = [-length / 2, length / 2].map((x) => Math.abs(share.sway + share.turn * x));
  return Math.max(...ends);
}

/** Surge, m: of the lines that share the load along the berth, or of those against all that pulls along it, if that is more. */
function alongOf(lines: readonly Line[], rule: Rule, force: Force, { share }: State): number {
  if (rule === '3-DOF') return Math.abs(share.surge);
  const pulled = lines.map((line) =>
    line.isOn ? line.along * Math.max(-line.pretension, fromSwayOf(line, rule, share)) : 0,
  );
  const total = force.along + sumOf(pulled, (one) => one);
  const against = sumOf(
    lines.filter((line) => line.isOn && sharesAlong(line) && line.along * total < 0),
    (line) => line.stiffness * line.along ** 2,
  );
  return Math.max(Math.abs(share.surge), against > 0 ? Math.abs(total) / against : 0);
}
