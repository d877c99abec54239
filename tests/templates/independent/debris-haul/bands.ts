import type { Drawn, Worked } from '../program.ts';
import { above, cell, exceeds, num, part, rowsOf, sum } from './arithmetic.ts';
import { none, type Quantities } from './quantities.ts';
import type { Trips } from './trips.ts';
import { materialOf } from './volumes.ts';

const yard = 0.9144 ** 3;
const poundPerCubicFoot = 0.45359237 / 0.3048 ** 3;

/** The rate of one machine, and what it costs in an hour. */
export interface Paid {
  readonly rate: number;
  readonly hourly: number;
}

/** What other sheets work out of the factors that are held to their bands. */
export interface InUse {
  readonly quantities: Quantities;
  readonly trips: Trips;
  readonly fill: {
    readonly loosened: number;
    readonly shrunk: number;
    readonly placed: readonly Paid[];
  };
  /** What one machine breaks in an hour, in m³, and costs in it, line by line. */
  readonly broken: readonly Paid[];
}

/** Each factor as it is used, between the least and the most that it can be: what lies beyond is an entry gone wrong. */
export function workBands(drawn: Drawn, { quantities, trips, fill, broken }: InUse): Worked {
  const { lines } = drawn;
  const line = (name: string) => num(lines[name]);
  const gravity = num(lines['basis.g'], 9.80665);
  const materials = rowsOf(drawn, 'swell.materials').map((row) => materialOf(row, gravity));
  const most = (values: readonly number[]) => Math.max(0, ...values);
  const bands: readonly (readonly [name: string, value: number, least: number, most: number])[] = [
    ['efficiency', line('basis.t_eff') / 60, 0.1, 1],
    ['day worked over 24 h', (line('basis.h_s') * line('basis.n_d')) / 24, 0.1, 1],
    ['bank volume of a cubic yard', 1, 1, 1],
    ['loose volume of a cubic yard', 1, 1, 1],
    ['compacted volume of a cubic yard', 1, 1, 1],
    ['gravity over 9.80665 m/s²', gravity / 9.80665, 0.99, 1.01],
    ['density of steel over 490 lbm/cf', line('basis.ρ_s') / (490 * poundPerCubicFoot), 0.97, 1.03],
    ['most reinforcement in an item, part of its volume', quantities.mostBars, 0, 0.04],
    ['reinforcement recovered', part(lines['quantity.R_s']), 0, 1],
    ['most recycled of an item', quantities.mostRecycled, 0, 1],
    [
      'density of the lightest item over the least of its kind',
      Math.min(1000, ...materials.map(({ bank, weighs }) => bank / weighs)),
      1,
      1000,
    ],
    [
      'swell of an item over the most of its kind',
      most(materials.map(({ loose, swellsTo }) => loose / swellsTo)),
      0,
      1,
    ],
    [
      'condition factor of breaking, largest',
      most(rowsOf(drawn, 'breaking.works').map((row) => num(row.k, 1))),
      0,
      1.5,
    ],
    ['rate of a breaking machine, fastest, cy/h', most(broken.map(({ rate }) => rate)) / yard, 0, 140],
    ['body, heaped, cy', line('haul.V_k') / yard, 1, 80],
    ['fill of the body', part(lines['haul.F_k']), 0.3, 1.2],
    ['payload, ST', line('haul.P') / 0.90718474, 1, 150],
    ['bucket, heaped, cy', line('haul.V_q') / yard, 0.1, 30],
    ['fill of the bucket', line('haul.F_q'), 0.3, 1.3],
    ['bucket cycle, min', trips.bucketCycle, 0.1, 10],
    ['fastest speed on the route, mph', trips.fastest / 1.609344, 0, 75],
    ['match factor wanted', line('haul.MF_m'), 0.5, 2],
    ['angle of repose over 1 deg', line('stockpile.φ'), 20, 50],
    ['water in one application, gal/sy', (line('dust.i_w') * 0.9144 ** 2) / 3.785411784, 0.02, 2],
    ['time between applications, h', line('dust.t_i'), 0.1, 24],
    ['fill: loose over bank volume', fill.loosened, 1, 2.5],
    ['fill: compacted over bank volume', fill.shrunk, 0.4, 1.4],
    ['fill: density as it lies, lbm/cf', line('fill.ρ_b') / poundPerCubicFoot, 50, 180],
    ['chance that the estimate is enough', part(lines['cost.p_k']), 0.5, 0.99],
    [
      'job factor of the fill, largest',
      most(rowsOf(drawn, 'fill.ops').flatMap(({ k_1, k_2, k_3 }) => [k_1, k_2, k_3].map((k) => num(k, 1)))),
      0,
      1.2,
    ],
    [
      'rate of one machine that places fill, fastest, ccy/h',
      most(fill.placed.map(({ rate }) => rate)) / yard,
      0,
      2000,
    ],
    ['speed of the fill trucks, mph', line('fill.v_f') / 1.609344, 1, 75],
    ['share of what stays that is used as fill', part(lines['fill.k_u']), 0, 1],
    ['used again: compacted over bank volume', line('fill.SF_u'), 0.4, 1.4],
    [
      'length of the haul route, mi',
      sum(rowsOf(drawn, 'haul.route').map((row) => num(row.dist))) / 1.609344,
      0.05,
      300,
    ],
    ['truck empty over its payload', line('haul.W_k') / above(line('haul.P')), 0.3, 3],
    [
      'machines that break one item, most',
      most(rowsOf(drawn, 'breaking.works').map((row) => num(row.n, 1))),
      0,
      20,
    ],
    ['loaders', line('haul.n_L'), 1, 6],
    ['trucks that bring fill', line('fill.n_tf'), 1, 60],
    [
      'machines of one operation that places fill, most',
      most(rowsOf(drawn, 'fill.ops').map((row) => num(row.n, 1))),
      0,
      20,
    ],
    ['cheapest breaking, USD for a cubic yard', Math.min(1000, ...perYard(broken)), 0.5, 1000],
    ['dearest breaking, USD for a cubic yard', most(perYard(broken)), 0, 1000],
    ['loader with operator, USD an hour', line('haul.c_L') + line('haul.c_O'), 60, 1000],
    ['truck with driver, USD an hour', line('haul.c_T') + line('haul.c_D'), 40, 400],
    [
      'cheapest operation of the fill, USD for a compacted yard',
      Math.min(1000, ...perYard(fill.placed)),
      0.05,
      1000,
    ],
    ['dearest operation of the fill, USD for a compacted yard', most(perYard(fill.placed)), 0, 100],
  ];
  const isKnown = bands.every(([, value]) => Number.isFinite(value));
  const beyond = bands.filter(
    ([, value, least, greatest]) => exceeds(least, value) || exceeds(value, greatest),
  );
  const found = isKnown ? beyond.length : Number.NaN;
  return {
    'basis.bands.x': bands.map(([, value]) => cell(value)),
    'basis.bands.within': bands.map((band) =>
      Number.isFinite(band[1]) ? (beyond.includes(band) ? 'no' : 'yes') : null,
    ),
    'basis.N_o': cell(found),
    'basis.first': isKnown ? (beyond[0]?.[0] ?? 'none') : null,
    'basis.c_b': none(found),
    'basis.N_1': bands.length,
    'basis.c_1': { verdict: 'holds' },
  };
}

/** What a cubic yard costs by each machine. */
function perYard(machines: readonly Paid[]): readonly number[] {
  return machines.map(({ rate, hourly }) => (hourly / above(rate)) * yard);
}
