import type { Capacity, Site } from './capacity.ts';
import { meanOver, seam, strengthAt } from './ground.ts';
import { withAll } from './inputs.ts';
import { factorsOf, type Held } from './loads.ts';
import { check, lines, type Names } from './names.ts';
import { partsBetween } from './shaft.ts';

/** AASHTO LRFD 10.7.3.9: a group in clay that fails as one block, its sides sheared and its base borne by clay. */
export function blockLines(
  { inputs, bearings, slices }: Site,
  capacity: Capacity,
  held: readonly Held[],
): Names {
  const { depth, of, strength } = capacity;
  const [short, long, count] = [
    inputs.number('pile.X_g'),
    inputs.number('pile.Y_g'),
    inputs.number('pile.n_g'),
  ];
  // What is left out of the shaft is not spoken of.
  if (of === undefined || inputs.number('pile.z_ign') > 0) return {};
  const mean = meanOver(
    partsBetween(inputs, slices, 0, depth).map(({ of: index, depth: at, length }) => {
      const layer = bearings[index]?.layer;
      return [layer ? strengthAt(layer, at) : null, length] as const;
    }),
    depth,
  );
  // N_c to a depth of two and a half widths, and as there below.
  const breadth = 1 + (0.2 * short) / long;
  const bearing = depth / short <= 2.5 ? 5 * breadth * (1 + (0.2 * depth) / short) : 7.5 * breadth;
  const block = withAll(
    [mean, strength],
    (along, under) => 2 * (short + long) * depth * along + short * long * bearing * under,
  );
  const safeties = factorsOf(inputs).safety;
  const conditions = ['usual', 'unusual', 'extreme'];
  const asked = held.map(({ compression }, index) => {
    const row = inputs.combos[index];
    const factor =
      row?.design === 'ASD'
        ? (safeties[conditions.indexOf(String(row.cond))] ?? null)
        : 1 / inputs.number('loads.φ_g');
    return withAll([compression, factor], (force, by) => force * by);
  });
  const most = asked.some((one) => one === null) ? null : count * Math.max(...asked.map(Number));
  const isClay = bearings.every(
    ({ layer }) => layer.isClay || Math.min(layer.bottom, depth) - layer.top <= seam,
  );
  const concerns = count > 1 && isClay && bearings[of]?.layer.isClay;
  return {
    ...lines('pile', { N_cg: bearing, Q_gr: block }),
    ...lines('loads', { N_gm: most }),
    'loads.c_block': concerns ? check(most, block) : { verdict: 'does not apply' },
  };
}
