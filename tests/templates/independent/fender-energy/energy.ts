import type { Verdict } from '../program.ts';
import { workCodes } from './codes.ts';
import type { Ship } from './ship.ts';
import { typeOfHull } from './tables.ts';
import {
  aboveZero,
  degrees,
  type Inputs,
  judge,
  radians,
  ratio,
  some,
  someOf,
  straightBetween,
} from './values.ts';

/** The speed, the contact and the energy of the ship that berths. */
export interface Energy {
  readonly numbers: Readonly<
    Record<
      | 'E_0'
      | 'E_1'
      | 'f_E'
      | 'f_4'
      | 'E_N'
      | 'F_AB'
      | 'F_h'
      | 'n_E'
      | 'F'
      | 'E_A'
      | 'ln_M'
      | 'v'
      | 'v_n'
      | 'f_v'
      | 'x'
      | 'R'
      | 'γ'
      | 'C_E'
      | 'K_0'
      | 'l_E'
      | 'C_E_0'
      | 'n_code'
      | 'C_lo'
      | 'C_hi'
      | 'C_hlo'
      | 'C_hhi'
      | 'x_o'
      | 'x_t'
      | 'x_h'
      | 'v_a'
      | 'M_L'
      | 'W'
      | 'E_W0'
      | 'E_W1'
      | 'E_WN'
      | 'E_WA',
      number
    >
  >;
  readonly texts: Readonly<Record<'type_h' | 'code', string | null>>;
  readonly checks: Readonly<
    Record<
      | 'c_low'
      | 'c_high'
      | 'c_v'
      | 'c_v0'
      | 'c_va'
      | 'c_size'
      | 'c_0'
      | 'c_4'
      | 'c_CC'
      | 'c_Cg'
      | 'c_Cd'
      | 'c_end'
      | 'c_type'
      | 'c_stem'
      | 'c_out'
      | 'c_CE'
      | 'c_code'
      | 'c_fine'
      | 'c_full'
      | 'c_hfine'
      | 'c_hfull'
      | 'c_kind'
      | 'c_Br',
      Verdict
    >
  >;
}

