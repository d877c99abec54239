import type { Verdict } from '../program.ts';
import type { Capacity, Site } from './capacity.ts';
import { endOf, same, seam, strengthAt, thickness } from './ground.ts';
import type { Maybe } from './inputs.ts';
import { factorsOf } from './loads.ts';
import { check, lines, type Names } from './names.ts';

const idle: Verdict = { verdict: 'does not apply' };

/** The least resistance factor that AASHTO LRFD Table 10.5.5.2.3-1 gives the rules used along the pile, against that chosen. */
export function factorLines({ inputs, bearings }: Site, { depth }: Capacity): Names {
  const along = bearings.filter(({ layer }) => Math.min(layer.bottom, depth) - layer.top > seam);
  if (along.length === 0) return {};
  const leastOf = (byStress: number, byStrength: number): number =>
    Math.min(
      ...along.map(({ rules: { rule } }) =>
        rule === 'f stated' || rule === 'liquefied'
          ? 1
          : ['beta', 'beta stated', 'K tan delta'].includes(rule)
            ? byStress
            : byStrength,
      ),
    );
  const [least, leastInUplift] = [leastOf(0.25, 0.35), leastOf(0.2, 0.25)];
  const isStatic = inputs.text('loads.φ_by').startsWith('static: ');
  const concerns = isStatic && inputs.text('loads.basis') === 'LRFD';
  return {
    'loads.φ_m': least,
    'loads.φ_mt': leastInUplift,
    'loads.c_φ': concerns ? check(factorsOf(inputs).resistance, least) : idle,
    'loads.c_φt': concerns ? check(factorsOf(inputs).upliftResistance, leastInUplift) : idle,
  };
}

/** API RP 2GEO 8.1: how far a tip reaches into its layer, and how far it stays above a weaker one. */
export function tipLines({ inputs, bearings }: Site, { depth, of, unit }: Capacity): Names {
  const own = of === undefined ? undefined : bearings[of];
  if (of === undefined || !own || unit === null) return {};
  const atTop = bearings.map(({ layer, base }) => base(layer.top, strengthAt(layer, layer.top)));
  const weaker = bearings.map(({ layer }, index): Maybe => {
    if (index <= of || thickness(layer.row) === 0) return 0;
    const below = atTop[index];
    return below === null || below === undefined ? null : Number(below < unit);
  });
  // Rounding decides whether an equal layer is weaker.
  const isEven = atTop.some(
    (below, index) => index > of && below !== null && Math.abs(below - unit) < 1e-9 * unit,
  );
  if (isEven) return {};
  const into = depth - own.layer.top;
  const size = inputs.number('pile.D') / 1000;
  const embedded = own.layer.isClay ? idle : check(inputs.number('pile.n_emb') * size, into);
  const named: Names = {
    'pile.e_t': into,
    'pile.c_emb': embedded,
    ...(bearings.every(({ layer }) => thickness(layer.row) > 0) && { 'pile.layers.q_t': atTop }),
    'pile.layers.w_t': weaker,
  };
  if (weaker.some((one) => one === null)) return { ...named, 'pile.H_w': null };
  const next = bearings[weaker.indexOf(1)]?.layer.top;
  const end = endOf(bearings.map(({ layer }) => layer));
  const apart = (next ?? end) - depth;
  const clear = Math.abs(apart) < same ? 0 : apart;
  return {
    ...named,
    ...lines('pile', { H_w: clear }),
    'pile.c_pun': next === undefined ? idle : check(inputs.number('pile.n_pun') * size, clear),
  };
}
