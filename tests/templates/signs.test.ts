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
    'energy.ln_M data.brolsma.ln_M data.brolsma.ln_v',
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
  demo: [
    'fender.γ fender.o_h',
    'debris.r_t debris.materials.c_r debris.takeoff.K_r debris.takeoff.K debris.K_f',
    'cost.items.K cost.items.r cost.K_n cost.K_o cost.K_c cost.K_t cost.k_L',
    'sequence.tasks.lag',
  ],
};

/** The sheets of the demo book that are held to it. */
const ofDemo = new Set(['fender', 'debris', 'haul', 'stock', 'pavement', 'cost', 'sequence']);

test.each(Object.entries(signed))(
  'numbers of %s that cannot be negative have a range that says so',
  (id, names) => {
    const { model } = openNotebook(templateBook(id));
    const open = [...model.items.values()].flatMap((item) => {
      if (id === 'demo' && !ofDemo.has(item.id.split('.')[0] ?? '')) return [];
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
];

test.each(negative)('in %s, %s below zero leaves no check that rests on it', (id, _, lines, names) => {
  expect(verdicts(id, { lines: lines ?? {} }, names)).toEqual(names.map((name) => `${name}: no value`));
});
