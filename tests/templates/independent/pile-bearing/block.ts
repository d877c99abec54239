import type { Verdict } from '../program.ts';
import type { Capacity, Site } from './capacity.ts';
import { keptSurcharge, type Layer, seam, strengthAt, thickness } from './ground.ts';
import { type Inputs, type Maybe, sumOf, withAll } from './inputs.ts';
import type { Quake } from './liquefaction.ts';
import { factorsOf, type Held } from './loads.ts';
import { check, lines, type Names, where } from './names.ts';
import { partsBetween } from './shaft.ts';
import { ksf } from './tables.ts';

const idle: Verdict = { verdict: 'does not apply' };

/** A group in rows: how many piles, how close, and its sides over the outsides of the piles; m. */
interface Group {
  readonly count: number;
  readonly apart: number;
  readonly short: number;
  readonly long: number;
}

/** The group as entered. */
export function groupOf({ number, stated }: Inputs): Group {
  const size = number('pile.D') / 1000;
  // Along the rail the group stands as its piles do, unless somebody says otherwise.
  const along = stated('pile.s_y') ?? number('loads.s_p');
  const rows = [
    [number('pile.n_x'), number('pile.s_x')],
    [number('pile.n_y'), along],
  ] as const;
  const [side = 0, other = 0] = rows.map(([piles, spacing]) => size + (piles - 1) * spacing);
  // A row of one pile has no spacing.
  const spacings = rows.filter(([piles]) => piles > 1).map(([, spacing]) => spacing);
  return {
    count: rows[0][0] * rows[1][0],
    apart: spacings.length > 0 ? Math.min(...spacings) : along,
    short: stated('pile.X_g') ?? Math.min(side, other),
    long: stated('pile.Y_g') ?? Math.max(side, other),
  };
}

/** FHWA NHI-05-042 9.8.1.2: centres three diameters apart, 0.7 of the piles there and all of them from six. */
export function groupLines(inputs: Inputs): Names {
  const { count, apart, short, long } = groupOf(inputs);
  const size = inputs.number('pile.D') / 1000;
  const isWhole = [inputs.number('pile.n_x'), inputs.number('pile.n_y')].every(
    (piles) => Number.isInteger(piles) && piles >= 1,
  );
  return {
    ...lines('pile', { n_g: count, s_g: apart, X_g: short, Y_g: long, η_m: mostInClay(apart / size) }),
    'pile.c_n': { verdict: isWhole ? 'holds' : 'fails' },
    'pile.c_sp': count > 1 ? check(3 * size, apart) : idle,
  };
}

function mostInClay(diameters: number): number {
  return diameters >= 6 ? 1 : 0.7 + ((diameters - 3) * 0.3) / 3;
}

/** Skempton’s factor of a block so deep: it grows to a depth of two and a half widths. */
function factorOf(short: number, long: number, depth: number): number {
  return 5 * (1 + short / (5 * long)) * Math.min(1.5, 1 + depth / (5 * short));
}

/**
 * AASHTO LRFD 10.7.3.9 and 10.7.3.11: a group that fails as one block, its sides sheared, its base borne by the clay at the
 * tip or below it, there spread 2 to 1; sand counts as its piles find it.
 */
