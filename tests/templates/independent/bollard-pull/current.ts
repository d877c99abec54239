import type { Worked } from '../program.ts';
import { type Entries, positive } from './entries.ts';
import {
  type Direction,
  type Force,
  forceAtPerpendiculars,
  type Heading,
  headingOf,
  knot,
  otherDirections,
} from './flow.ts';
import { areaRatios, currentCurves, readCurve } from './published.ts';
import type { Ship } from './ship.ts';
import { tabulated } from './tables.ts';
import { doesNotApply, judge, judgeTruth } from './verdicts.ts';

/** Works out the current on the ship by the form that was chosen, from the direction entered and from each other one. */
export function workCurrent(
  entries: Entries,
  ship: Ship,
): { readonly force: Force; readonly others: readonly Direction[]; readonly worked: Worked } {
  const { number, text } = entries;
  const knots = number('current.V_c');
  const method = text('current.method');
  const { force, worked } = forceFrom(entries, ship, headingOf(number('current.θ_c')), knots);
  const asked = otherDirections(entries, 'current.from');
  const others = asked.map(({ angle, part }): Direction => {
    return { angle, force: forceFrom(entries, ship, headingOf(angle), knots * part).force };
  });
  const fastest = knots * Math.max(1, ...asked.map(({ part }) => part));
  return {
    force,
    others,
    worked: {
      ...worked,
      // None is as much as none that is asked for.
      'current.c_V': number('current.V_m') > 0 ? judge(number('current.V_m'), knots) : judgeTruth(true),
      ...workRound(text('current.ways'), [number('current.θ_c'), ...asked.map(({ angle }) => angle)]),
      'current.c_kind': method === 'OCIMF' ? judgeTruth(ship.kind.isAsTanker) : doesNotApply,
      // Common practice: three quarters of Eq. 11 of UFC 4-159-03 (2005) at least.
      'current.c_Cb':
        method === 'general'
          ? judge(
              0.75 * Math.max(Number(worked['current.C_yc']), Number(worked['current.C_yn'])),
              number('current.C_cb'),
            )
          : doesNotApply,
      'current.c_C1':
        method === 'UFC'
          ? judge(Number(worked['current.C_yn']), Number(worked['current.C_yc']))
          : doesNotApply,
      'current.from.F_Xi': others.map((one) => one.force.along),
      'current.from.F_Yi': others.map((one) => one.force.off),
      'current.from.M_i': others.map((one) => one.force.moment),
      // The coefficient with no clearance is read up to this speed; other forms do not use it.
      'current.c_depth': method === 'OCIMF' ? judge(1.1, ship.depth / ship.draught) : doesNotApply,
      'current.C1_range': method === 'UFC' ? judge(fastest * knot, 1.5) : doesNotApply,
    },
  };
}

/** A river runs one way; a tide turns about, within 20 deg of opposite; elsewhere as for the wind. */
const gaps: Readonly<Record<string, number>> = { 'one way': 360, 'both ways': 200, 'any way': 45 };

/** The widest sector, deg, out of which no direction is looked at. */
function workRound(ways: string, angles: readonly number[]): Worked {
  const inOrder = angles.toSorted((one, other) => one - other);
  const widest = Math.max(
    ...inOrder.map((angle, at) => (inOrder[at + 1] ?? (inOrder[0] ?? angle) + 360) - angle),
  );
  return { 'current.g_m': widest, 'current.c_round': judge(widest, gaps[ways] ?? Number.NaN) };
}