/** Works out the berthing energy in kN·m, of t and m/s. */
export function workEnergy(inputs: Inputs, ship: Ship): Energy {
  const { number, text, rows } = inputs;
  const { M, C_M, K, L_BP, B, C_B, dC, s_b } = ship.numbers;
  const angle = number('energy.α');
  const { v, normal, part } = speeds(inputs, M);
  const contact = text('energy.contact');
  const x = contact === 'midship' ? 0 : L_BP * (distances[contact] ?? Number.NaN);
  const lever = Math.hypot(x, B / 2);
  const velocityAngle = 90 - angle - degrees(Math.asin(ratio(B / 2, lever)));
  const eccentricity =
    eccentricities[text('energy.C_E_rule')]?.({ K, x, lever, velocityAngle, angle }) ?? Number.NaN;
  const others = ['C_S', 'C_C', 'C_g', 'C_d'].reduce(
    (product, name) => product * number(`energy.${name}`),
    1,
  );
  const share = eccentricity * others;
  const least = leastShare({ x, beam: B, angle }, C_B, L_BP);
  const alone = (M * normal ** 2) / 2;
  const normalEnergy = alone * C_M * share;
  const abnormal = abnormalFactor(inputs, text('energy.ship_type'));
  const hullType = typeOfHull(text('panel.hull'));
  const ofHull = abnormalFactor(inputs, hullType);
  const [ofType, ofHulls] = [text('energy.ship_type'), hullType].map((type) => fullness(inputs, type)) as [
    Fullness,
    Fullness,
  ];
  const codes = workCodes(inputs);
  const cellOf = (type: string, column: string): number =>
    rows('data.abnormal')
      .find((one) => one.text('type') === type)
      ?.number(column) ?? Number.NaN;
  const [ofItsType, ofItsHull] = [cellOf(text('energy.ship_type'), 'x_o'), cellOf(hullType, 'x_o')];
  // A ship touches where both say that she can.
  const reach = Math.min(ofItsType, ofItsHull);
  const large = cellOf(text('energy.ship_type'), 'M_L');
  const easiest = rows('data.brolsma').map(
    (one) => [Math.log(one.number('M50')), Math.log(one.number('a'))] as const,
  );
  const slowest = Math.exp(heldBetween(easiest, Math.log(aboveZero(M))));
  const saysLargest = text('energy.safety') === 'abnormal factor' && text('energy.ship_size') === 'largest';
  const idle: Verdict = { verdict: 'does not apply' };
  const factors: Readonly<Record<string, number>> = {
    'abnormal factor': abnormal,
    'partial energy factor': number('energy.γ_E'),
    none: 1,
  };
  const factor = factors[text('energy.safety')] ?? Number.NaN;
  // The weight form: the weight in tf is the number of tonnes, 1 tf being 9.80665 kN whatever g the form divides by.
  const weight = M * 9.80665;
  const weightForm = (weight * normal ** 2) / (2 * number('energy.g'));
  return {
    numbers: {
      E_0: alone,
      E_1: alone * C_M,
      f_E: share,
      f_4: others,
      E_N: normalEnergy,
      F_AB: abnormal,
      F_h: ofHull,
      n_E: some(factor * normalEnergy),
      F: factor,
      E_A: factor * normalEnergy,
      ln_M: Math.log(aboveZero(M)),
      v,
      f_v: part,
      v_n: normal,
      x,
      R: lever,
      γ: velocityAngle,
      C_E: eccentricity,
      K_0: least.gyration,
      l_E: least.arm,
      C_E_0: least.share,
      n_code: codes.count,
      C_lo: ofType.least,
      C_hi: ofType.most,
      C_hlo: ofHulls.least,
      C_hhi: ofHulls.most,
      x_t: ofItsType,
      x_h: ofItsHull,
      x_o: reach,
      v_a: slowest,
      M_L: large,
      W: weight,
      E_W0: weightForm,
      E_W1: weightForm * C_M,
      E_WN: weightForm * C_M * share,
      E_WA: weightForm * C_M * share * factor,
    },
    texts: { type_h: hullType, code: codes.first },
    checks: {
      // A ship that comes end-on moves less water, and does not turn about the point of contact.
      c_end: text('ship.C_M_rule') === 'end-on' ? judge(0.9, eccentricity) : idle,
      // One design ship is of one type.
      c_kind:
        text('energy.safety') === 'abnormal factor'
          ? { verdict: text('energy.ship_type') === hullType ? 'holds' : 'fails' }
          : idle,
      c_Br:
        text('energy.speed_from') === 'Brolsma curve'
          ? shownBy(
              rows('data.brolsma').map((one) => one.number('M50')),
              M,
            )
          : idle,
      c_type: text('energy.safety') === 'abnormal factor' ? judge(ofHull, abnormal) : idle,
      c_fine: text('energy.safety') === 'abnormal factor' ? judge(ofType.least - dC, C_B) : idle,
      c_full: text('energy.safety') === 'abnormal factor' ? judge(C_B, ofType.most) : idle,
      c_hfine: judge(ofHulls.least - dC, C_B),
      c_hfull: judge(C_B, ofHulls.most),
      c_CE: judge(least.share, eccentricity),
      // Where nothing is taken off for turning, it does not matter how far out she is touched.
      c_out: eccentricity >= 0.999 ? idle : judge(x + 0 * eccentricity, reach * L_BP),
      c_size: saysLargest ? judge(s_b * large, M) : idle,
      c_code: judge(1, codes.count),
      c_4: judge(0.7, others),
      // PIANC WG 33 (2002), 4.2.7; the two others as UFC 4-152-01 has them.
      c_CC: angle > 5 ? judge(1, number('energy.C_C')) : idle,
      c_Cg: judge(0.85, number('energy.C_g')),
      c_Cd: judge(0.9, number('energy.C_d')),
      c_stem: judge(2 * x, ship.numbers.L_BP),
      c_0: someOf(factor * normalEnergy),
      c_low: judge(1.1, factor),
      c_high: judge(factor, 2),
      c_v: judge(number('energy.v_min'), normal),
      // From memory: slower only where every approach is measured.
      c_v0: judge(0.08, normal),
      c_va: text('energy.speed_from') === 'stated' ? judge(slowest, normal) : idle,
    },
  };
}

/** Half the length less the distance from the bow, as parts of the length. */
const distances: Readonly<Record<string, number>> = {
  'quarter point': 1 / 2 - 1 / 4,
  'third point': 1 / 2 - 1 / 3,
  'fifth point': 1 / 2 - 1 / 5,
};

/**
 * A free hull of mass M, struck square to the berth at an arm l, keeps of the energy of her way towards it what an
 * effective mass M / (1 + l² / K²) has: the impulse J stops the point of contact when J (1 / M + l² / (M K²)) = v.
 */
