import type { Verdict } from '../program.ts';
import type { Fender } from './fender.ts';
import type { Ship } from './ship.ts';
import { belted } from './tables.ts';
import { degrees, type Inputs, judge, ofRubber, ratio, someOf } from './values.ts';

/** The panel: its pressure on the hull, its height of contact, its friction and its chains. */
export interface Panel {
  readonly numbers: Readonly<
    Record<
      | 'p_p'
      | 'M_lo'
      | 'M_hi'
      | 'p'
      | 'R_p'
      | 'A_p'
      | 'b_e'
      | 'y_e'
      | 'A_g'
      | 'p_g'
      | 'o_h'
      | 'z_p'
      | 'z_h'
      | 'h_LW'
      | 'z_HW'
      | 'z_f'
      | 'o_f'
      | 'z_bL'
      | 'z_bH'
      | 'o_u'
      | 'n_b'
      | 'μ'
      | 'F_μ'
      | 'T_s'
      | 'φ_s'
      | 'φ_s0'
      | 'T_w'
      | 'φ_w'
      | 'φ_w0'
      | 'MBL_s'
      | 'MBL_w'
      | 'n_2'
      | 'belt'
      | 'q_b',
      number
    >
  >;
  readonly texts: Readonly<Record<'side', string>>;
  /** In each row of the performance curve. */
  readonly way: Readonly<Record<'i' | 'd_i' | 'R_i' | 's_si' | 'T_si' | 's_wi' | 'T_wi', readonly number[]>>;
  readonly checks: Readonly<
    Record<
      | 'c_p'
      | 'c_qb'
      | 'c_lo'
      | 'c_hi'
      | 'c_A'
      | 'c_fit'
      | 'c_h'
      | 'c_z'
      | 'c_LW'
      | 'c_tide'
      | 'c_any'
      | 'c_HW'
      | 'c_bed'
      | 'c_of'
      | 'c_bk'
      | 'c_bo'
      | 'c_bL'
      | 'c_bH'
      | 'c_nv'
      | 'c_vf'
      | 'c_fb'
      | 'c_fh'
      | 'c_ou'
      | 'c_s'
      | 'c_w'
      | 'c_as'
      | 'c_aw'
      | 'c_asd'
      | 'c_awd'
      | 'c_ns'
      | 'c_nw'
      | 'c_SF',
      Verdict
    >
  >;
}

