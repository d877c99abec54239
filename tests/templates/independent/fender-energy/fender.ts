import type { Verdict } from '../program.ts';
import { type Curve, pressTo, readCurve } from './curve.ts';
import type { Energy } from './energy.ts';
import type { Ship } from './ship.ts';
import {
  degrees,
  type Inputs,
  judge,
  ofRubber,
  type Row,
  radians,
  ratio,
  straightBetween,
} from './values.ts';

/** What the fender takes and what it passes on to the wharf. */
export interface Fender {
  readonly numbers: Readonly<
    Record<
      | 'n'
      | 'E_u'
      | 'E_av'
      | 'E_req'
      | 'u_N'
      | 'R_d'
      | 'R_tot'
      | 'E_RPD'
      | 'R_RPD'
      | 'd_RPD'
      | 'H_F'
      | 'q'
      | 'r_p'
      | 'u_A'
      | 'r_A'
      | 'u_S'
      | 'θ_h'
      | 'θ'
      | 'AF'
      | 't_c'
      | 'k_E'
      | 'k_R'
      | 'A_c'
      | 'δ'
      | 'E_st'
      | 'R_e'
      | 'R_max'
      | 'n_ok',
      number
    >
  > & { readonly v_max: number | undefined };
  readonly texts: Readonly<Record<'within' | 'pick', string | null>>;
  readonly checks: Readonly<
    Record<
      'c_E' | 'c_R' | 'c_d' | 'c_r' | 'c_q' | 'c_VF' | 'c_TF' | 'c_AG' | 'c_k' | 'c_soft' | 'c_θ',
      Verdict
    >
  >;
  readonly curve: Curve;
  readonly offers: readonly Offer[];
  /** What berthings of other speeds would bring to one unit, and the share of what it can take. */
  readonly bySpeed: readonly Readonly<Record<'speed' | 'energy' | 'share', number>>[] | undefined;
}

/** One fender of those on offer. */
export interface Offer {
  readonly size: string;
  readonly energy: number;
  readonly reaction: number;
  readonly use: 'yes' | 'no' | null;
}

