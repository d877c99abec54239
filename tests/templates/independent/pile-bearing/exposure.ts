import type { Verdict } from '../program.ts';
import type { Lengths } from './ground.ts';
import { type Inputs, type Maybe, withAll } from './inputs.ts';
import { check, lines, type Names } from './names.ts';
import { mm } from './small-units.ts';
import { between, corrosion, psf } from './tables.ts';

const idle: Verdict = { verdict: 'does not apply' };
const even = 1e-9;

/** Pounds on a cubic foot of water that is neither fresh nor of the sea. */
const brackish = (63 * psf) / 0.3048;

/** Where a pile stands: in ground or air, in fresh water, always below the sea, or through its low water; undefined at a boundary. */
function standsIn(inputs: Inputs, { free, low, water }: Lengths): string | null | undefined {
  if (water === null) return null;
  if (Math.abs(water) < even) return undefined;
  if (water > 0) return 'soil';
  const isCalledSea = inputs.text('pile.zone').startsWith('sea');
  if (!isCalledSea && inputs.number('pile.γ_w') <= brackish) return 'fresh water';
  if (free === null || low === null) return null;
  // Low water stands so far above the ground; what rises further passes the zone of low water.
  const above = free - -low;
  if (Math.abs(above) < even) return undefined;
  return above < 0 ? 'sea, immersed' : 'sea, low water and splash';
}

/** Fresh water weighs 62.4 lb/ft³; where water above the ground weighs more than 62.6, some of it is of the sea. */
const freshest = (62.6 * psf) / 0.3048;

/** Steel loses as little as in fresh water where the water that stands around it is as light as that. */
function lightAsFresh(inputs: Inputs, { water }: Lengths): Names {
  const isCalledFresh = inputs.text('pile.zone') === 'fresh water';
  if (!isCalledFresh || inputs.text('pile.material') !== 'steel') return { 'pile.c_fresh': idle };
  if (water === null) return { 'pile.c_fresh': { verdict: 'refused' } };
  if (Math.abs(water) < even) return {};
  return { 'pile.c_fresh': water < 0 ? check(inputs.number('pile.γ_w'), freshest) : idle };
}

/** EN 1993-5:2007 Tables 4-1 and 4-2: the exposure chosen against that of the place, and that there is one to choose. */
export function exposureLines(inputs: Inputs, lengths: Lengths): Names {
  const isSteel = inputs.text('pile.material') === 'steel';
  const life = inputs.number('pile.life');
  const solid = ['square', 'round', 'octagon'].includes(inputs.text('pile.pile_kind'));
  const lossIn = (zone: string) => between(corrosion[zone] ?? [], life);
  const stands = standsIn(inputs, lengths);
  const common: Names = {
    // Natural soil takes nothing in the first five years.
    'pile.c_loss':
      isSteel && life > 5
        ? { verdict: Number(lossIn(inputs.text('pile.zone'))) > 0 ? 'holds' : 'fails' }
        : idle,
    'pile.c_life': isSteel ? { verdict: life > 0 ? 'holds' : 'fails' } : idle,
    'pile.c_solid': solid ? { verdict: isSteel ? 'fails' : 'holds' } : idle,
  };
  Object.assign(common, lightAsFresh(inputs, lengths));
  if (stands === undefined) return common;
  const loss = stands === null ? null : lossIn(stands);
  const chosen = lossIn(inputs.text('pile.zone'));
  return {
    ...common,
    ...lines('pile', { x_z: stands, c_x: mm(withAll([loss], (one) => one / 1000)) }),
    'pile.c_zone': isSteel ? check(loss, chosen) : idle,
  };
}

/** Of a section of steel that is no pipe, whether the perimeter that corrodes is its outline at least. */
export function corrosionEntered({ text, number }: Inputs, outline: Maybe): Verdict {
  const corrodes =
    text('pile.pile_kind') === 'stated' && text('pile.material') === 'steel' && number('pile.life') > 0;
  if (!corrodes) return { verdict: 'does not apply' };
  return check(outline, number('pile.p_c'));
}
