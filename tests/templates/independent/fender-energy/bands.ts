import type { Cell, Verdict } from '../program.ts';
import type { Energy } from './energy.ts';
import type { Fender } from './fender.ts';
import type { Panel } from './panel.ts';
import type { Ship } from './ship.ts';
import { asCell, type Inputs, ratio } from './values.ts';

/** Which factors lie where they can be. */
export interface Bands {
  readonly values: readonly number[];
  readonly used: readonly number[];
  readonly within: readonly ('yes' | 'no' | 'not used' | null)[];
  readonly beyond: number;
  readonly first: Cell;
  readonly check: Verdict;
}

/** Factors of fender piles alone. */
const ofPiles: ReadonlySet<string> = new Set([
  'stress allowed over modulus, parts in a thousand',
  'length of the fender pile over its depth',
]);

/** Factors of a rubber fender, its chains and its frame. */
const ofRubber: ReadonlySet<string> = new Set([
  'velocity factor for energy',
  'velocity factor for reaction',
  'temperature factor for energy',
  'temperature factor for reaction',
  'ageing factor for energy',
  'ageing factor for reaction',
  'angle factor on energy',
  'how far rated values may be apart from the curve',
  'shear chains that act together',
  'weight chains',
  'factor of safety of the chains',
  'panel, frame and fixings, m',
  'shear chain over the height of the fender',
  'weight chain over the height of the fender',
]);

/** Each factor as it is used, between the least and the most that it can be: what lies beyond is an entry gone wrong. */
export function workBands(
  { number, text }: Inputs,
  { ship, energy, fender, panel }: { ship: Ship; energy: Energy; fender: Fender; panel: Panel },
): Bands {
  const { H_F } = fender.numbers;
  const depth = text('absorber.section') === 'rectangle' ? 'absorber.h_r' : 'absorber.D_o';
  const bands: readonly (readonly [name: string, value: number, least: number, most: number])[] = [
    ['softness factor', number('energy.C_S'), 0.5, 1],
    ['berth configuration factor', number('energy.C_C'), 0.5, 1],
    ['hull geometry factor', number('energy.C_g'), 0.5, 1.5],
    ['hull deformation factor', number('energy.C_d'), 0.5, 1],
    ['eccentricity factor', energy.numbers.C_E, 0.15, 1],
    ['added mass factor', ship.numbers.C_M, 1, 3],
    ['light ship as a share of the deadweight', number('ship.s_light'), 0.15, 1.5],
    ['least block coefficient taken for likely', number('ship.C_min'), 0.35, 1],
    ['least speed accepted for design, m/s', number('energy.v_min'), 0.05, 0.5],
    ['velocity factor for energy', number('fender.VF_min'), 0.8, 1.3],
    ['velocity factor for reaction', number('fender.VF_max'), 1, 2],
    ['temperature factor for energy', number('fender.TF_min'), 0.5, 1],
    ['temperature factor for reaction', number('fender.TF_max'), 1, 3],
    ['ageing factor for energy', number('fender.AG_min'), 0.5, 1],
    ['ageing factor for reaction', number('fender.AG_max'), 1, 2],
    ['angle factor on energy', fender.numbers.AF, 0, 1],
    ['how far rated values may be apart from the curve', number('fender.t_q') / 100, 0, 0.2],
    ['friction coefficient', panel.numbers.μ, 0.05, 1],
    ['permissible hull pressure, kPa', panel.numbers.p_p, 50, 700],
    ['least share of the panel to be covered', number('panel.o_min') / 100, 0.1, 1],
    ['weight of the panel over its area, kPa', ratio(number('panel.W_p'), panel.numbers.A_g), 0.5, 10],
    ['shear chains that act together', number('panel.n_s'), 1, 6],
    ['weight chains', number('panel.n_w'), 1, 6],
    ['factor of safety of the chains', number('panel.SF_c'), 2, 10],
    ['load factor on the berthing reaction', number('wharf.n_L'), 1, 3],
    ['units of the absorber that share the energy', number('absorber.n_u'), 1, 40],
    [
      'stress allowed over modulus, parts in a thousand',
      1000 * ratio(number('absorber.σ'), number('absorber.E_Y')),
      0.1,
      4,
    ],
    ['clearance of the hull over the projection', number('wharf.c_C') / 100, 0.05, 0.5],
    ['panel, frame and fixings, m', number('wharf.e_0'), 0, 1.5],
    ['shear chain over the height of the fender', ratio(number('panel.L_s') * 1000, H_F), 0.2, 3],
    ['weight chain over the height of the fender', ratio(number('panel.L_w') * 1000, H_F), 0.2, 3],
    ['length of the fender pile over its depth', ratio(number('absorber.L_p') * 1000, number(depth)), 2, 80],
    ['radius of gyration over the length', ratio(ship.numbers.K, ship.numbers.L_BP), 0.18, 0.32],
  ];
  const absorber = text('absorber.used');
  const isUsed = (name: string): boolean => {
    if (name === 'units of the absorber that share the energy') return absorber !== 'none';
    if (name === 'permissible hull pressure, kPa') return panel.numbers.belt === 0;
    if (ofRubber.has(name)) return absorber === 'none';
    return !ofPiles.has(name) || absorber === 'fender piles';
  };
  const within = bands.map(([name, value, least, most]) => {
    if (!isUsed(name)) return 'not used';
    if (!Number.isFinite(value)) return null;
    return value >= least * (1 - 1e-9) && value <= most * (1 + 1e-9) ? 'yes' : 'no';
  });
  const isKnown = !within.includes(null);
  const beyond = isKnown ? within.filter((one) => one === 'no').length : Number.NaN;
  return {
    values: bands.map(([, value]) => value),
    used: bands.map(([name]) => Number(isUsed(name))),
    within,
    beyond,
    first: isKnown ? asCell(bands[within.indexOf('no')]?.[0] ?? 'none') : null,
    check: { verdict: isKnown ? (beyond > 0 ? 'fails' : 'holds') : 'refused' },
  };
}
