import type { Verdict } from '../program.ts';
import type { Capacity, Site } from './capacity.ts';
import { seam } from './ground.ts';
import { type Maybe, sumOf, withAll } from './inputs.ts';
import { angleOf } from './most.ts';
import { lines, type Names } from './names.ts';

/** EN 1998-5 4.1.4: loose sand below the water is asked about where an earthquake is; what is left out gives nothing. */
export function liquefactionLines(site: Site, capacity: Capacity, fixity: Maybe): Names {
  const { inputs, bearings, lengths } = site;
  const { depth, of, ring, byLayer } = capacity;
  const reach = (5 * inputs.number('pile.D')) / 1000;
  const loose = bearings.map((bearing): Maybe => {
    const { isClay, top, bottom } = bearing.layer;
    if (isClay) return 0;
    return withAll([lengths.water], (level) =>
      Math.min(depth, bottom) - Math.max(top, level) > seam
        ? withAll([angleOf(bearing)], (angle) => Number(angle < 30))
        : 0,
    );
  });
  const counting = bearings.map(({ layer: { isClay, top, bottom } }, index): Maybe => {
    if (isClay) return 0;
    return withAll([byLayer[index] ?? null, ring, fixity], (rubs, bears, fixed) => {
      const isFixing = Math.min(bottom, reach) - top > seam && fixed < bottom;
      return rubs > 0 || (index === of && bears > 0) || isFixing ? (loose[index] ?? null) : 0;
    });
  });
  const said = inputs.text('pile.liq');
  const found = said === 'none' ? 0 : sumOf(said === 'left out' ? counting : loose);
  const idle: Verdict = { verdict: 'does not apply' };
  const held: Verdict = { verdict: found === null ? 'refused' : found > 0 ? 'fails' : 'holds' };
  return {
    'pile.layers.w_lq': loose,
    'pile.layers.w_lc': counting,
    ...lines('pile', { n_lq: found }),
    'pile.c_liq': inputs.number('loads.N_E') > 0 ? held : idle,
  };
}
