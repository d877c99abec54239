import type { Verdict } from '../program.ts';
import type { Energy } from './energy.ts';
import type { Panel } from './panel.ts';
import type { Ship } from './ship.ts';
import { aboveZero, type Inputs, judge, judgeBelow, ratio, some, someOf } from './values.ts';

/** Piles, springs and plateaus that take the energy in place of rubber. */
export interface Absorber {
  /** What one unit pushes, in kN, when it holds an energy, in kN·m. */
  readonly pushAt: (energy: number) => number;
  /** How far one unit gives way, in mm, when it holds an energy, in kN·m. */
  readonly travelAt: (energy: number) => number;
  /** The part of a push that comes to the wharf; none of it where the ground bears the unit alone. */
  readonly toWharf: number;
  readonly standsFree: boolean;
  readonly numbers: Readonly<
    Record<
      | 'E_b'
      | 'E_i'
      | 'u_c'
      | 'E_2'
      | 'n_E'
      | 'n_on'
      | 'n_p'
      | 'E_c'
      | 'u_r'
      | 'd_p'
      | 'd_s'
      | 'F_k'
      | 'δ_f'
      | 'δ_e'
      | 'δ_s'
      | 'F_y'
      | 'k_e'
      | 'E_f'
      | 'E_s'
      | 'E_l'
      | 'F_l'
      | 'δ_l'
      | 'I_x'
      | 'Z_x'
      | 'h_x'
      | 'δ_p'
      | 't_2'
      | 'x_l'
      | 'A_x'
      | 'A_1'
      | 'A_n'
      | 'E_r'
      | 'F_a'
      | 'F_n'
      | 'f_w'
      | 'R_a'
      | 'p_a'
      | 'q_a'
      | 'd_a'
      | 'r_D'
      | 'r_m',
      number
    >
  >;
  readonly checks: Readonly<
    Record<
      | 'c_l'
      | 'c_bore'
      | 'c_a'
      | 'c_0'
      | 'c_y'
      | 'c_δ'
      | 'c_ys'
      | 'c_tr'
      | 'c_j'
      | 'c_Aj'
      | 'c_EA'
      | 'c_M1'
      | 'c_M2'
      | 'c_Em'
      | 'c_u'
      | 'c_Ra'
      | 'c_pa'
      | 'c_qa'
      | 'c_sa'
      | 'c_f'
      | 'c_D',
      Verdict
    >
  >;
}