/** The force of a current of so many knots from one direction. */
function forceFrom(
  entries: Entries,
  ship: Ship,
  heading: Heading,
  knots: number,
): { readonly force: Force; readonly worked: Worked } {
  const { number, text } = entries;
  const speed = knots * knot;
  const pressure = (ship.density * speed ** 2) / 2000;
  const { sine, cosine, side } = heading;
  const method = text('current.method');
  const ufc = ufcForm(entries, ship, heading, speed, pressure);
  const tankerPressure = text('wind.form') === 'SI' ? pressure : (ship.density * knots ** 2) / 7600;
  const tanker = tankerForm(entries, ship, heading, tankerPressure);
  const along =
    method === 'OCIMF'
      ? tanker.force.along
      : method === 'UFC'
        ? ufc.along
        : pressure * number('current.C_ch') * ship.breadth * ship.draught * cosine;
  const across = method === 'UFC' ? ufc.across : number('current.C_cb');
  const off =
    method === 'OCIMF' ? tanker.force.off : pressure * across * ship.waterline * ship.draught * sine * side;
  const moment = method === 'OCIMF' ? tanker.force.moment : number('current.m_c') * off * ship.waterline;
  return {
    force: { along, off, moment },
    worked: {
      'current.q': pressure,
      'current.θ_r': heading.reduced,
      ...(side !== 0 && { 'current.s_c': side }),
      ...ufc.worked,
      ...tanker.worked,
      'current.F_X': along,
      'current.F_Y': off,
      'current.M': moment,
    },
  };
}

/** UFC 4-159-03 (2005), Eq. 11 to 13 across and Eq. 15 to 23 along the ship. */
function ufcForm(
  { number, text }: Entries,
  ship: Ship,
  { cosine }: Heading,
  speed: number,
  pressure: number,
): { readonly along: number; readonly across: number; readonly worked: Worked } {
  const { waterline, breadth, draught, depth, volume } = ship;
  const midshipArea = ship.midship * breadth * draught;
  const hull = (waterline ** 2 * midshipArea) / (breadth * volume);
  const deep = 0.22 * Math.sqrt(hull);
  const across = deep + (number('current.C_1') - deep) * (draught / depth) ** number('current.K');

  const form = pressure * breadth * draught * number('current.C_xb') * cosine;
  const wetted = 1.7 * draught * waterline + volume / draught;
  const reynolds = (speed * waterline * Math.abs(cosine)) / positive(ship.viscosity);
  const friction = 0.075 / (Math.log10(Math.max(reynolds, 1e5)) - 2) ** 2;
  const rubbing = pressure * wetted * friction * cosine;
  const ratio = areaRatios[text('current.ship_kind')] ?? Number.NaN;
  const plane = (waterline * breadth) / ratio;
  const blades = plane / (1.067 - 0.229 * number('current.p_d'));
  const propeller = pressure * blades * number('current.C_pr') * cosine;
  const along = form + rubbing + propeller;
  return {
    along,
    across,
    worked: {
      'current.χ': hull,
      'current.C_0': deep,
      'current.C_yc': across,
      // The power 3 is that of a few model tests, 2 that of most: between draught and no draught the lowest curve.
      'current.C_yn': deep * (1 - (draught / depth) ** 3) + 3.2 * (draught / depth) ** 3,
      'current.F_form': form,
      'current.S': wetted,
      'current.R_N': reynolds,
      'current.C_xa': friction,
      'current.F_fric': rubbing,
      'current.A_R': ratio,
      'current.A_Tpp': plane,
      'current.A_p': blades,
      'current.F_prop': propeller,
      // A share of no drag is left open.
      ...(along !== 0 && { 'current.r_prop': propeller / along }),
    },
  };
}

function tankerForm(
  entries: Entries,
  ship: Ship,
  { reduced, side }: Heading,
  pressure: number,
): { readonly force: Force; readonly worked: Worked } {
  const along = entries.text('wind.state') === 'loaded' ? 'CX_l' : 'CX_b';
  const read = (name: 'CX_l' | 'CX_b' | 'CA_l' | 'CF_l'): number =>
    readCurve(tabulated(entries, 'current.ocimf', 'a_c', name) ?? currentCurves[name], reduced);
  const coefficients = { along: read(along), aft: read('CA_l'), fore: read('CF_l') };
  const underwater = ship.draught * ship.between;
  const { force, aft, fore } = forceAtPerpendiculars({
    coefficients,
    pressure,
    side,
    endArea: underwater,
    sideArea: underwater,
    between: ship.between,
  });
  return {
    force,
    worked: {
      'current.C_X': coefficients.along,
      'current.C_A': coefficients.aft,
      'current.C_F': coefficients.fore,
      'current.q_o': pressure,
      'current.F_A': aft,
      'current.F_F': fore,
    },
  };
}
