import type { Verdict } from '../program.ts';
import type { Berth } from './berth.ts';
import { pressTo } from './curve.ts';
import { type Inputs, judge, ratio } from './values.ts';

/** A ship that comes in along the berth presses every fender or absorber along her flat side. */
export interface FlatBerthing {
  readonly numbers: Readonly<
    Record<
      | 'N_fl'
      | 'N_lo'
      | 'n_fl'
      | 'E_fl'
      | 'u_fl'
      | 'R_fe'
      | 'R_fl'
      | 'R_ft'
      | 'E_ff'
      | 'F_ff'
      | 'd_ff'
      | 'P_ff'
      | 'R_f1'
      | 'R_d1'
      | 'r_dr'
      | 'r_fl'
      | 'r_w'
      | 'N_up'
      | 'N_dn'
      | 'N_d'
      | 'N_k'
      | 'x_d'
      | 'd_k'
      | 'R_dk'
      | 'e_1'
      | 'e_2'
      | 'H_fb',
      number
    >
  >;
  readonly shares: readonly number[];
  readonly checks: Readonly<
    Record<'c_m' | 'c_Rf' | 'c_Hf' | 'c_Ef' | 'c_lf' | 'c_yf' | 'c_sf' | 'c_hf' | 'c_pf' | 'c_qf', Verdict>
  >;
}

/** A bent of the deck unit: where it stands and how stiff it is. */
interface Bent {
  readonly s: number;
  readonly k: number;
}

/** What stiff bents do against a force and against turning. */
interface Deck {
  readonly whole: number;
  readonly centre: number;
  readonly second: number;
}

/** Kinetic energy without turning, shared by all the units in contact; forces in kN, lengths in m. */
export function workFlatBerthing(
  inputs: Inputs,
  { ship, energy, fender, panel, absorber }: Berth,
  bents: readonly Bent[],
  deck: Deck,
): FlatBerthing {
  const { number, text } = inputs;
  const spacing = number('wharf.S');
  const isRubber = text('absorber.used') === 'none';
  const behind = number(isRubber ? 'panel.n_f' : 'absorber.n_u');
  const along = number('wharf.l_f') * ship.numbers.L_OA;
  const fenders = floorOf(ratio(along, spacing)) + 1;
  // Where one stands just beyond her flat side, one fewer touches; she lies against one at least.
  const fewest = Math.max(1, fenders - 1);
  const units = behind * fewest;
  const others = ['C_S', 'C_C', 'C_g', 'C_d'].map((name) => number(`energy.${name}`));
  const { v_n, F } = energy.numbers;
  const moving = (ship.numbers.M * ship.numbers.C_M * v_n ** 2) / 2;
  const whole = others.reduce((product, one) => product * one, moving * F);
  const share = ratio(whole, units * fender.numbers.E_st);
  // No rubber is pressed where none is built.
  const part = !isRubber ? 0 : Number.isNaN(share) ? share : Math.min(1, share);
  const onTheWay = fender.numbers.R_RPD * fender.numbers.k_R * pressTo(fender.curve, part).peak;
  const takes = fender.numbers.E_u <= fender.numbers.E_av;
  const pushed = text('fender.R_basis') === 'rated' ? fender.numbers.R_max : onTheWay;
  const reaction = takes ? pushed : Number.NaN;
  // The energy between two bodies that meet has no turning in it to leave out.
  const met = text('absorber.E_from') === 'berthing' ? whole : absorber.numbers.E_b;
  const each = ratio(met, units);
  const push = absorber.pushAt(each);
  const travel = absorber.travelAt(each);
  const onHull = behind * (isRubber ? reaction : push);
  const atOne = behind * (isRubber ? reaction : push * absorber.toWharf);
  const drawnAtOne = isRubber ? behind * fender.numbers.R_d : absorber.numbers.R_a;
  const drawn = ratio(drawnAtOne, spacing);
  const flat = ratio(atOne, spacing);
  const factor = number('wharf.n_L');
  const perMetre = factor * Math.max(drawn, flat);

  const at = number('wharf.x_R');
  const places = bents.map(({ s }) => s);
  const up = floorOf(ratio(Math.max(...places) - at, spacing));
  const down = floorOf(ratio(at - Math.min(...places), spacing));
  const onDeck = up + down + 1;
  const touching = Math.min(onDeck, fenders);
  const middle = at + (spacing * (up - down)) / 2;
  // Of a row of fenders those at either end may be the ones that she touches.
  const apart = ((onDeck - touching) * spacing) / 2;
  const force = factor * touching * atOne;
  const shareAt = ({ s, k }: Bent, arm: number): number =>
    Math.abs(force * ratio(k, deck.whole) + ratio(force * arm * k * (s - deck.centre), deck.second));
  const arms = [middle - deck.centre + apart, middle - deck.centre - apart] as const;
  const shares = bents.map((bent) => Math.max(...arms.map((arm) => shareAt(bent, arm))));
  const hardest = Math.max(...shares);
  const limit = number('wharf.r_lim');
  const comes = !absorber.standsFree;
  const idle: Verdict = { verdict: 'does not apply' };
  return {
    numbers: {
      N_fl: fenders,
      N_lo: fewest,
      n_fl: units,
      E_fl: whole,
      u_fl: part,
      R_fe: onTheWay,
      R_fl: reaction,
      // 22 TCN 222-95, 1.2, has its factor on every load that a ship brings into the structure.
      R_ft: factor * fenders * atOne,
      E_ff: each,
      F_ff: push,
      d_ff: travel,
      P_ff: onHull,
      R_f1: atOne,
      R_d1: drawnAtOne,
      r_dr: drawn,
      r_fl: flat,
      r_w: perMetre,
      N_up: up,
      N_dn: down,
      N_d: onDeck,
      N_k: touching,
      x_d: middle,
      d_k: apart,
      R_dk: force,
      e_1: arms[0],
      e_2: arms[1],
      H_fb: hardest,
    },
    shares,
    checks: {
      c_m: comes && limit > 0 ? judge(perMetre, limit) : idle,
      c_Rf: comes ? judge(factor * atOne, number('fender.R_lim')) : idle,
      c_Hf: comes ? judge(hardest, number('wharf.H_a')) : idle,
      ...workUnits(inputs, { fender, panel, absorber }, { whole, units, each, push, travel, onHull }),
    },
  };
}

