import type { Verdict } from '../program.ts';
import { type Capacity, insideBy, type Site } from './capacity.ts';
import { liquefies, seam } from './ground.ts';
import { type Inputs, type Maybe, numberIn, type Row, sumOf, textIn, withAll } from './inputs.ts';
import { lines, type Names } from './names.ts';
import { frictionBetween } from './shaft.ts';

/** What an earthquake does to a pile through sand that liquefies: kN and m. */
export interface Quake {
  /** The bottom of the lowest such sand along the pile, and how deep ground hangs on the pile then. */
  readonly bottom: number;
  readonly to: number;
  /** Friction outside that hangs, and what of shaft and inside no longer resists. */
  readonly hanging: Maybe;
  readonly inside: Maybe;
  readonly left: Maybe;
  readonly shaftLost: Maybe;
  readonly baseLost: Maybe;
}

/** Without ground that liquefies nothing is taken. */
export const still: Quake = { bottom: 0, to: 0, hanging: 0, inside: 0, left: 0, shaftLost: 0, baseLost: 0 };

/** AASHTO LRFD 3.11.8: all ground above what liquefies settles with it; what hangs already by the drag does not hang twice. */
export function quakeOf(site: Site, capacity: Capacity): Quake {
  const { inputs, section, bearings, slices } = site;
  const { depth } = capacity;
  const bottoms = bearings.map(({ layer }) =>
    liquefies(layer) && Math.min(layer.bottom, depth) - layer.top > seam ? Math.min(layer.bottom, depth) : 0,
  );
  const bottom = Math.max(0, ...bottoms);
  const to = inputs.stated('pile.z_e') ?? bottom;
  const start = Math.max(inputs.number('pile.z_ign'), Math.min(depth, inputs.number('pile.z_n')));
  const taken = frictionBetween(inputs, section, bearings, slices, [start, Math.max(start, to)]);
  const rule = inputs.text('pile.plug_rule');
  const left = insideBy(
    rule,
    withAll([capacity.freeInside, taken.inside], (all, lost) => all - lost),
    capacity.plug,
  );
  const group = inputs.number('pile.η_g');
  return {
    bottom,
    to,
    hanging: taken.outside,
    inside: taken.inside,
    left,
    shaftLost: withAll([taken.outside], (one) => group * one),
    baseLost: withAll([capacity.within, left], (before, after) => group * Math.max(0, before - after)),
  };
}

/** EN 1998-5 4.1.4: of sand below the water it is said whether it liquefies, where an earthquake is; what does gives nothing. */
export function liquefactionLines(site: Site, capacity: Capacity, quake: Quake): Names {
  const { inputs, bearings, lengths } = site;
  const { depth, of, ring, byLayer } = capacity;
  const wet = bearings.map(({ layer: { isClay, top, bottom } }): Maybe => {
    if (isClay) return 0;
    return withAll([lengths.water], (level) => Number(Math.min(depth, bottom) - Math.max(top, level) > seam));
  });
  const counting = bearings.map(({ layer: { isClay } }, index): Maybe => {
    if (isClay) return 1;
    return withAll([byLayer[index] ?? null, ring], (rubs, bears) =>
      Number(rubs > 0 || (index === of && bears > 0)),
    );
  });
  const open = bearings.map(({ layer: { row } }, index): Maybe => {
    const answer = textIn(row, 'lq') ?? 'not assessed';
    return answer === 'does not liquefy' ? 0 : ((answer === 'liquefies' ? counting : wet)[index] ?? null);
  });
  const unproved = bearings.map(({ layer: { row } }, index): Maybe => {
    if (textIn(row, 'lq') !== 'does not liquefy' || isProved(row)) return 0;
    return wet[index] ?? null;
  });
  const found = sumOf(open);
  const doubtful = sumOf(unproved);
  const idle: Verdict = { verdict: 'does not apply' };
  const none = (count: Maybe): Verdict =>
    inputs.number('loads.N_E') > 0
      ? { verdict: count === null ? 'refused' : count > 0 ? 'fails' : 'holds' }
      : idle;
  return {
    'pile.layers.w_sw': wet,
    'pile.layers.w_lq': open,
    'pile.layers.w_ld': unproved,
    ...lines('pile', {
      n_lq: found,
      n_ld: doubtful,
      z_lq: quake.bottom,
      z_e: quake.to,
      Q_e: quake.hanging,
      Q_ie: quake.inside,
      Q_re: quake.left,
      Q_se: quake.shaftLost,
      Q_be: quake.baseLost,
    }),
    'pile.c_liq': none(found),
    'pile.c_lqs': none(doubtful),
  };
}

/** EN 1998-5 4.1.4: tests with a resistance of 1/0.8 times the stress, or the screening of a code, which takes dense sand alone. */
function isProved(row: Row): boolean {
  const by = textIn(row, 'lq_by') ?? 'not named';
  if (by === 'not named') return false;
  if (by === 'screening') return /\bdense (sand|gravel)/.test(textIn(row, 'class') ?? '');
  return (numberIn(row, 'F_lq') ?? 0) >= 1 / 0.8;
}

/** Whether the pile is fixed below what liquefies, and the ground that hangs on it is counted down to the neutral plane. */
export function quakeChecks(inputs: Inputs, { bottom, to }: Quake, plane: Maybe): Names {
  if (bottom === 0 || inputs.number('loads.N_E') <= 0)
    return { 'loads.c_lqd': { verdict: 'does not apply' } };
  const verdict = plane === null ? 'refused' : Math.min(plane, bottom) <= to ? 'holds' : 'fails';
  return { 'loads.c_lqd': { verdict } };
}