export function blockLines(
  site: Site,
  capacity: Capacity,
  base: Maybe,
  held: readonly Held[],
  quake: Quake,
): Names {
  const { inputs, bearings, slices } = site;
  const { depth, of, strength, stress } = capacity;
  const { count, apart, short, long } = groupOf(inputs);
  const layers = bearings.map(({ layer }) => layer);
  const clay = layers.reduce((sum, { isClay, top, bottom }) => sum + (isClay ? bottom - top : 0), 0);
  const own = of === undefined ? undefined : layers[of];
  const soft = softLayers(layers, depth);
  const efficiency: Names = {
    'pile.n_soft': soft,
    'pile.h_c': clay,
    'pile.c_η':
      count > 1
        ? where(soft, check(inputs.number('pile.η_g'), mostInClay(apart / (inputs.number('pile.D') / 1000))))
        : idle,
  };
  // What is left out of the shaft is not spoken of.
  if (of === undefined || !own || inputs.number('pile.z_ign') > 0) return efficiency;
  const shearOn = (from: number, by: (layer: Layer) => number, to = depth): Maybe =>
    withAll(
      [
        sumOf(
          partsBetween(inputs, slices, Math.min(from, depth), to).map(({ of: index, depth: at, length }) => {
            const bearing = bearings[index];
            if (!bearing) return null;
            const unit = bearing.layer.isClay ? strengthAt(bearing.layer, at) : bearing.friction(at);
            return withAll([unit], (shear) => shear * length * by(bearing.layer));
          }),
        ),
      ],
      (along) => 2 * (short + long) * along,
    );
  const sides = shearOn(inputs.number('pile.z_n'), () => 1);
  const shaken = shearOn(inputs.number('pile.z_n'), () => 1, Math.min(depth, quake.to));
  const sidesUp = shearOn(0, ({ isClay }) => inputs.number(isClay ? 'pile.r_clay' : 'pile.r_sand'));
  const factor = factorOf(short, long, depth);
  const atTip = own.isClay
    ? withAll([strength], (clayUnder) => short * long * factor * clayUnder)
    : withAll([base], (each) => count * each);
  const spread = layers.map((layer) => {
    const out = Math.max(0, layer.top - depth);
    const deep = factorOf(short + out, long + out, layer.top);
    return {
      short: short + out,
      long: long + out,
      factor: deep,
      bears: withAll(
        [strengthAt(layer, layer.top)],
        (clayThere) => (short + out) * (long + out) * deep * clayThere,
      ),
    };
  });
  const lies = layers.map(({ isClay, top, bottom }, index) => isClay && index > of && bottom - top > seam);
  const weakest = [atTip, ...spread.filter((_, index) => lies[index]).map(({ bears }) => bears)];
  const under = weakest.some((one) => one === null) ? null : Math.min(...weakest.map(Number));
  const block = sumOf([sides, under]);
  const weight = withAll([stress], (one) => short * long * (one - keptSurcharge(inputs)));
  const { asked, pulled } = askedOf(inputs, held, { count, weight, shaken });
  return {
    ...efficiency,
    'pile.layers.w_g': lies.map(Number),
    'pile.layers.X_l': spread.map((one) => one.short),
    'pile.layers.Y_l': spread.map((one) => one.long),
    'pile.layers.N_l': spread.map((one) => one.factor),
    ...(layers.every(({ row }) => thickness(row) > 0) && {
      'pile.layers.B_l': spread.map(({ bears }) => bears),
    }),
    ...lines('pile', {
      Q_gs: sides,
      Q_ge: shaken,
      Q_gt: atTip,
      Q_gb: under,
      N_cg: factor,
      Q_gr: block,
      Q_gu: sidesUp,
      W_g: weight,
    }),
    ...lines('loads', { N_gm: asked, Q_gn: pulled }),
    'loads.c_block': count > 1 && clay > seam ? check(asked, block) : idle,
    'loads.c_blockt': count > 1 ? where(pulled, check(pulled, sidesUp)) : idle,
  };
}

/** Layers of clay along the pile that are somewhere softer than 2 ksf. */
function softLayers(layers: readonly Layer[], depth: number): Maybe {
  const found = layers.map((layer): Maybe => {
    const bottom = Math.max(layer.top, Math.min(layer.bottom, depth));
    if (!layer.isClay || bottom - layer.top <= seam) return 0;
    return withAll([strengthAt(layer, layer.top), strengthAt(layer, bottom)], (first, last) =>
      Number(Math.min(first, last) < 2 * ksf),
    );
  });
  return sumOf(found);
}

/** What the combinations ask of a block: ultimate resistance in compression, shear of its sides in uplift. */
function askedOf(
  inputs: Inputs,
  held: readonly Held[],
  { count, weight, shaken }: { readonly count: number; readonly weight: Maybe; readonly shaken: Maybe },
): { readonly asked: Maybe; readonly pulled: Maybe } {
  const { safety, upliftSafety } = factorsOf(inputs);
  const condition = (index: number): number =>
    ['usual', 'unusual', 'extreme'].indexOf(String(inputs.combos[index]?.cond));
  const by = (index: number, safeties: readonly number[], name: string): Maybe =>
    inputs.combos[index]?.design === 'ASD' ? (safeties[condition(index)] ?? null) : 1 / inputs.number(name);
  const pressed = held.map(({ compression, of }, index) =>
    withAll(
      [compression, by(index, safety, 'loads.φ_g'), shaken],
      (force, factor, lost) => count * force * factor + (of.counts ? of.shakes * lost : 0),
    ),
  );
  const lifted = held.map(({ tension, of }, index) =>
    withAll(
      [tension, by(index, upliftSafety, 'loads.φ_gt'), weight],
      (force, factor, own) => factor * Math.max(0, count * force - of.weighing * own),
    ),
  );
  const most = (all: readonly Maybe[]): Maybe =>
    all.length === 0 || all.some((one) => one === null) ? null : Math.max(...all.map(Number));
  return { asked: most(pressed), pulled: most(lifted) };
}
