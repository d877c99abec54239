import { expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import { type Item, openNotebook } from '../../src/notebook/index.ts';
import { readEntry } from '../../src/units/index.ts';
import { type Entered, verdicts } from './verdicts.ts';

/**
 * Numbers that may be below zero: positions, directions, what is left over, credits and what is made of them. Every other
 * number of these sheets has a permitted range that leaves negative values out. Levels and dates have no sign.
 */
const signed: Readonly<Record<string, readonly string[]>> = {
  'fender-energy': [
    'energy.ln_M data.brolsma.ln_M data.brolsma.ln_v data.brolsma.ln_a data.angles.dAF',
    'energy.γ panel.φ_s panel.φ_s0 panel.φ_w panel.φ_w0 panel.way.s_si panel.way.s_wi',
    'panel.o_h panel.o_f wharf.C_S0 wharf.h_c',
    'wharf.N_up wharf.N_dn wharf.x_d wharf.e_1 wharf.e_2',
    'wharf.x_R wharf.x_g wharf.e wharf.bents.s wharf.bents.r wharf.bents.H wharf.bents.H_p wharf.H_min',
    'absorber.u_1 absorber.u_2 absorber.u_c absorber.E_s',
  ],
  'debris-haul': [
    'haul.route.grade haul.route.R_o haul.route.R_b haul.speeds.R haul.factors.dt',
    'fill.Z_s fill.Z fill.S swell.materials.S quantity.R_t',
    'swell.materials.c_r quantity.takeoff.c_r quantity.takeoff.K_r cost.K_4',
    'cost.extra.qty cost.extra.price cost.extra.amount cost.K_8',
    'cost.ranges.K_m cost.ranges.K_a cost.ranges.K_z cost.ranges.m_i cost.ranges.K_q cost.K_e cost.K_p cost.K_r',
    'cost.K_n cost.K_t cost.u_b cost.u_m cost.u_A',
  ],
  'pile-bearing': [
    'pile.z_w_in pile.z_w pile.z_h pile.L_ct pile.L_t pile.L_c pile.layers.z_a pile.layers.G_s pile.W pile.W_h pile.W_t',
    'pile.Q_w pile.Q_tu pile.T_u loads.T_a loads.FS_t loads.combos.f_E loads.combos.P',
    'depth.profile.Q_sp depth.profile.Q_irp depth.profile.T_p depth.profile.W_p depth.profile.W_hp depth.ρ_t',
    'depth.profile.m_c depth.profile.m_t depth.profile.m depth.profile.m_a',
  ],
  'bollard-pull': [
    'moor.lines.x_c moor.lines.y_c moor.lines.z_c moor.lines.x_b moor.lines.y_b moor.lines.z_b moor.lines.α',
    'moor.lines.τ moor.lines.u_x moor.lines.u_y moor.lines.J moor.lines.g_v moor.lines.g_r moor.lines.g_u',
    'moor.lines.g_p moor.lines.g_m moor.lines.T_y moor.lines.T_x moor.lines.P_y moor.lines.P_x',
    'moor.fenders.x_f moor.fenders.P_f moor.Y_l moor.M_l moor.X_l moor.X_b moor.X_t moor.v moor.r moor.u',
    'moor.B moor.E moor.F moor.e moor.f moor.A_r moor.B_r moor.C_r moor.Y_r moor.M_r moor.cases.X_c',
    'moor.cases.Y_c moor.cases.M_c moor.cases.v_c moor.cases.r_c moor.cases.u_c moor.cases.X_w moor.cases.w_c',
    'moor.cases.N_c moor.lost.v_i moor.lost.r_i moor.lost.u_i moor.states.v_s moor.states.r_s moor.states.u_s',
    'moor.states.b_s moor.states.X_s moor.states.a_s moor.rounds.v_j moor.rounds.r_j moor.rounds.u_j',
    'moor.rounds.v_p moor.rounds.r_p moor.rounds.u_p moor.rounds.b_p moor.rounds.X_j moor.rounds.Y_j',
    'moor.rounds.v_o moor.rounds.r_o moor.rounds.u_o',
    'moor.rounds.M_j moor.rounds.B_f moor.rounds.B_i moor.rounds.E_i moor.rounds.F_i moor.rounds.e_i',
    'moor.rounds.f_i moor.rounds.Y_i moor.rounds.M_i moor.rounds.A_j moor.rounds.B_j moor.rounds.C_j moor.v_0',
    'moor.r_0 moor.v_1 moor.r_1 moor.u_1 moor.Y_A moor.Y_F bollard.V_max bollard.τ_bm bollard.bollards.P_x',
    'bollard.bollards.P_y bollard.bollards.P_z bollard.bollards.β bollard.bollards.τ_b bollard.each.X_e',
    'bollard.each.Y_e bollard.each.Z_e bollard.each.τ_e bollard.each.v_e bollard.each.r_e bollard.each.u_e',
    'bollard.each.a_e bolt.bolts.z bolt.bolts.T_c bolt.bolts.T_t bolt.bolts.q_y bolt.bolts.q_V bolt.t bolt.V',
    'bolt.M_c bolt.M_t bolt.S_t bolt.C_t bolt.S_s bolt.o_p bolt.angles.t_k bolt.angles.V_k bolt.places.x_k',
    'wind.m_w wind.F_X wind.F_Y wind.M wind.from.F_Xi wind.from.F_Yi wind.from.M_i wind.from.s_i',
    'wind.from.f_xi wind.from.C_Xi wind.from.C_Ai wind.from.C_Fi wind.from.F_Ai wind.from.F_Fi wind.s_w',
    'wind.f_x wind.C_X wind.C_A wind.C_F wind.F_A wind.F_F wind.ocimf.CX_l wind.ocimf.CX_b wind.ocimf.CA_l',
    'wind.ocimf.CA_b wind.ocimf.CF_l wind.ocimf.CF_b current.m_c current.F_X current.F_Y current.M',
    'current.from.F_Xi current.from.F_Yi current.from.M_i current.from.s_i current.from.C_Xi current.from.C_Ai',
    'current.from.C_Fi current.from.F_Ai current.from.F_Fi current.s_c current.F_form current.F_fric',
    'current.F_prop current.C_X current.C_A current.C_F current.F_A current.F_F current.ocimf.CX_l',
    'current.ocimf.CX_b current.ocimf.CA_l current.ocimf.CF_l load.X_o load.Y_o load.M_o load.combos.f_o',
    'load.combos.X_k load.combos.Y_k load.combos.M_k load.X load.Y load.M load.each.X_k load.each.Y_k',
    'load.each.M_k load.each.R_k load.each.g_o load.each.X_w load.each.Y_w load.each.M_w load.each.X_v',
    'load.each.Y_v load.each.M_v rope.V_q',
  ],
  demo: [
    'fender.γ fender.o_h',
    'debris.r_t debris.materials.c_r debris.takeoff.K_r debris.takeoff.K debris.K_f',
    'cost.items.K cost.items.r cost.K_n cost.K_o cost.K_c cost.K_t cost.k_L',
    'sequence.tasks.lag',
    'wharf.ground.G_s waterside.cases.N waterside.layers.z_a landside.cases.N landside.layers.z_a',
    'moor.θ_w moor.θ_c moor.m_y moor.lines.f_x moor.lines.x_c moor.lines.y_c moor.lines.x_b moor.lines.y_b moor.lines.τ',
    'moor.lines.u_x moor.lines.u_y moor.lines.g_v moor.lines.g_u moor.lines.T moor.lines.U moor.Y moor.X moor.M',
    'moor.Y_c moor.X_c moor.b moor.v moor.r moor.u moor.Y_l',
    'bollard.bollards.j bollard.bollards.x_at bollard.bollards.P_x bollard.bollards.P_y bollard.bollards.P_z bollard.V_max',
  ],
};

test.each(Object.entries(signed))(
  'numbers of %s that cannot be negative have a range that says so',
  (id, names) => {
    const { model } = openNotebook(templateBook(id));
    const open = [...model.items.values()].flatMap((item) => {
      const range = rangeOf(item);
      if (range === undefined) return [];
      const least = range.min === undefined ? undefined : readEntry(range.min, model.registry, item.unit);
      const leavesOut = least?.ok && least.value.kind === 'number' && least.value.si >= 0;
      return leavesOut ? [] : [item.id];
    });
    expect(open.toSorted()).toEqual(names.flatMap((line) => line.split(' ')).toSorted());
  },
);

/** The range of a number that is entered or calculated; undefined for all else. */
function rangeOf(item: Item): { readonly min?: string } | undefined {
  if (item.type.kind !== 'number') return undefined;
  if (item.kind === 'input' || item.kind === 'formula')
    return item.row.kind === 'given' || item.row.kind === 'calc' ? (item.row.range ?? {}) : undefined;
  if (item.kind === 'input column' || item.kind === 'formula column')
    return item.column.kind === 'series' ? undefined : (item.column.range ?? {});
  return undefined;
}

const negative: readonly (readonly [string, string, Entered['lines'], readonly string[]])[] = [
  ['fender-energy', 'an area in contact', { A_p: '-9 m^2' }, ['panel.c_p']],
  ['fender-energy', 'a design energy', { E_A: '-500 kN·m' }, ['fender.c_E', 'fender.c_R', 'wharf.c_H']],
  ['fender-energy', 'a reaction', { R_d: '-900 kN' }, ['fender.c_R', 'panel.c_p', 'panel.c_s', 'wharf.c_H']],
  ['fender-energy', 'a rated energy', { E_RPD: '-100 kN·m' }, ['fender.c_E', 'fender.c_R', 'fender.c_q']],
  ['fender-energy', 'a rated deflection', { d_RPD: '-100 mm' }, ['fender.c_q', 'panel.c_s', 'wharf.c_S']],
  ['fender-energy', 'a factor', { VF_max: '-1.05' }, ['fender.c_R', 'panel.c_p', 'wharf.c_H']],
  ['fender-energy', 'a softness', { C_S: '-1' }, ['fender.c_E', 'fender.c_R']],
  [
    'fender-energy',
    'a softness beside fender piles',
    { C_S: '-1', 'absorber.used': 'fender piles' },
    ['absorber.c_l'],
  ],
  ['fender-energy', 'a line load that a belting bears', { hull: 'ferry', q_p: '-500 kN/m' }, ['panel.c_qb']],
  ['fender-energy', 'a number of chains', { n_s: '-2' }, ['panel.c_s']],
  ['debris-haul', 'a number of trucks', { 'haul.n_k': '-3' }, ['haul.c_n', 'haul.c_MF', 'haul.c_a']],
  ['debris-haul', 'an output', { 'haul.Q': '-100 lcy/h' }, ['haul.c_a', 'haul.c_N', 'dust.c_η', 'cost.c_D']],
  ['debris-haul', 'a loose volume', { 'haul.V_j': '-100 lcy' }, ['haul.c_P', 'haul.c_a', 'dust.c_η']],
  ['debris-haul', 'a power', { 'haul.P_e': '-400 hp' }, ['haul.c_pw']],
  ['debris-haul', 'a pile', { 'stockpile.V_p': '-500 lcy' }, ['stockpile.c_k', 'stockpile.c_A']],
  [
    'bollard-pull',
    'a displacement',
    { 'ship.Δ': '-58000 t' },
    ['ship.c_fine', 'ship.c_stout', 'ship.c_full', 'ship.c_laden'],
  ],
  ['bollard-pull', 'a side area', { 'ship.A_Ls': '-5000 m^2' }, ['ship.c_AL', 'ship.c_ALx', 'ship.c_area']],
  ['bollard-pull', 'a wind', { 'wind.V_h': '-35 kn' }, ['wind.c_V', 'moor.c_line', 'bollard.c_pull']],
  [
    'bollard-pull',
    'a factor of safety',
    { 'moor.n_req': '-3' },
    ['moor.c_line', 'moor.c_along', 'moor.c_lost'],
  ],
  ['bollard-pull', 'a movement', { 'moor.lim_x': '-2 m' }, ['moor.c_surge', 'moor.c_xl']],
  ['bollard-pull', 'a height of the pull', { 'bolt.h': '-0.5 m' }, ['bolt.c_bolt', 'bolt.c_anchor']],
  ['demo', 'a reaction', { 'fender.R_d': '-900 kN' }, ['fender.c_R', 'fender.c_h']],
  ['demo', 'an output', { 'haul.Q': '-100 lcy/h' }, ['haul.c_N']],
  ['demo', 'a wheel load', { 'ships.P_w': '-190 kip' }, ['waterside.c_pile', 'waterside.c_str']],
  ['demo', 'a break strength', { 'moor.MBL': '-1200 kN' }, ['moor.c_l', 'bollard.c_rate']],
  [
    'pile-bearing',
    'a spacing',
    { 'pile.n_x': '2', 'pile.s_x': '-9 ft' },
    ['pile.c_sp', 'pile.c_η', 'loads.c_block'],
  ],
];

test.each(negative)('in %s, %s below zero leaves no check that rests on it', (id, _, lines, names) => {
  expect(verdicts(id, { lines: lines ?? {} }, names)).toEqual(names.map((name) => `${name}: no value`));
});
