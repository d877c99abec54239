import type { Verdict } from '../program.ts';
import type { Capacity, Site } from './capacity.ts';
import { seam } from './ground.ts';
import { type Inputs, type Maybe, withAll } from './inputs.ts';
import { type Quake, quakeChecks } from './liquefaction.ts';
import { check, lines, type Names, where } from './names.ts';
import { partsBetween } from './shaft.ts';
import { mpa } from './small-units.ts';

/** Where friction that hangs on a pile and what carries it are in balance, and the force there: kN and m. */
interface Balance {
  readonly full: number;
  readonly hanging: number;
  readonly depth: number;
}

/** Fellenius, unified design: dead load and friction above the plane = friction below it and the base, all at full value. */
function balanceOf(
  { inputs, bearings, slices }: Site,
  { depth, ring, within }: Capacity,
  dead: Maybe,
): Balance | null {
  const parts = slices.flatMap((slice) =>
    partsBetween(
      inputs,
      [slice],
      Math.max(slice.top, inputs.number('pile.z_ign')),
      Math.min(slice.bottom, depth),
    ).map((part) => {
      const bearing = bearings[part.of];
      const force = withAll(
        [bearing?.friction(part.depth) ?? null, bearing?.rules.perimeter ?? null],
        (friction, perimeter) => friction * perimeter * part.length,
      );
      return { force, length: part.length, bottom: Math.min(slice.bottom, depth) };
    }),
  );
  if (dead === null || ring === null || within === null || parts.some(({ force }) => force === null))
    return null;
  const along = parts.reduce((sum, { force }) => sum + Number(force), 0);
  const full = along + ring + within;
  // Ground that the layers leave out hangs on the head as the dead load does.
  const hanging = Math.max(0, Math.min(along, (full - dead - inputs.number('pile.Q_f')) / 2));
  let above = 0;
  for (const { force, length, bottom } of parts) {
    const below = above + Number(force);
    if (hanging > 0 && below >= hanging * (1 - 1e-12))
      return { full, hanging, depth: bottom - ((below - hanging) / Number(force)) * length };
    above = below;
  }
  return { full, hanging, depth: 0 };
}

/** The lines of the neutral plane, and the pile as a member there. */
export function neutralPlane(
  site: Site,
  capacity: Capacity,
  { dead, drag }: { readonly dead: Maybe; readonly drag: Maybe },
  allowed: Maybe,
  quake: Quake,
): Names {
  const { inputs, section } = site;
  const balance = balanceOf(site, capacity, dead);
  // Drag ends at the plane, and before it where the ground settles to a lesser depth.
  const down =
    balance && drag !== null && capacity.added !== null
      ? Math.min(drag, inputs.number('pile.Q_f') + Number(capacity.added) + balance.hanging)
      : null;
  const force = withAll([dead, down], (own, hung) => own + hung);
  const settling = settlesTo(site, capacity.depth);
  const factor = inputs.text('loads.basis') === 'LRFD' ? 1.25 : 1;
  const stress = withAll([force, section.materialLeft], (axial, area) =>
    area > 0 ? (factor * axial) / area : null,
  );
  return {
    ...lines('loads', {
      R_x: balance?.full ?? null,
      Q_x: balance?.hanging ?? null,
      z_x: balance?.depth ?? null,
      Q_d: down,
      N_x: force,
      k_x: factor,
      σ_x: mpa(stress),
    }),
    'pile.z_σ': settling,
    ...quakeChecks(inputs, quake, balance?.depth ?? null),
    // AASHTO LRFD 3.11.8: clay that a surcharge presses hangs on the pile, down to the neutral plane at most.
    'loads.c_set':
      inputs.number('pile.σ_s') > 0 && settling > 0
        ? check(balance && Math.min(settling, balance.depth), inputs.number('pile.z_n'))
        : { verdict: 'does not apply' },
    'loads.c_np': settles(inputs)
      ? where(force, check(stress, allowed))
      : ({ verdict: 'does not apply' } satisfies Verdict),
  };
}

/** The bottom of the lowest clay, or the tip where that is less deep; none without clay. */
function settlesTo({ bearings }: Site, depth: number): number {
  const clay = bearings.filter(({ layer }) => layer.isClay && layer.bottom - layer.top > seam);
  return Math.max(0, ...clay.map(({ layer }) => Math.min(depth, layer.bottom)));
}

function settles({ number }: Inputs): boolean {
  return number('pile.z_n') > 0 || number('pile.Q_f') > 0;
}