function leastShare(
  { x, beam, angle }: { readonly x: number; readonly beam: number; readonly angle: number },
  block: number,
  length: number,
): { readonly gyration: number; readonly arm: number; readonly share: number } {
  const gyration = length * Math.min(0.25, 0.11 + 0.19 * block);
  // The force acts along the velocity: its moment is the cross product of the two in the axes of the ship, ahead and abeam.
  const [ahead, abeam] = [Math.sin(radians(angle)), Math.cos(radians(angle))];
  const arm = Math.max(x, Math.abs(x * abeam - (beam / 2) * ahead));
  return { gyration, arm, share: ratio(gyration ** 2, gyration ** 2 + arm ** 2) };
}

interface Fullness {
  readonly least: number;
  readonly most: number;
}

/** How full the hulls of a type are when laden. */
function fullness({ rows }: Inputs, type: string): Fullness {
  const row = rows('data.abnormal').find((one) => one.text('type') === type);
  return { least: row?.number('C_lo') ?? Number.NaN, most: row?.number('C_hi') ?? Number.NaN };
}

interface Turning {
  readonly K: number;
  readonly x: number;
  readonly lever: number;
  readonly velocityAngle: number;
  readonly angle: number;
}

const eccentricities: Readonly<Record<string, (turning: Turning) => number>> = {
  general: ({ K, lever, velocityAngle }) =>
    ratio(K ** 2 + (lever * Math.cos(radians(velocityAngle))) ** 2, K ** 2 + lever ** 2),
  'right angle': ({ K, lever }) => ratio(K ** 2, K ** 2 + lever ** 2),
  'along the berth': ({ K, x }) => 1 / (1 + ratio(x, K) ** 2),
  'IS 4651': ({ K, x, angle }) =>
    (1 + (ratio(x, K) * Math.sin(radians(angle))) ** 2) / (1 + ratio(x, K) ** 2),
};

function speeds(
  inputs: Inputs,
  mass: number,
): { readonly v: number; readonly normal: number; readonly part: number } {
  const { number, text, rows } = inputs;
  const part = text('energy.v_kind') === 'along the path' ? Math.sin(radians(number('energy.α'))) : 1;
  if (text('energy.speed_from') === 'Brolsma curve') {
    const curve = rows('data.brolsma').map(
      (row) => [Math.log(row.number('M50')), Math.log(row.number(text('energy.v_curve')))] as const,
    );
    const v = Math.exp(straightBetween(curve, Math.log(mass)));
    // PIANC WG 33 (2002), fig. 4.2.1: the curves give the speed square to the berth, whatever a stated one would be.
    return { v, normal: v, part };
  }
  // Codes print the speed square to the berth.
  if (text('energy.speed_from') === '22 TCN 222-95') {
    const points = rows('data.tcn').map((row) => [row.number('M_s'), row.number('v_s')] as const);
    const v = heldBetween(points, mass);
    return { v, normal: v, part };
  }
  if (text('energy.speed_from') === 'IS 4651-3') {
    const step = rows('data.is_speeds').find((row) => mass <= row.number('M_to'));
    const v = step?.number(siteColumn(text('energy.v_site'))) ?? Number.NaN;
    return { v, normal: v, part };
  }
  const v = number('energy.v_stated');
  return { v, normal: v * part, part };
}

const siteColumns: Readonly<Record<string, string>> = {
  'strong wind, difficult': 's_1',
  'strong wind, favourable': 's_2',
  moderate: 's_3',
  'sheltered, difficult': 's_4',
  'sheltered, favourable': 's_5',
};

/** The column of IS 4651-3:1974, table 2, for a site. */
export function siteColumn(site: string): string {
  return siteColumns[site] ?? '';
}

/** Straight between the points, as the first below them and as the last above. */
function heldBetween(points: readonly (readonly [number, number])[], x: number): number {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || Number.isNaN(x)) return Number.NaN;
  if (x <= first[0]) return first[1];
  return x >= last[0] ? last[1] : straightBetween(points, x);
}

/** Whether a figure shows a displacement. */
function shownBy(points: readonly number[], mass: number): Verdict {
  if (Number.isNaN(mass)) return { verdict: 'refused' };
  return { verdict: Math.min(...points) <= mass && mass <= Math.max(...points) ? 'holds' : 'fails' };
}

function abnormalFactor({ text, rows }: Inputs, type: string): number {
  const row = rows('data.abnormal').find((one) => one.text('type') === type);
  return row?.number(text('energy.ship_size')) ?? Number.NaN;
}
