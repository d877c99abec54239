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
    'energy.ln_M data.brolsma.ln_M data.brolsma.ln_v data.angles.dAF',
    'energy.γ panel.φ_s panel.φ_s0 panel.φ_w panel.φ_w0 panel.way.s_si panel.way.s_wi',
    'panel.o_h wharf.C_S0',
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
    'pile.z_w_in pile.z_w pile.z_h pile.L_t pile.L_c pile.layers.z_a pile.layers.G_s pile.W pile.W_h pile.W_t',
    'pile.Q_w pile.Q_tu pile.T_u loads.T_a loads.FS_t loads.combos.f_E loads.combos.P',
    'depth.profile.Q_sp depth.profile.Q_irp depth.profile.T_p depth.profile.W_p depth.profile.W_hp depth.ρ_t',
    'depth.profile.m_c depth.profile.m_t depth.profile.m depth.profile.m_a',
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
  ['fender-energy', 'a softness', { C_S: '-1' }, ['fender.c_E', 'fender.c_R', 'absorber.c_l']],
  ['fender-energy', 'a number of chains', { n_s: '-2' }, ['panel.c_s']],
  ['debris-haul', 'a number of trucks', { 'haul.n_k': '-3' }, ['haul.c_n', 'haul.c_MF', 'haul.c_a']],
  ['debris-haul', 'an output', { 'haul.Q': '-100 lcy/h' }, ['haul.c_a', 'haul.c_N', 'dust.c_η', 'cost.c_D']],
  ['debris-haul', 'a loose volume', { 'haul.V_j': '-100 lcy' }, ['haul.c_P', 'haul.c_a', 'dust.c_η']],
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