/** What a ship that comes in flat asks of each unit: she turns away from none of them. */
function workUnits(
  { number, text }: Inputs,
  { fender, panel, absorber }: Pick<Berth, 'fender' | 'panel' | 'absorber'>,
  {
    whole,
    units,
    each,
    push,
    travel,
    onHull,
  }: Readonly<Record<'whole' | 'units' | 'each' | 'push' | 'travel' | 'onHull', number>>,
) {
  const used = text('absorber.used');
  const where = (applies: boolean, verdict: () => Verdict): Verdict =>
    applies ? verdict() : { verdict: 'does not apply' };
  const isBuilt = used !== 'none';
  const before = number('absorber.h_a');
  const isOnSide = panel.numbers.belt === 0;
  return {
    c_Ef: where(!isBuilt, () => judge(ratio(whole, units), fender.numbers.E_av)),
    c_lf: where(used === 'fender piles', () => judge(each, absorber.numbers.E_l)),
    c_yf: where(isBuilt, () => judge(travel / 1000, number('absorber.y'))),
    c_sf: where(used === 'linear spring' && text('absorber.backing') === 'gives', () =>
      judge(1000 * ratio(push, number('absorber.k_s')), number('absorber.y_s')),
    ),
    c_hf: where(isBuilt && text('fender.system') !== 'dolphin', () =>
      judge((number('wharf.c_C') / 100) * before, before - travel / 1000),
    ),
    c_pf: where(isOnSide, () => judge(ratio(onHull, panel.numbers.A_p), panel.numbers.p_p)),
    c_qf: where(!isOnSide, () => judge(ratio(onHull, panel.numbers.b_e), number('panel.q_p'))),
  } satisfies Record<string, Verdict>;
}

/** Whole spacings; what is a whole number but for rounding is one. */
function floorOf(value: number): number {
  return Math.floor(value + 1e-12);
}
