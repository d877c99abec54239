import type { Cell, Verdict, Worked } from '../program.ts';
import { type Entries, largestOf, type Row, rowOfLargest } from './entries.ts';
import { type Direction, type Force, knot } from './flow.ts';
import { nominalLoads, tonnageLoads } from './published.ts';
import type { Ship } from './ship.ts';
import { doesNotApply, judge, refused } from './verdicts.ts';

/** A load combination: its name, its force, and where wind and current come from, deg from the stern. */
export interface Combination {
  readonly name: string;
  readonly force: Force;
  readonly windFrom: number;
  readonly currentFrom: number;
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

/** A flow from all directions that are looked at, the one entered first. */
type Flow = readonly Direction[];

/** Combines wind, current and other effects from each direction, ranks the combinations, and reads the nominal loads. */
export function workLoad(
  entries: Entries,
  ship: Ship,
  winds: Flow,
  currents: Flow,
): { readonly load: MooringLoad; readonly worked: Worked } {
  const { number, text } = entries;
  const rows = entries.rows('load.combos') ?? [];
  const other: Force = {
    along: number('load.X_o'),
    off: number('load.Y_o'),
    moment: number('load.M_o'),
  };
  const each = rows.map((row) => combine(row, winds, currents, other));
  const combinations = each.flat();
  const asEntered = each.flatMap(([first]) => (first ? [first.force] : []));
  const forces = combinations.map(({ force }) => force);
  const rank = text('load.rank');
  const measures = forces.map(({ along, off }) =>
    rank === 'off the berth' ? off : rank === 'along the berth' ? Math.abs(along) : Math.hypot(along, off),
  );
  const shown = rowOfLargest(measures);
  const row = shown === undefined ? undefined : combinations[shown];
  const nominal = workNominal(entries, ship);
  const [wind, current] = [winds[0]?.force ?? noForce, currents[0]?.force ?? noForce];
  return {
    load: { combinations, shown, nominal: nominal.chosen },
    worked: {
      'load.combos.X_k': asEntered.map(({ along }): Cell => along),
      'load.combos.Y_k': asEntered.map(({ off }): Cell => off),
      'load.combos.M_k': asEntered.map(({ moment }): Cell => moment),
      'load.n_e': combinations.length,
      'load.each.name': combinations.map(({ name }) => name),
      'load.each.a_w': combinations.map(({ windFrom }) => windFrom),
      'load.each.a_c': combinations.map(({ currentFrom }) => currentFrom),
      'load.each.X_k': forces.map(({ along }): Cell => along),
      'load.each.Y_k': forces.map(({ off }): Cell => off),
      'load.each.M_k': forces.map(({ moment }): Cell => moment),
      'load.each.R_k': measures,
      ...(shown !== undefined &&
        row && {
          'load.i_k': shown + 1,
          'load.k_gov': row.name,
          'load.θ_k': row.windFrom,
          'load.θ_v': row.currentFrom,
          'load.X': row.force.along,
          'load.Y': row.force.off,
          'load.M': row.force.moment,
        }),
      ...workParts(rows, { wind, current, other }),
      ...workPassing(entries, ship),
      ...nominal.worked,
    },
  };
}

const noForce: Force = { along: Number.NaN, off: Number.NaN, moment: Number.NaN };

/** One combination from each direction of what has a part in it: the directions of the wind, in each those of the current. */
function combine(row: Row, winds: Flow, currents: Flow, other: Force): readonly Combination[] {
  const [ofWind, ofCurrent, ofOther] = [row.number('f_w'), row.number('f_c'), row.number('f_o')];
  const sum = (wind: Force, current: Force, part: keyof Force): number =>
    ofWind * wind[part] + ofCurrent * current[part] + ofOther * other[part];
  return (ofWind === 0 ? winds.slice(0, 1) : winds).flatMap((wind) =>
    (ofCurrent === 0 ? currents.slice(0, 1) : currents).map(
      (current): Combination => ({
        name: row.text('combo'),
        windFrom: wind.angle,
        currentFrom: current.angle,
        force: {
          along: sum(wind.force, current.force, 'along'),
          off: sum(wind.force, current.force, 'off'),
          moment: sum(wind.force, current.force, 'moment'),
        },
      }),
    ),
  );
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
  { laden, tonnage }: Ship,
): { readonly chosen: number; readonly worked: Worked } {
  const row = nominalLoads.find(({ upTo }) => laden <= upTo);
  const byTonnage = tonnageLoads.find(({ upTo }) => tonnage <= upTo);
  const { older, later, british, indian, thoresen, spacing, square, parallel } = row ?? noNominal;
  const strong = text('load.strong') === 'yes' && laden >= 50_000 ? 1.25 : 1;
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
