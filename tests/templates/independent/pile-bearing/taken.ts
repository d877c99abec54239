import type { Verdict } from '../program.ts';
import { type Inputs, type Maybe, numberIn, type Row, textIn } from './inputs.ts';
import { loadsOf } from './loads.ts';
import { check, lines, type Names } from './names.ts';
import { psf } from './tables.ts';

const idle: Verdict = { verdict: 'does not apply' };

/** The least that codes put on a load that leads: ASCE/SEI 7-16 2.3.1, EN 1997-1 set A2, AASHTO LRFD Table 3.4.1-2. */
const factored = { dead: 1.2, live: 1.3, drag: 1.05, storm: 1, quake: 1 };
/** Loads that are not factored count in full. */
const inFull = { dead: 1, live: 1, drag: 1, storm: 1 };
const loadColumns = ['f_D', 'f_L', 'f_C', 'f_S', 'f_U', 'f_E', 'f_N'];

/** Whether a row is of those that may take a load. */
type Takes = (row: Row) => boolean;

function factor(row: Row, column: string): number {
  return numberIn(row, column) ?? Number.NaN;
}

/** Dead load in full or more, and nothing beside it that lifts. */
const presses: Takes = (row) =>
  factor(row, 'f_D') >= 1 && factor(row, 'f_U') === 0 && factor(row, 'f_E') >= 0;
/** Dead load in full or less, and no passing load or drag that holds down. */
const lifts: Takes = (row) =>
  factor(row, 'f_D') <= 1 && ['f_L', 'f_C', 'f_S', 'f_N'].every((column) => factor(row, column) === 0);
const isUsual: Takes = (row) => textIn(row, 'cond') === 'usual';
const isExtreme: Takes = (row) => textIn(row, 'cond') === 'extreme';

/**
 * Every load entered wants a combination of the format that takes it, beside the loads that do not help: an operating load in
 * a usual one, a storm in one that is not extreme (EM 1110-2-2906 4-2), with no less than leading loads have.
 */