/** Works out the absorbers: energies in kN·m, travels in mm, sections in mm. */
export function workAbsorber(
  inputs: Inputs,
  { ship, energy, panel }: { readonly ship: Ship; readonly energy: Energy; readonly panel: Panel },
): Absorber {
  const { number, text } = inputs;
  const [m1, m2, u1, u2] = ['M_1', 'M_2', 'u_1', 'u_2'].map((name) => number(`absorber.${name}`)) as [
    number,
    number,
    number,
    number,
  ];
  const common = ratio(m1 * u1 + m2 * u2, m1 + m2);
  // Two bodies that draw apart do not meet: there is nothing to absorb and no answer.
  const closing = u1 >= u2 ? u1 - u2 : Number.NaN;
  // A body without mass is none: the other meets nothing.
  const between = m1 > 0 && m2 > 0 ? (m1 * m2 * closing ** 2) / (2 * (m1 + m2)) : Number.NaN;
  const meets = text('absorber.E_from') !== 'berthing';
  const allowed = text('absorber.E_from').endsWith('with the allowance') ? energy.numbers.F : 1;
  // Two bodies of one speed have all that is left of their energies: it goes into what holds the second one.
  const left = meets ? (allowed * (m1 + m2) * common ** 2) / 2 : 0;
  const held = text('absorber.second') === 'moored';
  const whole = meets ? allowed * between : energy.numbers.E_A;
  // Against a body that floats the ship loses only that part of her energy by which the other lags behind.
  const least = energy.numbers.E_A * (meets ? ratio(m2, m1 + m2) : 1);
  const one = ratio(whole, number('absorber.n_u'));
  const pile = workPile(inputs, one);
  const used = text('absorber.used');
  // What nobody builds is not judged.
  const where = (chosen: boolean, verdict: Verdict): Verdict =>
    chosen ? verdict : { verdict: 'does not apply' };
  const spring = springs(inputs, one);
  const travel = ratio(one, number('absorber.F_p'));
  const room = roomFor(inputs, used);
  const units = number('absorber.n_u');
  const isPile = used === 'fender piles';
  const pushes: Readonly<Record<string, (energy: number) => number>> = {
    none: () => 0,
    // A pile is an elastic spring: N/mm is kN/m.
    'fender piles': (energy) => elasticPush(pile.stiffness, energy),
    'linear spring': (energy) => elasticPush(spring.k_e, energy),
    // A plateau is reached at once, and pushes as hard all along it.
    'constant force': () => number('absorber.F_p'),
  };
  const pushAt = pushes[used] ?? (() => Number.NaN);
  const travels: Readonly<Record<string, (energy: number) => number>> = {
    none: () => 0,
    // A pile and a spring give way by their push over their stiffness.
    'fender piles': (energy) => 1000 * ratio(elasticPush(pile.stiffness, energy), pile.stiffness),
    'linear spring': (energy) => 1000 * ratio(elasticPush(spring.k_e, energy), number('absorber.k_f')),
    'constant force': (energy) => 1000 * ratio(energy, number('absorber.F_p')),
  };
  const travelAt = travels[used] ?? (() => Number.NaN);
  const [force, gives] = [pushAt(one), travelAt(one)];
  const toWharf = isPile ? pile.held : 1;
  // Piles that stand free push on the ground alone.
  const standsFree = isPile && text('absorber.support') === 'cantilever';
  const onWharf = units * force * toWharf;
  const pressure = ratio(units * force, panel.numbers.A_p);
  const alongLine = ratio(units * force, panel.numbers.b_e);
  return {
    pushAt,
    travelAt,
    toWharf,
    standsFree,
    numbers: {
      E_b: whole,
      E_i: one,
      u_c: common,
      u_r: closing,
      E_2: between,
      E_c: left,
      n_E: some(whole),
      n_on: Number(used !== 'none'),
      n_p: Number(used === 'fender piles'),
      d_p: 1000 * travel,
      ...room,
      E_r: least,
      F_a: force,
      F_n: units * force,
      f_w: pile.held,
      R_a: onWharf,
      p_a: pressure,
      q_a: alongLine,
      d_a: gives,
      d_s: 1000 * ratio(2 * one, number('absorber.F_p')),
      ...spring,
      F_y: ratio(2 * one, number('absorber.y')),
      ...pile.numbers,
    },
    checks: {
      c_l: where(used === 'fender piles', pile.checks.c_l),
      c_δ: where(used === 'fender piles', pile.checks.c_δ),
      c_bore: where(used === 'fender piles', pile.checks.c_bore),
      c_a: where(used === 'fender piles', pile.checks.c_a),
      c_0: where(used !== 'none', someOf(whole)),
      c_f: where(isPile, pile.checks.c_f),
      c_D: where(isPile, pile.checks.c_D),
      c_EA: where(used !== 'none', judge(least, units * one)),
      c_M1: where(used !== 'none' && meets, judge(ship.numbers.M * ship.numbers.C_M, m1)),
      // Common practice: what is lighter is pushed along at once.
      c_M2: where(used !== 'none' && meets, judge(m1 / 20, m2)),
      c_Em: where(used !== 'none' && meets && held, judge(left, number('absorber.E_m'))),
      c_u: where(used !== 'none' && meets, judge(energy.numbers.v_n, closing)),
      c_Ra: where(
        used !== 'none' && !standsFree,
        judge(number('wharf.n_L') * onWharf, number('fender.R_lim')),
      ),
      c_pa: where(used !== 'none' && panel.numbers.belt === 0, judge(pressure, panel.numbers.p_p)),
      c_qa: where(used !== 'none' && panel.numbers.belt === 1, judge(alongLine, number('panel.q_p'))),
      c_sa: where(used !== 'none' && number('energy.C_S') < 1, judge(gives, 150)),
      c_tr: where(used === 'constant force', judge(travel, number('absorber.y'))),
      c_j: where(used !== 'none', judge(room.A_n, number('absorber.A_j'))),
      // Springs and plateaus stand behind the panel of the ship; piles under a cap.
      c_Aj: where(used !== 'none' && !isPile, judge(number('absorber.A_j'), panel.numbers.A_g)),
      c_ys: where(
        used === 'linear spring' && text('absorber.backing') === 'gives',
        judge(spring.δ_s, number('absorber.y_s')),
      ),
      c_y: where(used === 'linear spring', judge(spring.δ_f / 1000, number('absorber.y'))),
    },
  };
}

