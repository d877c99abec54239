import type { Cell, Verdict, Worked } from '../program.ts';
import { type Entries, largestOf, type Row, rowOfLargest } from './entries.ts';
import { type Force, knot } from './flow.ts';
import { nominalLoads, tonnageLoads } from './published.ts';
import type { Ship } from './ship.ts';
import { doesNotApply, judge, refused } from './verdicts.ts';

/** A load combination: its name and its force. */
export interface Combination {
  readonly name: string;
  readonly force: Force;
}

/** All combinations, and the row of the one that is shown in full: undefined where two rank alike. */
export interface Loads {
  readonly combinations: readonly Combination[];
  readonly shown: number | undefined;
}

/** The loads on the moorings, and the nominal load of a bollard, kN. */
export interface MooringLoad extends Loads {
  readonly nominal: number;
}

/** Gravity that makes a tonne-force, m/s². */
export const tonneForce = 9.80665;

/** Combines wind, current and other effects, ranks the combinations, and reads the nominal loads. */
export function workLoad(
  entries: Entries,
  ship: Ship,
  wind: Force,
  current: Force,
): { readonly load: MooringLoad; readonly worked: Worked } {
  const { number, text } = entries;
  const rows = entries.rows('load.combos') ?? [];
  const other: Force = {
    along: number('load.X_o'),
    off: number('load.Y_o'),
    moment: number('load.M_o'),
  };
  const forces = rows.map((row): Force => {
    const combine = (part: keyof Force): number =>
      row.number('f_w') * wind[part] + row.number('f_c') * current[part] + row.number('f_o') * other[part];
    return { along: combine('along'), off: combine('off'), moment: combine('moment') };
  });
  const rank = text('load.rank');
  const measures = forces.map(({ along, off }) =>
    rank === 'off the berth' ? off : rank === 'along the berth' ? Math.abs(along) : Math.hypot(along, off),
  );
  const row = rowOfLargest(measures);
  const force = row === undefined ? undefined : forces[row];
  const nominal = workNominal(entries, ship);
  return {
    load: {
      combinations: forces.map((one, at) => ({ name: rows[at]?.text('combo') ?? '', force: one })),
      shown: row,
      nominal: nominal.chosen,
    },
    worked: {
      'load.combos.X_k': forces.map(({ along }): Cell => along),
      'load.combos.Y_k': forces.map(({ off }): Cell => off),
      'load.combos.M_k': forces.map(({ moment }): Cell => moment),
      'load.combos.R_k': measures,
      ...(row !== undefined &&
        force && {
          'load.i_k': row + 1,
          'load.k_gov': rows[row]?.text('combo') ?? null,
          'load.X': force.along,
          'load.Y': force.off,
          'load.M': force.moment,
        }),
      ...workParts(rows, { wind, current, other }),
      ...workPassing(entries, ship),
      ...nominal.worked,
    },
  };
}

/** Each effect that acts must be in some combination in full, and wind and current in one together. */
function workParts(
  rows: readonly Row[],
  { wind, current, other }: Readonly<Record<'wind' | 'current' | 'other', Force>>,
): Worked {
  const most = (of: (row: Row) => number): number => largestOf(rows, of);
  const [ofWind, ofCurrent] = [most((row) => row.number('f_w')), most((row) => row.number('f_c'))];
  const ofOther = most((row) => Math.abs(row.number('f_o')));
  const together = most((row) => Math.min(row.number('f_w'), row.number('f_c')));
  const inFull = (acting: readonly Force[], factor: number): Verdict => {
    const parts = acting.map(({ along, off, moment }) => [along, off, moment]);
    if (parts.flat().some(Number.isNaN)) return refused;
    return parts.every((three) => three.some((part) => part !== 0)) ? judge(1, factor) : doesNotApply;
  };
  return {
    'load.n_c': rows.length,
    'load.c_combos': judge(1, rows.length),
    'load.f_wm': ofWind,
    'load.f_cm': ofCurrent,
    'load.f_t': together,
    'load.f_k': ofOther,
    'load.c_wind': inFull([wind], ofWind),
    'load.c_current': inFull([current], ofCurrent),
    'load.c_both': inFull([wind, current], together),
    'load.c_other': inFull([other], ofOther),
  };
}

/** California Building Code ch. 31F, from memory: feet and knots; beyond 500 ft no analysis is asked for. */
function workPassing({ number }: Entries, { breadth }: Ship): Worked {
  const foot = 0.3048;
  const [clear, twice] = [number('load.s_p') / foot, (2 * breadth) / foot];
  if (clear > 500) return { 'load.passing': doesNotApply };
  const critical = clear <= twice ? 1.5 : 1.5 + (4.5 * (clear - twice)) / (500 - twice);
  return {
    'load.V_cr': critical,
    'load.passing': judge(number('load.V_p') * knot, critical * knot),
  };
}

function workNominal(
  { text }: Entries,
  { displacement, tonnage }: Ship,
): { readonly chosen: number; readonly worked: Worked } {
  const row = nominalLoads.find(({ upTo }) => displacement <= upTo);
  const byTonnage = tonnageLoads.find(({ upTo }) => tonnage <= upTo);
  const { older, later, british, indian, thoresen, spacing, square, parallel } = row ?? noNominal;
  const strong = text('load.strong') === 'yes' && displacement >= 50_000 ? 1.25 : 1;
  const [post, bollard] = [byTonnage?.post ?? Number.NaN, byTonnage?.bollard ?? Number.NaN];
  const loads: Readonly<Record<string, number>> = {
    'EAU older': older * strong,
    'EAU 2004': later * strong,
    BS: british * tonneForce,
    IS: indian * strong * tonneForce,
    Thoresen: thoresen,
    OCDI: post,
  };
  const chosen = loads[text('load.std')] ?? Number.NaN;
  return {
    chosen,
    worked: {
      'load.P_n': chosen,
      'load.s_n': spacing,
      'load.p_n': square,
      'load.t_n': parallel,
      'load.f_s': strong,
      'load.P_E': older * strong,
      'load.P_E4': later * strong,
      'load.P_BS': british * tonneForce,
      'load.P_IS': indian * strong * tonneForce,
      'load.P_Th': thoresen,
      'load.P_OC': post,
      'load.P_OCb': bollard,
    },
  };
}

const noNominal = {
  older: Number.NaN,
  later: Number.NaN,
  british: Number.NaN,
  indian: Number.NaN,
  thoresen: Number.NaN,
  spacing: Number.NaN,
  square: Number.NaN,
  parallel: Number.NaN,
};