export function takenLines(inputs: Inputs, drag: Maybe): Names {
  const loads = loadsOf(inputs);
  const counting = inputs.combos.filter((row) => textIn(row, 'design') === inputs.text('loads.basis'));
  const most = (column: string, takes: Takes, sign = 1): number =>
    Math.max(0, ...counting.filter(takes).map((row) => sign * factor(row, column)));
  const isFactored = inputs.text('loads.basis') === 'LRFD';
  const least = isFactored ? factored : { ...inFull, quake: inputs.number('loads.f_min') };
  const operating: Takes = (row) => presses(row) && isUsual(row);
  const found = {
    f_Dx: most('f_D', operating),
    f_Lx: most('f_L', operating),
    f_Cx: most('f_C', operating),
    f_Vx: most('f_L', (row) => operating(row) && factor(row, 'f_C') >= least.live),
    f_Nx: most('f_N', operating),
    f_Sx: most('f_S', (row) => presses(row) && !isExtreme(row)),
    f_Ux: most('f_U', (row) => lifts(row) && !isExtreme(row)),
    f_Ex: most('f_E', presses),
    f_Ey: most('f_E', lifts, -1),
  };
  // A load that is nothing, and that some combination takes all the same, was forgotten.
  const onNothing = (load: number, column: string): number =>
    load > 0 ? 0 : Math.max(0, ...counting.map((row) => Math.abs(factor(row, column))));
  const forgotten = {
    g_L: onNothing(loads.live, 'f_L'),
    g_C: onNothing(loads.crane, 'f_C'),
    g_S: onNothing(loads.storm, 'f_S'),
    g_U: onNothing(loads.uplift, 'f_U'),
    g_E: onNothing(loads.quake, 'f_E'),
  };
  const isForgotten = Object.values(forgotten).some((by) => by > 0);
  const beside = inputs.stated('loads.f_nV') ?? 0.5;
  const { stated } = inputs;
  const width = inputs.number('loads.b_d');
  const deck = width * inputs.number('loads.s_p');
  const held = (load: Maybe, asked: number, by: number): Verdict =>
    load === null ? { verdict: 'refused' } : load > 0 ? check(asked, by) : idle;
  // A factor of service in a combination of factored loads: 1.2 at least in operation, 1 in a storm or an earthquake.
  const ofService = counting.filter((row) => {
    const most = Math.max(...loadColumns.map((column) => Math.abs(factor(row, column))));
    return most < (isUsual(row) ? 1.2 : 1);
  }).length;
  return {
    ...lines('loads', { ...found, ...forgotten, n_D: loads.dead > 0 ? 1 : 0 }),
    'loads.c_g': { verdict: isForgotten ? 'fails' : 'holds' },
    'loads.c_dead': { verdict: loads.dead > 0 ? 'holds' : 'fails' },
    // Common practice: a light deck weighs 15 lb/ft², people on a walkway 40.
    'loads.c_Dn': width > 0 ? check(15 * psf, loads.dead / deck) : idle,
    'loads.c_Ln': width > 0 && loads.live > 0 ? check(40 * psf, loads.live / deck) : idle,
    'loads.c_tD': held(loads.dead, least.dead, found.f_Dx),
    'loads.c_tL': held(loads.live, least.live, found.f_Lx),
    'loads.c_tC': held(loads.crane, least.live, found.f_Cx),
    // ASCE/SEI 7-16 2.3.1: half of a live load stands beside another that leads.
    'loads.c_tV': loads.live > 0 && loads.crane > 0 ? check(beside, found.f_Vx) : idle,
    'loads.c_tN': held(drag, least.drag, found.f_Nx),
    'loads.c_tS': held(loads.storm, least.storm, found.f_Sx),
    'loads.c_tU': held(loads.uplift, least.storm, found.f_Ux),
    'loads.c_tE': held(loads.quake, least.quake, found.f_Ex),
    'loads.c_tEu': held(loads.quake, least.quake, found.f_Ey),
    'loads.f_nD': least.dead,
    'loads.f_nL': least.live,
    'loads.f_nN': least.drag,
    'loads.f_nS': least.storm,
    'loads.f_nE': least.quake,
    'loads.f_nV': beside,
    'loads.n_f': isFactored ? ofService : 0,
    'loads.c_f': isFactored ? { verdict: ofService > 0 ? 'fails' : 'holds' } : idle,
    ...craneLines(inputs, loads.crane),
    // ASCE/SEI 7-16 12.4.2.2: 0.2 S_DS D up and down, with S_DS of 0.25 by common practice.
    'loads.c_En':
      loads.quake > 0 ? check((stated('loads.k_En') ?? 0.2 * 0.25) * loads.dead, loads.quake) : idle,
    'loads.c_bd':
      inputs.number('loads.w_d') > 0 || inputs.number('loads.q_l') > 0
        ? check(inputs.number('pile.D') / 1000, width)
        : idle,
    // AASHTO LRFD 10.7.1.2
    'loads.c_spr': check((2.5 * inputs.number('pile.D')) / 1000, inputs.number('loads.s_p')),
  };
}

/** The loads of a crane against each other: along the rail and of its wheels, at work and in a storm, up and down. */
function craneLines({ number, stated }: Inputs, crane: number): Names {
  const [working, storm, uplift, wheel] = ['w_c', 'w_s', 'u_s', 'R_w'].map((name) =>
    number(`loads.${name}`),
  ) as [number, number, number, number];
  const apart = Math.abs(working * number('loads.s_w') - wheel);
  const ofWheels =
    stated('loads.N_w') ??
    number('loads.m_c') * wheel * wheelsBorne(number('loads.s_p'), number('loads.s_w'));
  return {
    'loads.N_w': ofWheels,
    'loads.c_Nw': working > 0 ? check(ofWheels, 1.05 * crane) : idle,
    'loads.c_w': working > 0 ? check(apart, wheel / 10) : idle,
    'loads.c_ws': working > 0 && storm > 0 ? check(working / 2, storm) : idle,
    'loads.c_us': uplift > 0 ? check(uplift, storm) : idle,
    // Common practice: a storm that lifts at all lifts by a tenth; beams of concrete weigh 0.04 of the rail load and more.
    'loads.c_un': uplift > 0 ? check((stated('loads.k_us') ?? 0.1) * storm, uplift) : idle,
    'loads.c_wb': working > 0 ? check((stated('loads.k_wb') ?? 0.03) * working, number('loads.w_b')) : idle,
    // Both rails together bear the weight of the crane, of which the heavier takes half at least while it works.
    'loads.c_uw': working > 0 && storm > 2 * working ? check(storm - 2 * working, uplift) : idle,
  };
}

/** Wheels that a support between two equal simple spans bears, one of them over it: each by its ordinate of the influence line. */
function wheelsBorne(span: number, apart: number): number {
  if (!(apart > 0 && span > 0)) return Number.NaN;
  let borne = 1;
  for (let away = apart; away < span; away += apart) borne += 2 * (1 - away / span);
  return borne;
}