/** Plan area, in m²: piles stand in a square grid of twice their breadth each way, other units side by side. */
function roomFor({ number, text }: Inputs, used: string) {
  const breadth = number('absorber.D_o') / 1000;
  const outline =
    text('absorber.section') === 'rectangle'
      ? (number('absorber.b_r') / 1000) * (number('absorber.h_r') / 1000)
      : breadth ** 2;
  const unit = used === 'fender piles' ? 2 * 2 * outline : number('absorber.b_u') ** 2;
  return { A_x: outline, A_1: unit, A_n: unit * number('absorber.n_u') };
}

/** An elastic body holds half its force times its travel. */
function elasticPush(stiffness: number, energy: number): number {
  return stiffness * Math.sqrt(ratio(2 * energy, stiffness));
}

function springs({ number, text }: Inputs, energy: number) {
  const rigid = text('absorber.backing') === 'rigid';
  const unit = number('absorber.k_f');
  // A spring without stiffness is none: nothing is in series with it.
  const both = rigid ? unit : 1 / (ratio(1, unit) + ratio(1, number('absorber.k_s')));
  const force = Math.sqrt(2 * both * energy);
  return {
    k_e: both,
    F_k: force,
    δ_f: 1000 * ratio(force, unit),
    δ_e: 1000 * ratio(force, both),
    // In series both bear the same force.
    δ_s: rigid ? 0 : 1000 * ratio(force, number('absorber.k_s')),
    E_f: ratio(force ** 2, 2 * unit),
    E_s: energy - ratio(force ** 2, 2 * unit),
  };
}

/** An elastic pile, by strength of materials. */
function workPile({ number, text }: Inputs, energy: number) {
  const outside = number('absorber.D_o');
  const kind = text('absorber.section');
  const walls = kind === 'pipe' ? 2 * number('absorber.t_w') : 0;
  const depth = kind === 'rectangle' ? number('absorber.h_r') : outside;
  const inside = kind === 'pipe' ? outside - walls : 0;
  const second =
    kind === 'rectangle'
      ? (number('absorber.b_r') * depth ** 3) / 12
      : inside >= 0
        ? (Math.PI / 64) * (outside ** 4 - inside ** 4)
        : Number.NaN;
  const modulus = ratio(second, depth / 2);
  const length = aboveZero(number('absorber.L_p'));
  const simple = text('absorber.support') === 'simple';
  const from = simple ? number('absorber.a_l') : 0;
  // A load over a support or beyond it does not bend the pile.
  const stands = !simple || (from > 0 && from < length);
  const stress = number('absorber.σ');
  const elastic = number('absorber.E_Y');
  // N·mm to kN·m is a million; lengths in m are a thousand mm.
  const takes = stands
    ? ratio((stress * modulus) ** 2 * length * 1000, 6 * elastic * aboveZero(second)) / 1e6
    : Number.NaN;
  // EN 1993-1-1:2005, table 5.2, class 3: 90 ε², where ε² = 235 / f_y × E / 210 000, of the stress that acts.
  const slender = ratio(outside, number('absorber.t_w'));
  const most = 90 * ratio(235, stress) * (elastic / 210_000);
  const [a, b] = [from * 1000, (length - from) * 1000];
  const span = length * 1000;
  const force = simple
    ? stands
      ? ratio(stress * modulus * span, a * b)
      : Number.NaN
    : ratio(stress * modulus, span);
  const bend = simple
    ? ratio(force * a ** 2 * b ** 2, 3 * elastic * second * span)
    : ratio(force * span ** 3, 3 * elastic * second);
  // Elastic: half of stiffness times the square of the deflection is the energy.
  const stiffness = ratio(force, bend);
  const bent = Math.sqrt(ratio(2 * energy * 1e6, stiffness));
  return {
    stiffness,
    // Of a beam the support nearer to the load takes more.
    held: simple ? (stands ? ratio(Math.max(a, b), span) : Number.NaN) : 0,
    numbers: {
      E_l: takes,
      F_l: force / 1000,
      δ_l: bend,
      I_x: second,
      Z_x: modulus,
      h_x: depth,
      δ_p: bent,
      t_2: walls,
      r_D: slender,
      r_m: most,
      x_l: stands ? from : Number.NaN,
    },
    checks: {
      c_l: judge(energy, takes),
      c_δ: judge(bent / 1000, number('absorber.y')),
      c_f: judge(stress, number('absorber.f_y')),
      c_D: kind === 'pipe' ? judge(slender, most) : { verdict: 'does not apply' },
      c_bore: kind === 'pipe' ? judgeBelow(walls, outside) : { verdict: 'does not apply' },
      c_a: simple ? judgeBelow(from, number('absorber.L_p')) : { verdict: 'does not apply' },
    } satisfies Record<string, Verdict>,
  };
}
