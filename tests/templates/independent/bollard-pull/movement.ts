import type { Verdict, Worked } from '../program.ts';
import { type Entries, sumOf } from './entries.ts';
import type { Force } from './flow.ts';
import { type Line, sharesAlong } from './lines.ts';
import { fromSwayOf, type Rule, type State } from './sharing.ts';
import { doesNotApply, judge } from './verdicts.ts';

/** A state of the mooring under a load: held or not, with one of the lines lost or none. */
export interface Moored {
  readonly force: Force;
  readonly state: State | undefined;
  /** The row of the line lost. */
  readonly lost?: number;
}

/** A ship that nothing holds drives off: farther than any that is held. */
const adrift = 1000;

/** How far the ship moves in all combinations with all lines, and with any one lost, against what the berth permits. */
export function workMovement(
  { number }: Entries,
  lines: readonly Line[],
  rule: Rule,
  { whole, losses }: { readonly whole: readonly Moored[]; readonly losses: readonly Moored[] },
  isShared: boolean,
): Worked {
  const farthest = (moored: readonly Moored[]): { readonly along: number; readonly across: number } => {
    const moves = moored.map(({ force, state, lost }) => {
      const left = lines.filter((_, row) => row !== lost);
      return state
        ? { along: alongOf(left, rule, force, state), across: acrossOf(state, number('ship.LOA')) }
        : { along: adrift, across: adrift };
    });
    return {
      along: Math.max(...moves.map((move) => move.along)),
      across: Math.max(...moves.map((move) => move.across)),
    };
  };
  const [all, lost] = [farthest(whole), farthest([...whole, ...losses])];
  // Next to no movement is rounding.
  const isSmall = (move: number): boolean => move < 1e-9;
  const verdict = (move: number, allowed: number): Verdict => {
    if (!isShared) return doesNotApply;
    return isSmall(move) ? { verdict: 'holds' } : judge(move, allowed);
  };
  const [surge, sway, more] = [number('moor.lim_x'), number('moor.lim_y'), number('moor.f_l')];
  return {
    ...(!isSmall(all.along) && { 'moor.x_m': all.along }),
    ...(!isSmall(all.across) && { 'moor.y_m': all.across }),
    ...(!isSmall(lost.along) && { 'moor.x_l': lost.along }),
    ...(!isSmall(lost.across) && { 'moor.y_l': lost.across }),
    'moor.c_surge': verdict(all.along, surge),
    'moor.c_sway': verdict(all.across, sway),
    'moor.c_xl': verdict(lost.along, more * surge),
    'moor.c_yl': verdict(lost.across, more * sway),
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
