import type { Worked } from '../program.ts';
import { type Entries, isCount, positive } from './entries.ts';
import { judge, judgeTruth } from './verdicts.ts';

/** Works out the weakest link of one line, its sag, and the turns that hold it. */
export function workRope(entries: Entries, gravity: number): Worked {
  return { ...workLink(entries), ...workSag(entries, gravity), ...workTurns(entries) };
}

/** The least of the line at its working limit, the winch brake at 60 % and the fitting shared by its lines. */
function workLink({ number }: Entries): Worked {
  const strength = number('rope.MBL_1');
  const line = (number('rope.lim_1') / 100) * strength;
  const brake = 0.6 * strength;
  const fitting = number('rope.SWL_1') / number('rope.n_1');
  const least = Math.min(line, brake, fitting);
  const links = { line, 'winch brake': brake, fitting };
  const near = Object.entries(links).filter(([, force]) => force <= least * (1 + 1e-9));
  return {
    'rope.c_n1': judgeTruth(isCount(number('rope.n_1'))),
    'rope.F_line': line,
    'rope.F_br': brake,
    'rope.F_fit': fitting,
    'rope.F_ship': 1.25 * strength,
    'rope.F_weak': least,
    ...(Number.isNaN(least)
      ? { 'rope.weak': null }
      : near.length === 1 && { 'rope.weak': near[0]?.[0] ?? null }),
  };
}

/** Sag below the chord at mid-span: the parabola of supports at any levels; at one level the catenary, solved until it stands still. */
function workSag({ number }: Entries, gravity: number): Worked {
  const [span, given] = [positive(number('rope.l')), number('rope.f_g')];
  const [sag, rise] = [positive(given), number('rope.d_h')];
  const weight = (positive(number('rope.w_m')) * gravity) / 1000;
  const chord = Math.hypot(span, rise);
  const whole = weight * chord;
  // The half of the line beyond mid-span turns about its support: its weight a quarter of the span from it.
  const flat = ((whole / 2) * (span / 4)) / sag;
  const [upper, lower] = [(4 * sag + rise) / span, (4 * sag - rise) / span];
  const ratio = given / span;
  const parameter = rise === 0 ? solveCatenary(span, sag) : Number.NaN;
  return {
    'rope.w': weight,
    'rope.l_d': chord,
    'rope.H_p': flat,
    'rope.V_p': flat * upper,
    'rope.V_q': flat * lower,
    'rope.T_p': flat * Math.hypot(1, upper),
    'rope.T_q': flat * Math.hypot(1, lower),
    'rope.τ_p': (Math.atan(upper) * 180) / Math.PI,
    'rope.L_p': rise === 0 ? span * (1 + (8 / 3) * ratio ** 2 - (32 / 5) * ratio ** 4) : null,
    'rope.L_d': chord * (1 + (8 / 3) * ((given * span) / chord ** 2) ** 2),
    'rope.c': parameter,
    'rope.T_c0': weight * parameter,
    'rope.T_c': weight * (parameter + sag),
    'rope.L_c': 2 * parameter * Math.sinh(span / (2 * parameter)),
  };
}

/** The parameter of the catenary of this span and sag, by halving: the sag falls as the parameter grows. */
function solveCatenary(span: number, sag: number): number {
  if (Number.isNaN(span + sag)) return Number.NaN;
  const sagOf = (parameter: number): number => 2 * parameter * Math.sinh(span / (4 * parameter)) ** 2;
  // sag = c (cosh(l/2c) - 1) lies above l²/8c, so the parameter lies above l²/8f, and below that plus the sag.
  let [low, high] = [span ** 2 / (8 * sag), span ** 2 / (8 * sag) + sag];
  for (let halving = 0; halving < 200; halving += 1) {
    const middle = (low + high) / 2;
    if (sagOf(middle) > sag) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Belt friction fitted to a trial in which the line pulls harder than the tail is held. */
function workTurns({ number }: Entries): Worked {
  const [hold, line] = [positive(number('rope.T_h')), number('rope.T_l')];
  const trial = { 'rope.c_trial': judge(hold, line) };
  // A trial in which the tail pulls as hard as the line shows no friction.
  if (line <= hold) return trial;
  const friction = positive(Math.log(line / hold)) / (2 * Math.PI * number('rope.n_t'));
  const asked = number('rope.T_3');
  const turns = Math.log(asked / hold) / (2 * Math.PI * friction);
  return {
    ...trial,
    'rope.μ': friction,
    'rope.T_2': hold * Math.exp(2 * Math.PI * friction * number('rope.n_2')),
    // How many turns hold less than the tail itself is left open.
    ...(!(asked < hold) && { 'rope.n_3': turns }),
  };
}
