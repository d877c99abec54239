import type { Verdict } from '../program.ts';
import type { Site } from './capacity.ts';
import { seam, strengthAt } from './ground.ts';
import { type Maybe, sumOf, withAll } from './inputs.ts';
import { angleOf, overAngle } from './most.ts';
import { check, lines, type Names } from './names.ts';
import { ksf } from './tables.ts';

const idle: Verdict = { verdict: 'does not apply' };

/** AASHTO LRFD Table C10.4.6.3-2, ksi/ft: very loose and loose, loose, medium, dense, dense and more. */
const rates = { dry: [0.417, 0.417, 1.11, 2.78, 2.78], wet: [0.208, 0.208, 0.556, 1.39, 1.39] } as const;

/** The ground of the upper five diameters, which holds a pile sideways, against what is entered for its fixity. */
export function sidewaysLines({ inputs, bearings, lengths: { water } }: Site, from: Maybe): Names {
  if (from === null) return {};
  const reach = from + (5 * inputs.number('pile.D')) / 1000;
  if (water === null || Math.abs(water - reach) < 1e-9) return {};
  const isClayChosen = inputs.text('loads.fix') === 'clay';
  const perLength = (144 * ksf) / 0.3048;
  const parts = bearings.map((bearing) => {
    const { top, bottom, isClay } = bearing.layer;
    const start = Math.max(top, from);
    const length = Math.max(0, Math.min(bottom, reach) - start);
    return {
      isClay,
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
  const chosen = parts.filter(({ isClay }) => isClay === isClayChosen);
  const whole = parts.reduce((sum, { length }) => sum + length, 0);
  const ofKind = chosen.reduce((sum, { length }) => sum + length, 0);
  const isThere = ofKind > seam;
  const mean = (of: 'strength' | 'rate') =>
    withAll(
      [sumOf(chosen.map((part) => withAll([part[of]], (value) => value * part.length)))],
      (sum) =>
        // A seam no thicker than this is none.
        sum / Math.max(seam, ofKind),
    );
  const [strength, rate] = [isClayChosen ? mean('strength') : 0, isClayChosen ? 0 : mean('rate')];
  return {
    ...lines('loads', { h_5: whole, h_k: ofKind, s_fm: strength, n_fm: rate }),
    'pile.layers.h_f': parts.map(({ length }) => length),
    'pile.layers.n_f': parts.map((part) => part.rate),
    'loads.c_fix': check(whole / 2, ofKind),
    'loads.c_suf': isClayChosen && isThere ? check(inputs.number('loads.s_uf'), strength) : idle,
    'loads.c_nh': !isClayChosen && isThere ? check(inputs.number('loads.n_h'), rate) : idle,
  };
}
