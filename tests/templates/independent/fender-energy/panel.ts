import type { Verdict } from '../program.ts';
import type { Fender } from './fender.ts';
import { degrees, type Inputs, judge, ratio } from './values.ts';

/** The panel: its pressure on the hull, its height of contact, its friction and its chains. */
export interface Panel {
  readonly numbers: Readonly<
    Record<
      | 'p_p'
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
      | 'μ'
      | 'F_μ'
      | 'T_s'
      | 'φ_s'
      | 'φ_s0'
      | 'φ_sp'
      | 'φ_wp'
      | 'T_w'
      | 'φ_w'
      | 'φ_w0'
      | 'MBL_s'
      | 'MBL_w',
      number
    >
  >;
  readonly checks: Readonly<Record<'c_p' | 'c_h' | 'c_z' | 'c_s' | 'c_w', Verdict>>;
}

/** Works out the panel; forces in kN, pressures in kPa. */
export function workPanel(inputs: Inputs, fender: Fender): Panel {
  const { number, text, rows } = inputs;
  const { H_F, δ, d_m, R_d } = fender.numbers;
  const fenderRuns = { height: H_F, deflection: δ, hardest: d_m };
  const force = number('panel.n_f') * R_d;
  const [width, height] = [number('panel.b_p'), number('panel.h_p')];
  const top = number('panel.z_t');
  const bottom = top - height;
  const aboveBed = bottom - number('ship.z_b');
  const hullTop = number('panel.z_LW') + number('panel.f_S');
  const covered = Math.min(top, hullTop) - bottom;
  // The flat of the panel lies between its bevels; only what the hull reaches of it is pressed.
  const flatWidth = Math.max(width - 2 * number('panel.e_b'), 0);
  const bevel = number('panel.e_h');
  const pressedHeight = Math.max(Math.min(top - bevel, hullTop) - (bottom + bevel), 0);
  const area = flatWidth * pressedHeight;
  const allowed =
    rows('data.pressure')
      .find((row) => row.text('ship_kind') === text('panel.hull'))
      ?.number('p_t') ?? Number.NaN;
  const friction =
    rows('data.friction')
      .find((row) => row.text('pair') === text('panel.face'))
      ?.number('μ_high') ?? Number.NaN;
  const along = friction * force;
  const shear = chain(inputs, 's', along, fenderRuns);
  const weight = chain(inputs, 'w', along + number('panel.W_p'), fenderRuns);
  const safety = number('panel.SF_c');
  const breaking = number('panel.MBL');
  return {
    numbers: {
      p_p: allowed,
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
      μ: friction,
      F_μ: along,
      T_s: shear.tension,
      φ_s: shear.pressed,
      φ_sp: shear.hardest,
      φ_s0: shear.first,
      T_w: weight.tension,
      φ_w: weight.pressed,
      φ_wp: weight.hardest,
      φ_w0: weight.first,
      MBL_s: safety * shear.tension,
      MBL_w: safety * weight.tension,
    },
    checks: {
      c_p: judge(ratio(force, area), allowed),
      c_h: judge((number('panel.o_min') / 100) * height, covered),
      c_z: { verdict: Number.isNaN(aboveBed) ? 'refused' : aboveBed > 0 ? 'holds' : 'fails' },
      c_s: judge(safety * shear.tension, breaking),
      c_w: judge(safety * weight.tension, breaking),
    },
  };
}

interface Chain {
  readonly first: number;
  readonly pressed: number;
  readonly hardest: number;
  readonly tension: number;
}

/** How far the fender stands out, how far it gives way, and where on that way it pushes hardest; in mm. */
type Runs = Readonly<Record<'height' | 'deflection' | 'hardest', number>>;

/**
 * A chain from the wharf to the panel, pin to pin: its run out from the wharf shortens as the fender is pressed. The force
 * along the panel follows the reaction, so the chain is loaded most where the fender pushes hardest or where it slants most.
 */
function chain({ number }: Inputs, kind: 's' | 'w', force: number, runs: Runs): Chain {
  const length = number(`panel.L_${kind}`);
  const run = runs.height / 1000 - number(`panel.a_${kind}`);
  const first = Math.asin(ratio(run, length));
  const at = (deflection: number): number => Math.asin(ratio(run - deflection / 1000, length)) + 0 * first;
  const [pressed, hardest] = [at(runs.deflection), at(runs.hardest)];
  return {
    first: degrees(first),
    pressed: degrees(pressed),
    hardest: degrees(hardest),
    tension: force / (number(`panel.n_${kind}`) * Math.min(Math.cos(pressed), Math.cos(hardest))),
  };
}
