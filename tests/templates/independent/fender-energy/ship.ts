import type { Verdict } from '../program.ts';
import { typeOfHull } from './tables.ts';
import { type Inputs, judge, judgeBelow, ratio } from './values.ts';

/** The ship, the water under her keel and the water that moves with her. */
export interface Ship {
  readonly numbers: Readonly<
    Record<
      | 'h'
      | 'K_C'
      | 'κ'
      | 'h_req'
      | 'h_plan'
      | 'ρ'
      | 'M'
      | 'L_OA'
      | 'L_BP'
      | 'B'
      | 'D'
      | 'C_B'
      | 'K'
      | 'C_M'
      | 'C_M_P'
      | 'C_M_V'
      | 'C_M_U'
      | 'C_M_0'
      | 'm_w'
      | 'dC'
      | 's_b',
      number
    >
  >;
  readonly checks: Readonly<
    Record<
      'c_keel' | 'c_block' | 'c_fill' | 'c_LL' | 'c_LB' | 'c_DB' | 'c_CM' | 'c_state' | 'c_OD' | 'c_OC',
      Verdict
    >
  >;
}

/** Works out the ship; masses in t, lengths in m. */
export function workShip(inputs: Inputs): Ship {
  const { number, text } = inputs;
  const density = text('ship.water') === 'sea' ? 1.025 : 1;
  const { M, L_OA, L_BP, B, D } = particulars(inputs);
  const isByOcdi = text('ship.particulars') === 'own ship, by OCDI';
  const idle: Verdict = { verdict: 'does not apply' };
  const isLight = text('ship.loading') === 'in ballast';
  const block = ratio(M, density * L_BP * B * D);
  const depth = number('ship.z_w') - number('ship.z_b');
  const clearance = depth - D;
  const relative = ratio(clearance, D);
  const share = number('ship.k_min') / 100;
  const needed = D * (1 + share);
  const water = density * L_BP * Math.PI * (D / 2) ** 2;
  // PIANC WG 33 (2002), 4.2.5; UFC 4-152-01 (2005), 5-6, quotes its two ends.
  const byClearance = 1.8 - (0.3 * Math.min(Math.max(relative - 0.1, 0), 0.4)) / 0.4;
  const vascoCosta = 1 + ratio(2 * D, B);
  const ueda = 1 + ratio(Math.PI * D, 2 * block * B);
  const massFactors: Readonly<Record<string, number>> = {
    'clearance rule': byClearance,
    'Vasco Costa': vascoCosta,
    Ueda: ueda,
    'largest of three': Math.max(byClearance, vascoCosta, ueda),
    'Vasco Costa, 1.5 to 2.0': Math.min(Math.max(vascoCosta, 1.5), 2),
    'water cylinder': 1 + ratio(water, M),
    Grim: 1.3 + 1.8 * ratio(D, B),
    Rupert: 0.9 + 1.5 * ratio(D, B),
    Saurin: 1.3,
    'end-on': 1.1,
  };
  const factor = massFactors[text('ship.C_M_rule')] ?? Number.NaN;
  // Close to the bed the water cannot pass below her: no rule without the clearance holds.
  const isClose = relative < 0.1 * (1 - 1e-9);
  const rules = isClose ? [byClearance] : [byClearance, vascoCosta, ueda];
  const least = Math.min(...rules.map((rule) => Math.max(1.5, rule)));
  return {
    numbers: {
      h: depth,
      K_C: clearance,
      κ: relative,
      h_req: needed,
      h_plan: Math.ceil(needed / 0.5 - 1e-9) * 0.5,
      ρ: density * 1000,
      M,
      L_OA,
      L_BP,
      B,
      D,
      C_B: block,
      K: text('ship.K_rule') === 'quarter length' ? L_BP / 4 : (0.19 * block + 0.11) * L_BP,
      C_M: factor,
      C_M_P: byClearance,
      C_M_V: vascoCosta,
      C_M_U: ueda,
      C_M_0: least,
      m_w: water,
      // Common practice: in ballast a hull is finer by some hundredths, and has two fifths of her mass at least.
      dC: isLight ? 0.05 : 0,
      s_b: isLight ? 0.4 : 1,
    },
    checks: {
      c_keel: judge(share * D, clearance),
      c_block: judge(block, 1),
      c_fill: judge(number('ship.C_min'), block),
      c_LL: judge(L_BP, L_OA),
      c_LB: judge(2 * B, L_BP),
      c_DB: judge(D, B),
      // Tables and rules of full ships say nothing of one in ballast.
      c_state: isLight
        ? { verdict: ofFullShips.includes(text('ship.particulars')) ? 'fails' : 'holds' }
        : { verdict: 'does not apply' },
      c_OD: isByOcdi ? judgeBelow(number('ship.DWT'), OCDI_ENDS) : idle,
      c_OC: isByOcdi
        ? { verdict: typeOfHull(text('panel.hull')) === 'general cargo' ? 'holds' : 'fails' }
        : idle,
      c_CM: text('ship.C_M_rule') === 'end-on' ? { verdict: 'does not apply' } : judge(least, factor),
    },
  };
}

/** Particulars that ROM 3.1-99 and OCDI (2002), p. 17, give of ships fully laden. */
const ofFullShips: readonly string[] = ['ship table', 'own ship, by OCDI'];

function particulars(inputs: Inputs): Readonly<Record<'M' | 'L_OA' | 'L_BP' | 'B' | 'D', number>> {
  const { number, text, rows } = inputs;
  const source = text('ship.particulars');
  if (source === 'ship table') {
    const row = rows('data.ships').find((one) => one.text('name') === text('ship.vessel'));
    const cell = (column: string): number => row?.number(column) ?? Number.NaN;
    return { M: cell('M_t'), L_OA: cell('L_OA_t'), L_BP: cell('L_BP_t'), B: cell('B_t'), D: cell('D_t') };
  }
  const own = (name: string): number => number(`ship.${name}_own`);
  const deadweight = number('ship.DWT');
  const mass =
    source === 'own ship, by deadweight'
      ? deadweight * (number('ship.s_laden') + number('ship.s_light'))
      : source === 'own ship, by OCDI'
        ? byOcdi(deadweight)
        : own('M');
  return { M: mass, L_OA: own('L_OA'), L_BP: own('L_BP'), B: own('B'), D: own('D') };
}

/** The deadweight at which the first rule of OCDI (2002), p. 17, for general cargo ships ends. */
const OCDI_ENDS = 10_000;

/** OCDI (2002), p. 17: general cargo ships below 10 000 DWT only. */
function byOcdi(deadweight: number): number {
  if (!(deadweight > 0 && deadweight < OCDI_ENDS)) return Number.NaN;
  return 10 ** (0.55 + 0.899 * Math.log10(deadweight));
}
