import type { Cell } from '../program.ts';
import { type Site, wetLength } from './capacity.ts';
import { type Found, firstDepth, neededLength, profileOf } from './depth.ts';
import { headAt } from './ground.ts';
import { withAll } from './inputs.ts';
import type { Held } from './loads.ts';
import { check, lines, type Names } from './names.ts';

/** The table of depths, and the length that it gives. */
export function depthLines(site: Site, found: Found, held: readonly Held[]): Names {
  const { inputs, lengths } = site;
  const { design, ratios } = found;
  const embedded = design.depth;
  const counting = held.filter(({ of }) => of.counts).map(({ of }) => of);
  const depths = profileOf(site, found, counting);
  const column = (of: (one: (typeof depths)[number]) => Cell) => depths.map(of);
  const needed = neededLength(depths, embedded);
  const columns: Names = {
    'depth.z_0': firstDepth(embedded, inputs.number('depth.dz_p')),
    'depth.profile.z_p': column(({ capacity }) => capacity.depth),
    'depth.profile.El_p': column(({ capacity }) => lengths.zero - capacity.depth),
    'depth.profile.k_p': column(({ capacity }) => (capacity.of === undefined ? null : capacity.of + 1)),
    "depth.profile.σ'_p": column(({ capacity }) => capacity.stress),
    'depth.profile.s_p': column(({ capacity }) => capacity.strength),
    'depth.profile.q_p': column(({ capacity }) => capacity.unit),
    'depth.profile.Q_op': column(({ capacity }) => capacity.outside),
    'depth.profile.Q_np': column(({ capacity }) => capacity.above),
    'depth.profile.Q_sp': column(({ capacity }) => capacity.shaft),
    'depth.profile.Q_ip': column(({ capacity }) => capacity.inside),
    'depth.profile.Q_inp': column(({ capacity }) => capacity.within),
    'depth.profile.Q_bp': column(({ capacity }) => capacity.base),
    'depth.profile.Q_tp': column(({ capacity }) => capacity.uplift),
    'depth.profile.z_s': column(({ counts }) => counts),
    'depth.profile.S_p': column(({ shaft }) => shaft),
    'depth.profile.B_p': column(({ base }) => base),
    'depth.profile.Q_cp': column(({ whole }) => whole),
    'depth.profile.T_p': column(({ friction }) => friction),
    'depth.Q_sL': design.shaft,
    'depth.Q_bL': design.base,
    'depth.Q_tL': design.uplift,
    'depth.ρ_s': ratios.shaft,
    'depth.ρ_b': ratios.base,
    'depth.ρ_c': ratios.whole,
    'depth.ρ_t': ratios.uplift,
    'depth.profile.W_p': column(({ capacity }) => capacity.weight),
    'depth.profile.W_ap': column(({ capacity }) => capacity.dryWeight),
    'depth.profile.L_whp': column(({ capacity }) => wetLength(lengths.free, lengths.water, capacity.depth)),
    'depth.profile.H_p': column(({ capacity }) =>
      headAt(
        site.bearings.map(({ layer }) => layer),
        lengths.water,
        capacity.depth,
      ),
    ),
    'depth.profile.W_hp': column(({ capacity }) => capacity.lightWeight),
    'depth.profile.W_plp': column(({ capacity }) => capacity.plugWeight),
    'depth.profile.m_c': column(({ compression }) => compression),
    'depth.profile.m_t': column(({ uplift }) => uplift),
    'depth.profile.m': column(({ least }) => least),
  };
  if (!needed) return columns;
  const { meeting, first, failing } = needed;
  return {
    ...columns,
    ...lines('depth', {
      n_m: meeting,
      L_n: first,
      L_m: needed.betweenDepths,
      n_d: failing,
      El_n: withAll([first], (depth) => lengths.zero - depth),
      L_o: withAll(
        [first, lengths.free],
        (depth, up) => Math.max(depth, embedded) + up + inputs.number('depth.L_x'),
      ),
    }),
    'depth.c_found': { verdict: meeting > 0 ? 'holds' : 'fails' },
    ...(failing !== null && {
      'depth.c_deep': { verdict: failing === 0 ? ('holds' as const) : ('fails' as const) },
    }),
    'depth.c_len': check(first, embedded),
  };
}
