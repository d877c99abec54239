import type { Verdict } from '../program.ts';
import type { Site } from './capacity.ts';
import { liquefies, seam, strengthAt } from './ground.ts';
import { type Maybe, sumOf, withAll } from './inputs.ts';
import { angleOf, overAngle } from './most.ts';
import { check, lines, type Names } from './names.ts';
import { ksf } from './tables.ts';

const idle: Verdict = { verdict: 'does not apply' };

/** AASHTO LRFD Table C10.4.6.3-2, ksi/ft: very loose and loose, loose, medium, dense, dense and more. */
const rates = { dry: [0.417, 0.417, 1.11, 2.78, 2.78], wet: [0.208, 0.208, 0.556, 1.39, 1.39] } as const;

/** What is entered of the ground that holds a pile sideways, and the names of what comes of it. */
interface Entered {
  readonly kind: string;
  readonly strength: string;
  readonly rate: string;
  /** What the names end in. */
  readonly suffix: '' | 'e';
}

/** The ground of five diameters, which holds a pile sideways, against what is entered for its fixity: at rest, and shaken. */
export function sidewaysLines(site: Site, from: Maybe): Names {
  if (from === null) return {};
  const atRest = { kind: 'loads.fix', strength: 'loads.s_uf', rate: 'loads.n_h', suffix: '' } as const;
  const shaken = { kind: 'loads.fix_e', strength: 'loads.s_ufe', rate: 'loads.n_he', suffix: 'e' } as const;
  return { ...groundFrom(site, 0, atRest, true), ...groundFrom(site, from, shaken, from > 0) };
}

function groundFrom(
  { inputs, bearings, lengths: { water } }: Site,
  from: number,
  entered: Entered,
  isAsked: boolean,
): Names {
  const reach = from + (5 * inputs.number('pile.D')) / 1000;
  if (water === null || Math.abs(water - reach) < 1e-9) return {};
  const isClayChosen = inputs.text(entered.kind) === 'clay';
  const perLength = (144 * ksf) / 0.3048;
  const parts = bearings.map((bearing) => {
    const { top, bottom, isClay } = bearing.layer;
    const start = Math.max(top, from);
    const length = Math.max(0, Math.min(bottom, reach) - start);
    return {
      isClay,
      // In an earthquake what liquefies holds nothing.
      holds: entered.suffix === '' || !liquefies(bearing.layer),
      length,
      strength: length > 0 ? strengthAt(bearing.layer, start + length / 2) : 0,
      rate: isClay
        ? 0
        : withAll(
            [overAngle(water < reach ? rates.wet : rates.dry, angleOf(bearing))],
            (one) => perLength * one,
          ),
    };
  });
  const chosen = parts.filter(({ isClay, holds }) => isClay === isClayChosen && holds);
  const whole = parts.reduce((sum, { length }) => sum + length, 0);
  const ofKind = chosen.reduce((sum, { length }) => sum + length, 0);
  const isThere = isAsked && ofKind > seam;
  const mean = (of: 'strength' | 'rate') =>
    withAll(
      [sumOf(chosen.map((part) => withAll([part[of]], (value) => value * part.length)))],
      (sum) =>
        // A seam no thicker than this is none.
        sum / Math.max(seam, ofKind),
    );
  const [strength, rate] = [isClayChosen ? mean('strength') : 0, isClayChosen ? 0 : mean('rate')];
  const { suffix } = entered;
  return {
    ...lines('loads', {
      [`h_5${suffix}`]: whole,
      [`h_k${suffix}`]: ofKind,
      [`s_fm${suffix}`]: strength,
      [`n_fm${suffix}`]: rate,
    }),
    [`pile.layers.h_f${suffix}`]: parts.map(({ length }) => length),
    [`pile.layers.n_f${suffix}`]: parts.map((part) => part.rate),
    [`loads.c_fix${suffix}`]: isAsked ? check(whole / 2, Math.max(seam, ofKind)) : idle,
    [`loads.c_suf${suffix}`]:
      isClayChosen && isThere ? check(inputs.number(entered.strength), strength) : idle,
    [`loads.c_nh${suffix}`]: !isClayChosen && isThere ? check(inputs.number(entered.rate), rate) : idle,
  };
}