/** Works out the panel; forces in kN, pressures in kPa. */
export function workPanel(inputs: Inputs, ship: Ship, fender: Fender): Panel {
  const { number, text, rows } = inputs;
  const { H_F, δ, d_RPD, R_RPD, k_R, R_d } = fender.numbers;
  const force = number('panel.n_f') * R_d;
  const [width, height] = [number('panel.b_p'), number('panel.h_p')];
  const top = number('panel.z_t');
  const bottom = top - height;
  const aboveBed = bottom - number('ship.z_b');
  const dry = top - number('panel.z_LW');
  const tide = number('ship.z_w') - number('panel.z_LW');
  const atLow = number('panel.z_LW') - number('ship.z_b');
  const atBerthing = number('ship.z_w') - number('ship.z_b');
  const hullTop = number('panel.z_LW') + number('panel.f_S');
  const covered = Math.min(top, hullTop) - bottom;
  const contact = workContact(inputs, ship, { top, bottom, covered });
  // The flat of the panel lies between its bevels; only what the hull reaches of it is pressed.
  const flatWidth = Math.max(width - 2 * number('panel.e_b'), 0);
  const bevel = number('panel.e_h');
  const pressedHeight = Math.max(Math.min(top - bevel, hullTop) - (bottom + bevel), 0);
  const area = flatWidth * pressedHeight;
  const ofHull = rows('data.pressure').find((row) => row.text('ship_kind') === text('panel.hull'));
  const [allowed, smallest, largest] = ['p_t', 'M_lo', 'M_hi'].map(
    (column) => ofHull?.number(column) ?? Number.NaN,
  ) as [number, number, number];
  const onBelting = belted.includes(text('panel.hull'));
  const idle: Verdict = { verdict: 'does not apply' };
  const friction =
    rows('data.friction')
      .find((row) => row.text('pair') === text('panel.face'))
      ?.number('μ_high') ?? Number.NaN;
  const along = friction * force;
  // Up to what the wharf is designed for, the panel is pushed as hard as its units are where they stand.
  const way = fender.curve.points.map(([deflection, part]) => ({
    deflection: deflection * d_RPD,
    reaction: R_d === 0 ? 0 : Math.min(1, ratio(R_RPD * k_R * part, R_d)) * force,
  }));
  const pressed = { height: H_F, deflection: δ, reaction: force, way };
  const shear = chain(inputs, 's', { ...pressed, friction, hung: 0 });
  const weight = chain(inputs, 'w', { ...pressed, friction, hung: number('panel.W_p') });
  const safety = number('panel.SF_c');
  // A stiff body hangs on two chains a unit; a third is slack.
  const together = number('panel.n_f') + number('panel.n_f');
  const breaking = number('panel.MBL');
  return {
    numbers: {
      p_p: allowed,
      M_lo: smallest,
      M_hi: largest,
      p: ratio(force, area),
      R_p: force,
      A_p: area,
      b_e: flatWidth,
      y_e: pressedHeight,
      A_g: width * height,
      p_g: ratio(force, width * height),
      o_h: covered,
      z_p: bottom,
      z_h: hullTop,
      h_LW: atLow,
      ...contact.numbers,
      μ: friction,
      F_μ: along,
      T_s: shear.tension,
      φ_s: shear.pressed,
      φ_s0: shear.first,
      T_w: weight.tension,
      φ_w: weight.pressed,
      φ_w0: weight.first,
      MBL_s: safety * shear.tension,
      MBL_w: safety * weight.tension,
      n_2: together,
      belt: Number(onBelting),
      q_b: ratio(force, flatWidth),
    },
    texts: {
      side: onBelting
        ? 'a belting: no permitted pressure, look at the line load'
        : 'a flat side, with a permitted pressure',
    },
    way: {
      i: way.map((_, row) => row + 1),
      d_i: way.map(({ deflection }) => deflection),
      R_i: way.map(({ reaction }) => reaction),
      s_si: shear.sines,
      T_si: shear.tensions,
      s_wi: weight.sines,
      T_wi: weight.tensions,
    },
    checks: {
      // What the side of a small ship bears is too much for that of a large one.
      c_lo: judge(ship.numbers.s_b * smallest, ship.numbers.M),
      c_hi: judge(ship.numbers.M, largest),
      c_A: judge(area, width * height),
      c_h: judge((number('panel.o_min') / 100) * height, covered),
      c_z: { verdict: Number.isNaN(aboveBed) ? 'refused' : aboveBed > 0 ? 'holds' : 'fails' },
      c_LW: { verdict: Number.isNaN(dry) ? 'refused' : dry > 0 ? 'holds' : 'fails' },
      c_tide: { verdict: Number.isNaN(tide) ? 'refused' : tide >= 0 ? 'holds' : 'fails' },
      c_any: text('ship.tide') === 'any water' ? judge(atBerthing, atLow) : idle,
      c_bed: { verdict: Number.isNaN(atLow) ? 'refused' : atLow > 0 ? 'holds' : 'fails' },
      c_HW: judge(atBerthing, atLow + number('panel.d_T')),
      ...contact.checks,
      ...ofRubber(inputs, {
        // A belting presses along a line, a flat side on an area.
        c_p: onBelting ? idle : judge(ratio(force, area), allowed),
        c_qb: onBelting ? judge(ratio(force, flatWidth), number('panel.q_p')) : idle,
        c_fit: judge(number('panel.n_f') * (H_F / 1000) ** 2, width * height),
        c_vf: judge(number('panel.n_v'), number('panel.n_f')),
        ...judgeRoom(inputs, { unit: H_F / 1000, width, height }, contact.numbers.n_b),
        c_asd: judge(number('panel.a_s') * 1000, H_F - δ),
        c_awd: judge(number('panel.a_w') * 1000, H_F - δ),
        c_ns: judge(number('panel.n_s'), together),
        c_nw: judge(number('panel.n_w'), together),
        c_SF: judge(2, safety),
        c_s: judge(safety * shear.tension, breaking),
        c_w: judge(safety * weight.tension, breaking),
        c_as: judge(number('panel.a_s') * 1000, H_F),
        c_aw: judge(number('panel.a_w') * 1000, H_F),
      }),
    },
  };
}

/**
 * Where the design ship meets the panel as the water rises: she floats up by the whole tide, and her side turns in to the
 * bilge some way above the keel. A belting rises with her.
 */
