import type { Verdict } from '../program.ts';
import { type Capacity, type Site, wetLength } from './capacity.ts';
import { headAt, keptSurcharge, seam, strengthAt, strengthAtTop, thickness } from './ground.ts';
import { type Maybe, numberIn, sumOf, textIn, withAll } from './inputs.ts';
import { check, lines, type Names } from './names.ts';
import { between, ksf, psf } from './tables.ts';

const idle: Verdict = { verdict: 'does not apply' };

/** A pile that floats and what friction holds of it with its factor, clay that its strength, its overburden or a surcharge make doubtful. */
export function groundLines(site: Site, capacity: Capacity, friction: Maybe): Names {
  const { depth } = capacity;
  const { inputs, section, lengths } = site;
  const doubted = logged(site);
  const failing = failingUnderSurcharge(site, depth);
  const wet = wetLength(lengths.free, lengths.water, depth);
  const head = headAt(
    site.bearings.map(({ layer }) => layer),
    lengths.water,
    depth,
  );
  const asked = inputs.number('pile.H_a');
  return {
    'pile.c_float': check(
      withAll(
        [section.displacing, wet, head],
        (area, length, more) => area * (length + more) * inputs.number('pile.γ_w'),
      ),
      withAll([capacity.dryWeight, friction], (weight, held) => weight + held),
    ),
    'pile.c_art':
      asked > 0
        ? check(
            asked,
            // A standpipe is read to a tenth of a foot.
            withAll([head], (one) => (one < 1e-9 ? 0 : one) + 0.1 * 0.3048),
          )
        : idle,
    ...lines('pile', { n_σ: failing, H_q: head }),
    'pile.c_σ':
      inputs.number('pile.σ_s') > 0
        ? failing === null
          ? { verdict: 'refused' }
          : { verdict: failing > 0 ? 'fails' : 'holds' }
        : idle,
    ...seepageInSand(site),
    ...weightLines(site, capacity),
    ...doubted,
    ...tooStrong(site),
    ...tooMuchFriction(site, depth),
  };
}

/** Sand lets water through: a head that it is said to hold back is lost in the clay beside it (Darcy). */
function seepageInSand({ bearings }: Site): Names {
  const count = bearings.filter(({ layer: { row, isClay } }) => !isClay && Number(row.i_w ?? 0) > 0).length;
  return { 'pile.n_i': count, 'pile.c_iw': { verdict: count > 0 ? 'fails' : 'holds' } };
}

/**
 * EN 1997-1 7.6.2.1(2): the weight of a pile is disregarded only where the ground that it displaces weighs as much, and the
 * resistance does not count the stress of that ground: 9 s_u is net of it, N_q σ'_v is not.
 */
function weightLines({ inputs, section, bearings }: Site, { of, stress, weight }: Capacity): Names {
  const rule = bearings[of ?? -1]?.rules.baseRule;
  const displaced = withAll(
    [section.displacing, stress],
    (area, effective) => area * (effective - keptSurcharge(inputs)),
  );
  const net = rule === undefined ? null : rule === 'N_c s_u' ? displaced : 0;
  const spared = inputs.stated('pile.W_o') ?? net;
  return {
    'pile.W_o': spared,
    'pile.c_W': inputs.text('loads.W_is') === 'left out' ? check(weight, spared) : idle,
  };
}

/** Clay beyond 0.1 or 4 times the effective stress that its boring found it under; not of a crust with less than 0.5 ksf. */
function logged({ bearings, lengths: { water } }: Site): Names {
  if (water === null) return {};
  let above = 0;
  let depth = bearings[0]?.layer.logged ?? 0;
  const found = bearings.map(({ layer }) => {
    const bottom = depth + thickness(layer.row);
    const dry = Math.max(0, Math.min(bottom, water) - depth);
    const wet = bottom - depth - dry;
    const own = layer.unitWeight * dry + (layer.unitWeight - layer.water) * wet;
    const stress = above + own / 2;
    above += own;
    depth = bottom;
    const strength = layer.isClay
      ? withAll([strengthAtTop(layer), numberIn(layer.row, 's_u2')], (first, last) => (first + last) / 2)
      : 0;
    const asks = thickness(layer.row) > 0 && stress >= ksf / 2 && layer.isClay;
    const odd = withAll([strength], (one) =>
      Number(asks && one > 0 && (one > 4 * stress || one < stress / 10)),
    );
    return { stress, strength, odd };
  });
  const count = sumOf(found.map(({ odd }) => odd));
  return {
    "pile.layers.σ'_n": found.map(({ stress }) => stress),
    'pile.layers.s_l': found.map(({ strength }) => strength),
    'pile.n_ψ': count,
    'pile.c_ψ': { verdict: count === null ? 'refused' : count > 0 ? 'fails' : 'holds' },
  };
}

/** Prandtl: how many layers of clay along the pile give less than the surcharge with its safety. */
function failingUnderSurcharge({ inputs, bearings }: Site, depth: number): Maybe {
  const load = inputs.number('pile.F_σ') * inputs.number('pile.σ_s');
  return sumOf(
    bearings.map(({ layer }): Maybe => {
      const end = Math.min(layer.bottom, depth);
      if (!layer.isClay || end - layer.top <= seam) return 0;
      return withAll([strengthAt(layer, layer.top), strengthAt(layer, end)], (first, last) =>
        Number((2 + Math.PI) * Math.min(first, last) < load),
      );
    }),
  );
}

/** The strength of clay by the weight it has with its water, lb/ft³ and ksf; held beyond. */
const byWeight = [
  [90, 1.5],
  [100, 2.5],
  [110, 4],
  [120, 7],
  [130, 12],
] as const;

/** Clay that is stronger than one so light, that is so wet, is likely to be. */
function tooStrong({ inputs, bearings }: Site): Names {
  const found = bearings.map(({ layer: { row, isClay, unitWeight } }) => {
    const own = textIn(row, 'γ_is') === 'effective' ? unitWeight + inputs.number('pile.γ_w') : unitWeight;
    if (!isClay) return { own, most: 0, odd: 0 };
    const pounds = (own * 0.3048) / psf;
    const most = ksf * Number(between(byWeight, Math.min(130, Math.max(90, pounds))));
    const odd = withAll([numberIn(row, 's_u1'), numberIn(row, 's_u2')], (first, last) =>
      Number(thickness(row) > 0 && Math.max(first, last) > most),
    );
    return { own, most, odd };
  });
  const count = sumOf(found.map(({ odd }) => odd));
  return {
    'pile.layers.γ_h': found.map(({ own }) => own),
    'pile.layers.s_γ': found.map(({ most }) => most),
    'pile.n_wet': count,
    'pile.c_wet': { verdict: count === null ? 'refused' : count > 0 ? 'fails' : 'holds' },
  };
}

/** NHI-16-009 Table 7-9: β of clay up to 0.35, more of one loaded harder before; of sand K tan δ of 2 and 30 degrees. */
function tooMuchFriction({ bearings }: Site, depth: number): Names {
  const most = bearings.map(({ layer: { row, isClay } }) =>
    isClay ? 0.35 * Math.sqrt(numberIn(row, 'OCR') ?? 1) : 1.2,
  );
  const odd = bearings.map(({ layer, rules }, index): Maybe => {
    if (Math.min(layer.bottom, depth) - layer.top <= seam) return 0;
    return withAll([rules.beta], (beta) => Number(beta > Number(most[index])));
  });
  const count = sumOf(odd);
  return {
    'pile.layers.β_x': most,
    'pile.n_β': count,
    'pile.c_β': { verdict: count === null ? 'refused' : count > 0 ? 'fails' : 'holds' },
  };
}
