import type { Cell, Drawn, Random } from '../program.ts';
import { readCurve } from './curve.ts';
import { drawBents, drawCurve, drawFenders, drawTables } from './draw-tables.ts';
import { workEnergy } from './energy.ts';
import { workShip } from './ship.ts';
import { hulls, shippedTables } from './tables.ts';
import { readInputs } from './values.ts';

/** Draws a berth: mostly one that a designer might meet, with a good share of corners and some nonsense. */
export function draw(random: Random): Drawn {
  const { between, over, of, whole, chance } = random;
  /** A usual value, at times a corner. */
  const often = (usual: number, corners: readonly Cell[], part = 0.06): Cell =>
    chance(part) ? of(corners) : usual;

  const tables = drawTables(random);
  const ships = tables['data.ships'] ?? shippedTables['data.ships'] ?? [];
  const deadweight = over(500, 400_000);
  const displacement = deadweight * between(1.25, 1.45);
  const block = between(0.5, 0.88);
  const beam = (displacement / (1.025 * block * between(5, 7.5) * between(0.3, 0.42))) ** (1 / 3);
  const length = beam * between(5, 7.5);
  const draught = displacement / (1.025 * block * length * beam);
  const level = often(between(-2, 6), [0]);
  const clearance = draught * (chance(0.15) ? of([0.001, 0.1, 0.5, -0.2, 1]) : between(0.05, 0.8));

  const source = of([
    'own ship',
    'own ship',
    'own ship, by deadweight',
    'own ship, by OCDI',
    'ship table',
  ] as const);
  const ship: Record<string, Cell> = {
    'ship.water': of(['sea', 'sea', 'fresh']),
    'ship.z_w': level,
    'ship.tide': of(['any water', 'window']),
    'ship.z_b': Number(level) - draught - clearance,
    'ship.k_min': often(between(5, 20), [0, 10, 60]),
    'ship.particulars': of([
      'own ship',
      'own ship',
      'own ship, by deadweight',
      'own ship, by OCDI',
      'ship table',
    ]),
    'ship.vessel': String(of(ships).name),
    'ship.M_own': often(displacement, [null, 0, displacement * 2, displacement / 10, 1000, 500_000], 0.08),
    'ship.DWT': often(
      source === 'own ship, by OCDI' ? over(300, 9_900) : deadweight,
      [null, 0, 9_999, 12_000],
      0.06,
    ),
    'ship.loading': chance(0.25) ? 'in ballast' : 'laden',
    'ship.s_laden': often(between(0.4, 1), [0, 1], 0.3),
    'ship.s_light': often(between(0.2, 0.5), [0, 1.5]),
    'ship.L_OA_own': often(length * between(1.02, 1.08), [null, length * 0.95], 0.05),
    'ship.L_BP_own': often(length, [null, 0], 0.03),
    'ship.B_own': often(beam, [null, 0], 0.03),
    'ship.D_own': often(draught, [null, 0], 0.03),
    'ship.C_M_rule': of([
      'clearance rule',
      'Vasco Costa',
      'Ueda',
      'largest of three',
      'Vasco Costa, 1.5 to 2.0',
      'water cylinder',
      'Grim',
      'Rupert',
      'Saurin',
      'end-on',
    ]),
    'ship.C_min': often(between(0.35, 0.5), [0.2, 0.4, 1]),
    'ship.K_rule': of(['block coefficient', 'quarter length']),
  };

  const speedFrom = of([
    'stated',
    'stated',
    'Brolsma curve',
    'Brolsma curve',
    '22 TCN 222-95',
    'IS 4651-3',
  ] as const);
  const byCurve = speedFrom !== 'stated';
  const path = chance(0.2);
  const energy: Record<string, Cell> = {
    'energy.speed_from': speedFrom,
    'energy.v_stated': often(path ? over(0.3, 3) : over(0.05, 0.8), [null, 0, 3, 0.08, 0.1], 0.08),
    'energy.v_curve': of(['a', 'b', 'c', 'd', 'e']),
    'energy.v_site': of([
      'strong wind, difficult',
      'strong wind, favourable',
      'moderate',
      'sheltered, difficult',
      'sheltered, favourable',
    ]),
    'energy.v_kind': path && !(byCurve && chance(0.8)) ? 'along the path' : 'normal to the berth',
    'energy.α': often(between(0, 15), [0, 90, 45, 20, 30], 0.06),
    'energy.v_min': often(between(0.05, 0.12), [0, 0.08, 0.1]),
    'energy.contact': of(['quarter point', 'third point', 'fifth point', 'midship']),
    'energy.C_S': often(between(0.85, 1), [0.5, 1, 0.9, 0.09], 0.3),
    'energy.C_C': often(between(0.8, 1), [0.5, 1, 0.9], 0.3),
    'energy.C_g': often(between(0.85, 1.25), [0.5, 1, 1.5], 0.3),
    'energy.C_d': often(between(0.9, 1), [0.5, 1], 0.3),
    'energy.safety': of(['abnormal factor', 'abnormal factor', 'partial energy factor', 'none']),
    'energy.ship_type': of([
      'tanker',
      'bulk carrier',
      'container',
      'general cargo',
      'ro-ro, ferry',
      'tug, workboat',
    ]),
    'energy.ship_size': of(['largest', 'smallest']),
    'energy.γ_E': often(between(1, 2.4), [null, 1, 1.1, 2, 10], 0.15),
    'energy.C_E_rule': of(['general', 'general', 'right angle', 'along the berth', 'IS 4651']),
    'energy.g': often(between(9.78, 9.83), [9.7, 9.9, 9.8, 9.81, 9.80665], 0.6),
  };

  const behindPanel = chance(0.6) ? 1 : whole(1, 12);
  const together = chance(0.5) ? 1 : whole(1, 20);
  const shared = chance(0.4);
  const sharing = shared ? Math.max(behindPanel, together) : behindPanel;
  const design = designEnergy({ lines: { ...ship, ...energy, 'panel.hull': 'bulk carrier' }, tables });
  const known = Number.isFinite(design) && design > 0 ? design : over(20, 5000);
  if (chance(0.6)) tables['fender.performance'] = drawCurve(random);
  const { area } = readCurve(readInputs({ lines: {}, tables }, shippedTables).rows('fender.performance'));
  if (chance(0.8))
    tables['fender.fenders'] = drawFenders(random, (known / sharing) * over(1.2, 8), area || 0.75);
  if (chance(0.75)) tables['wharf.bents'] = drawBents(random);
  const fenders = tables['fender.fenders'] ?? shippedTables['fender.fenders'] ?? [];
  const fender = of(fenders);
  const height = Number(fender.H ?? 1000);
  const rated = Number(fender.R_rated);
  const factor = of([0.4, 0.9, 1, 1.3, 2, 5]);

  const units: Record<string, Cell> = {
    'fender.fender_size': String(fender.size),
    'fender.system': shared ? 'shared' : chance(0.2) ? 'dolphin' : 'discrete units',
    'fender.n_c': together,
    'fender.R_lim': often(rated * behindPanel * between(0.8, 3), [0, 1e6]),
    'fender.R_basis': of(['rated', 'design energy']),
    'fender.t_q': often(between(5, 25), [0, 15, 20, 50]),
    'fender.tol': often(between(0, 15), [0, 10, 50], 0.3),
    'fender.θ_v': often(0, [between(0, 8), between(0, 8), 3, 45], 0.3),
    'fender.f_c': often(between(0.5, 0.8), [0.3, 0.74, 1]),
    'fender.VF_min': often(between(0.9, 1.1), [0.8, 1, 2], 0.08),
    'fender.VF_max': often(between(1, 1.3), [1, 2], 0.08),
    'fender.TF_min': often(between(0.85, 1), [0.5, 1, 97], 0.08),
    'fender.TF_max': often(between(1, 1.5), [1, 3], 0.08),
    'fender.AG_min': often(between(0.85, 1), [0.5, 1], 0.08),
    'fender.AG_max': often(between(1, 1.2), [1, 2, 0.1], 0.08),
  };

  const panelHeight = between(1.5, 8);
  const pressure = over(60, 600);
  const panelWidth = (rated * behindPanel) / pressure / panelHeight + 0.5;
  const top = between(1, 6);
  const lowWater = chance(0.05)
    ? top + between(-0.1, 1)
    : Math.min(between(-1, 1), chance(0.8) ? Number(level) : 1);
  const bracket = often(between(0, 0.5), [0, 3], 0.06);
  const run = Math.max(height / 1000 - Number(bracket), 0.1);
  const breaking = (rated * behindPanel * between(0.1, 2)) / of([1, 2, 4]);
  const panel: Record<string, Cell> = {
    'panel.n_f': behindPanel,
    'panel.n_v': often(whole(1, behindPanel), [0, 1, behindPanel], 0.3),
    'panel.b_p': often(panelWidth, [0, 0.29, 2]),
    'panel.h_p': often(panelHeight, [0, 0.29]),
    'panel.e_b': often(between(0, 0.3), [0, 0.15, 0.9], 0.15),
    'panel.e_h': often(between(0, 0.3), [0, 0.15, 0.9], 0.15),
    'panel.hull': of(hulls),
    'panel.q_p': often(((rated * behindPanel) / panelWidth) * over(0.4, 4), [0]),
    'panel.z_LW': lowWater,
    'panel.d_T': often(between(0, 12), [0, 17]),
    'panel.b_k': often(between(2, 15), [0, 10, 30], 0.2),
    'panel.k_lo': often(draught + between(-1, 4), [0]),
    'panel.k_hi': often(draught + between(-2, 6), [0]),
    'panel.f_S': often(top - lowWater + between(-0.7, 0.6) * panelHeight, [0, 0.5, 30], 0.1),
    'panel.z_t': top,
    'panel.o_min': often(between(20, 90), [0, 50, 100], 0.2),
    'panel.face': of([
      'timber to steel',
      'urethane to steel',
      'steel to steel',
      'rubber to steel',
      'UHMW to steel',
    ]),
    'panel.n_s': whole(1, 4),
    'panel.L_s': often(run / Math.sin(between(0.3, 1.2)), [0, run * 1.001, run * 0.9, 5], 0.1),
    'panel.a_s': bracket,
    'panel.W_p': often(panelWidth * panelHeight * over(0.6, 9), [0]),
    'panel.n_w': chance(0.9) ? whole(1, 4) : 12,
    'panel.L_w': often(run / Math.sin(between(0.3, 1.2)), [0, run * 1.001, run * 0.9, 5], 0.1),
    'panel.a_w': bracket,
    'panel.SF_c': often(between(2, 3), [1, 1.5, 10]),
    'panel.MBL': often(breaking, [0]),
  };
  for (const name of ['panel.f_S', 'panel.e_b', 'panel.e_h', 'panel.k_lo', 'panel.k_hi'])
    panel[name] = Math.max(Number(panel[name]), 0);

  const smallest = chance(0.5) ? length * between(0.3, 1.1) : over(20, 300);
  const bents = tables['wharf.bents'] ?? shippedTables['wharf.bents'] ?? [];
  const wharf: Record<string, Cell> = {
    'wharf.L_S': often(smallest, [0], 0.02),
    'wharf.B_S': often(smallest / between(5, 8), [0], 0.02),
    'wharf.e_0': often(between(0.2, 0.8), [0, 3]),
    'wharf.c_C': often(between(5, 15), [0, 50, 10], 0.15),
    'wharf.S': often(smallest * between(0.03, 0.25), [0, 400], 0.04),
    'wharf.l_f': between(0.2, 1),
    'wharf.r_lim': chance(0.3) ? 0 : over(20, 2000),
    'wharf.n_L': often(between(1, 1.6), [1, 1.2, 3], 0.5),
    'wharf.x_R': often(between(-10, 70), [0, 12, 21]),
    'wharf.n_p': chance(0.95) ? whole(1, 12) : 100,
    'wharf.H_a': often((rated * sharing * factor) / Math.sqrt(bents.length), [0]),
  };

  const part = known / 4;
  const thick = over(200, 3000);
  const span = between(4, 40);
  const absorber: Record<string, Cell> = {
    'absorber.used': of([
      'none',
      'none',
      'none',
      'none',
      'none',
      'fender piles',
      'fender piles',
      'linear spring',
      'constant force',
    ]),
    'absorber.E_from': of(['berthing', 'two floating bodies', 'two floating bodies, with the allowance']),
    'absorber.M_1': often(chance(0.5) ? displacement * between(1.3, 2.2) : over(10, 200_000), [0]),
    'absorber.u_1': often(between(0, 0.6), [0, -0.1]),
    'absorber.M_2': often(over(10, 200_000), [0]),
    'absorber.u_2': often(between(-0.4, 0.2), [0, 0.2, 0.6], 0.3),
    'absorber.second': of(['moored', 'moored', 'free']),
    'absorber.E_m': often(over(5, 100_000), [0]),
    'absorber.h_a': often(over(0.3, 8), [0.2, 10]),
    'absorber.n_u': chance(0.9) ? whole(1, 12) : of([1, 200]),
    'absorber.A_j': over(0.1, 400),
    'absorber.b_u': between(0.2, 4),
    'absorber.F_p': often(over(50, 5000), [0]),
    'absorber.k_f': over(100, 50_000),
    'absorber.backing': of(['rigid', 'gives']),
    'absorber.k_s': often(over(500, 500_000), [null, 0], 0.15),
    'absorber.y_s': often(over(2, 1000), [0]),
    'absorber.y': often(over(0.05, 3), [0]),
    'absorber.support': of(['cantilever', 'simple']),
    'absorber.section': of(['pipe', 'round', 'rectangle']),
    'absorber.D_o': often(thick, [0], 0.03),
    'absorber.t_w': often(thick * over(0.01, 0.1), [0, thick / 2, thick * 0.6], 0.12),
    'absorber.b_r': often(over(100, 1500), [0], 0.03),
    'absorber.h_r': often(over(100, 1500), [0], 0.03),
    'absorber.σ': often(over(8, 500), [0], 0.03),
    'absorber.f_y': often(over(8, 500), [355]),
    'absorber.E_Y': often(over(8_000, 210_000), [0], 0.02),
    'absorber.L_p': often(span, [0], 0.03),
    'absorber.a_l': often(span * between(0.1, 0.9), [0, span, span * 1.2], 0.12),
  };
  if (chance(0.5)) absorber['absorber.n_u'] = Math.max(1, Math.min(200, Math.round(part / 50)));
  return { lines: { ...ship, ...energy, ...units, ...panel, ...wharf, ...absorber }, tables };
}

/** The design energy of what was drawn so far, so that the fender drawn for it is often near what is needed. */
function designEnergy(drawn: Drawn): number {
  const inputs = readInputs(drawn, shippedTables);
  return workEnergy(inputs, workShip(inputs)).numbers.E_A;
}