function workContact(
  inputs: Inputs,
  ship: Ship,
  { top, bottom, covered }: { readonly top: number; readonly bottom: number; readonly covered: number },
) {
  const { number, text } = inputs;
  const height = top - bottom;
  const low = number('panel.z_LW');
  const high = low + number('panel.d_T');
  const keelAtHigh = high - ship.numbers.D;
  const flatFrom = keelAtHigh + (number('panel.b_k') / 100) * ship.numbers.B;
  const coveredAtHigh = Math.min(height, top - flatFrom);
  const share = number('panel.o_min') / 100;
  const [lowest, highest] = [number('panel.k_lo'), number('panel.k_hi')];
  const beltAtLow = low - ship.numbers.D + lowest;
  const beltAtHigh = keelAtHigh + highest;
  // Of a belting half its height is on the face as soon as its middle is.
  const bevel = number('panel.e_h');
  const aboveEdge = beltAtLow - (bottom + bevel);
  const belowEdge = top - bevel - beltAtHigh;
  const units = number('panel.n_f');
  const tiers = number('panel.n_v');
  // Each tier has an equal part of the height; the hull covers all of them but the last, and of that the least share.
  const part = ratio(height, Math.max(tiers, 1));
  const toLast = height - part + share * part;
  // Piles stand up from the bed and have no panel.
  const hasPanel = text('absorber.used') !== 'fender piles';
  const onBelting = belted.includes(text('panel.hull'));
  const where = (chosen: boolean, verdict: Verdict): Verdict =>
    chosen ? verdict : { verdict: 'does not apply' };
  const ofBelting = (verdict: Verdict): Verdict => where(onBelting && hasPanel, verdict);
  const ofUnits = (verdict: Verdict): Verdict => where(units > 1, verdict);
  const noLess = (spare: number): Verdict => ({
    verdict: Number.isNaN(spare) ? 'refused' : spare >= 0 ? 'holds' : 'fails',
  });
  return {
    numbers: {
      z_HW: high,
      z_f: flatFrom,
      o_f: coveredAtHigh,
      z_bL: beltAtLow,
      z_bH: beltAtHigh,
      o_u: toLast,
      // Tiers that are not full take as much room as those that are.
      n_b: Math.ceil(units / Math.max(tiers, 1) - 1e-12),
    },
    checks: {
      c_of: where(!onBelting && hasPanel, judge(share * height, coveredAtHigh)),
      c_bk: ofBelting(someOf(lowest)),
      c_bo: ofBelting(judge(lowest, highest)),
      c_bL: ofBelting(noLess(aboveEdge)),
      c_bH: ofBelting(noLess(belowEdge)),
      ...ofRubber(inputs, {
        c_nv: ofUnits(someOf(tiers)),
        c_ou: ofUnits(judge(toLast, Math.min(covered, coveredAtHigh))),
      }),
    },
  };
}

/** Units are about as broad as high; how many stand side by side is known of one, and where the tiers are entered. */
function judgeRoom(
  { number }: Inputs,
  { unit, width, height }: Readonly<Record<'unit' | 'width' | 'height', number>>,
  beside: number,
): Readonly<Record<'c_fb' | 'c_fh', Verdict>> {
  const tiers = number('panel.n_v');
  const idle: Verdict = { verdict: 'does not apply' };
  const isKnown = number('panel.n_f') === 1 || tiers > 0;
  return {
    c_fb: isKnown ? judge(beside * unit, width) : idle,
    c_fh: isKnown ? judge(Math.max(tiers, 1) * unit, height) : idle,
  };
}

/** Angles in degrees; sines and tensions in each row of the performance curve, and the greatest tension of all. */
interface Chain {
  readonly first: number;
  readonly pressed: number;
  readonly tension: number;
  readonly sines: readonly number[];
  readonly tensions: readonly number[];
}

/** How far the fender stands out and gives way, how hard the panel is pushed at the end and on the way; in mm and kN. */
interface Pressed {
  readonly height: number;
  readonly deflection: number;
  readonly reaction: number;
  readonly way: readonly { readonly deflection: number; readonly reaction: number }[];
  readonly friction: number;
  readonly hung: number;
}

/**
 * A chain from the wharf to the panel, pin to pin: its run out from the wharf shortens as the fender is pressed, and the
 * force along the panel follows the reaction. It is loaded most somewhere on the way: early it slants more, later the
 * fender pushes harder.
 */
function chain({ number, text }: Inputs, kind: 's' | 'w', pressed: Pressed): Chain {
  const length = number(`panel.L_${kind}`);
  const count = number(`panel.n_${kind}`);
  const run = pressed.height / 1000 - number(`panel.a_${kind}`);
  // Of a fender that is not built no chain slants.
  const out = text('absorber.used') === 'none' ? run : 0;
  const first = out === 0 ? 0 : Math.asin(ratio(out, length));
  const sineAt = (deflection: number): number => ratio(out - deflection / 1000, length) + 0 * first;
  const pull = (reaction: number, sine: number): number =>
    ratio(pressed.friction * reaction + pressed.hung, count * Math.cos(Math.asin(sine)));
  const end = pull(pressed.reaction, sineAt(pressed.deflection));
  const sines = pressed.way.map(({ deflection }) => sineAt(deflection));
  const tensions = pressed.way.map(({ deflection, reaction }, row) => {
    if (Number.isNaN(deflection + pressed.deflection)) return Number.NaN;
    const isOnTheWay = deflection <= pressed.deflection * (1 + 1e-12);
    const pulled = pull(reaction, sines[row] ?? Number.NaN);
    if (kind === 'w') return isOnTheWay ? pulled : 0;
    return isOnTheWay && reaction > 0 ? pulled : 0 * reaction;
  });
  return {
    first: degrees(first),
    pressed: degrees(Math.asin(sineAt(pressed.deflection))),
    tension: Math.max(end, ...tensions),
    sines,
    tensions,
  };
}