/** Works out the fender: PIANC WG 33 (2002), 4.6 and appendix A. Deflections in mm. */
export function workFender(inputs: Inputs, ship: Ship, energy: Energy): Fender {
  const { number, text, rows } = inputs;
  const { E_A, E_N, F, f_E, v_n } = energy.numbers;
  const behindPanel = number('panel.n_f');
  const sharing =
    text('fender.system') === 'shared' ? Math.max(number('fender.n_c'), behindPanel) : behindPanel;
  // Beside an absorber no rubber is built: nothing comes to it, and nothing of it is wanting.
  const isBuilt = text('absorber.used') === 'none';
  const one = isBuilt ? ratio(E_A, sharing) : 0;

  const horizontal = number('energy.α');
  const vertical = number('fender.θ_v');
  const inclined = degrees(Math.acos(Math.cos(radians(horizontal)) * Math.cos(radians(vertical))));
  const anglePoints = rows('data.angles').map((row) => [row.number('θ_t'), row.number('AF_t')] as const);
  const angleFactor = isBuilt ? angleAt(anglePoints, inclined) : 1;
  const tolerance = number('fender.tol') / 100;
  const soft = product(inputs, ['VF_min', 'TF_min', 'AG_min']) * angleFactor * (1 - tolerance);
  const stiff = product(inputs, ['VF_max', 'TF_max', 'AG_max']) * (1 + tolerance);

  const chosen = rows('fender.fenders').find((row) => row.text('size') === text('fender.fender_size'));
  const rated = ratings(chosen);
  const available = rated.energy * soft;
  const curve = readCurve(rows('fender.performance'));
  const pressed = pressTo(curve, ratio(one, available));
  const stiffEnergy = rated.energy * stiff;
  const onTheWay = pressTo(curve, ratio(one, stiffEnergy)).peak;
  const greatest = rated.reaction * stiff * curve.peak;
  const q = ratio(rated.energy, (rated.reaction * rated.deflection) / 1000);
  const pushed = text('fender.R_basis') === 'rated' ? greatest : rated.reaction * stiff * onTheWay;
  // Beyond what it can take nobody knows how hard the fender pushes, not even where there is nothing to take.
  const reaction = one <= available ? pushed : Number.NaN;
  // The factor of the code on loads from ships: 22 TCN 222-95, 1.2.
  const [limit, factor] = [number('fender.R_lim'), number('wharf.n_L')];
  const offers = rows('fender.fenders').map((row) => {
    const offer = ratings(row);
    const [takes, gives] = [offer.energy * soft, offer.reaction * stiff * curve.peak];
    return {
      size: row.text('size'),
      energy: takes,
      reaction: gives,
      use: use(one, takes, gives * behindPanel * factor, limit),
    };
  });
  // Where the ship does not move, or nobody says how fast, there is no berthing to scale from.
  const moves = v_n > 0 && (one > 0 || !isBuilt);
  const heavy = ship.numbers.M * ship.numbers.C_M * f_E * F;
  const bySpeed = Array.from({ length: 15 }, (_, row) => {
    const speed = 0.02 * (row + 1);
    const energyAt = isBuilt ? (heavy * speed ** 2) / 2 / sharing : 0;
    return { speed, energy: energyAt, share: ratio(energyAt, available) };
  });
  const judged = offers.every((offer) => offer.use !== null);
  const good = offers.filter((offer) => offer.use === 'yes');
  return {
    numbers: {
      n: sharing,
      E_u: one,
      E_av: available,
      E_req: ratio(one, soft),
      u_N: ratio(E_N, sharing * available),
      v_max: !isBuilt ? 0 : moves ? Math.sqrt(ratio(2 * available * sharing, heavy)) : undefined,
      R_d: reaction,
      R_tot: reaction * sharing,
      E_RPD: rated.energy,
      R_RPD: rated.reaction,
      d_RPD: rated.deflection,
      H_F: rated.height,
      q,
      r_p: curve.peak,
      u_A: ratio(one, available),
      r_A: pressed.reaction,
      u_S: ratio(one, stiffEnergy),
      θ_h: horizontal,
      θ: inclined,
      AF: angleFactor,
      t_c: ratio(rated.deflection / 1000, number('fender.f_c') * v_n),
      k_E: soft,
      k_R: stiff,
      A_c: curve.area,
      δ: pressed.deflection * rated.deflection,
      E_st: stiffEnergy,
      R_e: rated.reaction * stiff * onTheWay,
      R_max: greatest,
      n_ok: judged ? good.length : Number.NaN,
    },
    texts: {
      within: !(Number.isFinite(one) && Number.isFinite(available))
        ? null
        : one <= available
          ? 'yes'
          : 'no: it cannot take the energy, so there is no reaction to check',
      pick: judged ? (good[0]?.size ?? 'none') : null,
    },
    checks: ofRubber(inputs, {
      // The same rubber at the same speed and warmth: it cannot take more than it pushes back.
      c_VF: judge(number('fender.VF_min'), number('fender.VF_max')),
      c_TF: judge(number('fender.TF_min'), number('fender.TF_max')),
      c_AG: judge(number('fender.AG_min'), number('fender.AG_max')),
      c_k: judge(soft, stiff),
      // PIANC WG 33 (2002), 4.2.6: only a stiff fender lets the hull take its part.
      c_soft:
        number('energy.C_S') < 1
          ? judge(pressed.deflection * rated.deflection, 150)
          : { verdict: 'does not apply' },
      // Beyond the last angle nobody certifies what is left of its energy.
      c_θ: judge(inclined, Math.max(...anglePoints.map(([angle]) => angle))),
      c_E: judge(one, available),
      c_R: judge(reaction * behindPanel * factor, limit),
      c_d: judge(rated.deflection, 0.75 * rated.height),
      c_r: judge(1, curve.peak),
      c_q: judge(Math.abs(q - curve.area), (number('fender.t_q') / 100) * curve.area),
    }),
    curve,
    offers,
    bySpeed: moves ? bySpeed : undefined,
  };
}

function use(demand: number, takes: number, gives: number, limit: number): 'yes' | 'no' | null {
  if (![demand, takes, gives, limit].every(Number.isFinite)) return null;
  return demand <= takes && gives <= limit ? 'yes' : 'no';
}

/** Certified values of a fender. */
function ratings(
  row: Row | undefined,
): Readonly<Record<'energy' | 'reaction' | 'deflection' | 'height', number>> {
  const cell = (column: string): number => row?.number(column) ?? Number.NaN;
  return {
    energy: cell('E_rated'),
    reaction: cell('R_rated'),
    deflection: cell('d_rated'),
    height: cell('H'),
  };
}

function product({ number }: Inputs, names: readonly string[]): number {
  return names.reduce((sum, name) => sum * number(`fender.${name}`), 1);
}

/** The factor at an angle. Rounding of the arc cosine at zero does not move it off a table that begins there. */
function angleAt(points: readonly (readonly [number, number])[], angle: number): number {
  const nearest = points.find(([x]) => Math.abs(x - angle) < 1e-6);
  return nearest ? nearest[1] : straightBetween(points, angle);
}
