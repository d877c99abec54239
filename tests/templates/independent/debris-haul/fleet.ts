import type { Drawn, Worked } from '../program.ts';
import { cell, count, down, exceeds, num, rowsOf, text, up, where, within } from './arithmetic.ts';
import { workAxles } from './axles.ts';
import { none, type Quantities } from './quantities.ts';
import type { Trips } from './trips.ts';

/** What the other sheets need of the fleet. */
export interface Fleet {
  /** Output in lcm/h. */
  readonly output: number;
  readonly days: number;
  readonly cost: number;
  /** Trips in a day. */
  readonly daily: number;
  /** Whether there is anything to haul. */
  readonly hauls: boolean;
  /** What there is to haul, lcm. */
  readonly volume: number;
  readonly worked: Worked;
}

/** Output, cost and duration of fleets of one truck and more, and of the one chosen. */
export function workFleet(
  drawn: Drawn,
  { items, hauled, swollen }: Quantities,
  trips: Trips,
  dayHours: number,
): Fleet {
  const { lines } = drawn;
  const line = (name: string) => num(lines[`haul.${name}`]);
  const { load, loadMass, service, cycle, loaders, loading, one } = trips;
  const isStated = text(lines['haul.job']) === 'stated volume';
  const stated = line('V_js') >= 0 ? line('V_js') : Number.NaN;
  const volume = isStated ? stated : hauled;
  const number = isStated ? up(volume / load) : trips.trips;
  const isQueue = text(lines['haul.model']) === 'queue';
  const [loader, truck] = [line('c_L') + line('c_O'), line('c_T') + line('c_D')];

  // Several loaders serve as one that is as fast as all together.
  const share = service / loaders;
  const ratio = share / (cycle - share);
  const balance = (loaders * cycle) / service;
  const needed = volume / (one * dayHours * line('D_a'));
  const by = text(lines['haul.fleet_by']);
  const chosenNumber = count(line('n_s'));
  const most = Math.max(line('n_max'), up(balance), by === 'stated' ? chosenNumber : 0);

  let terms = 1;
  const fleets = Array.from({ length: most > 0 && most < 5000 ? most : 0 }, (_, row) => {
    const trucks = row + 1;
    // Machine repair with one server: the sum over k of N!/(N-k)! r^k is 1 + N r times that of N - 1.
    terms = 1 + trucks * ratio * terms;
    const least = Math.min(loading, trucks * one);
    const queued = loading * (1 - 1 / terms);
    const output = isQueue ? queued : least;
    const hourly = loaders * loader + trucks * truck + line('c_X');
    return {
      trucks,
      match: (trucks * service) / (loaders * cycle),
      least,
      terms,
      idle: 1 / terms,
      queued,
      output,
      hourly,
      unit: hourly / output,
      days: volume / output / dayHours,
    };
  });
  const lowest = fleets.length > 0 ? Math.min(...fleets.map(({ unit }) => unit)) : Number.NaN;
  const cheapest = fleets.find(({ unit }) => !exceeds(unit, lowest))?.trucks ?? Number.NaN;
  const inTime = fleets.find(({ days }) => days <= line('D_a') * (1 + 1e-9))?.trucks ?? Number.NaN;
  const ways: Readonly<Record<string, number>> = {
    'round up': up(balance),
    'round down': down(balance),
    'lowest cost': cheapest,
    'days allowed': inTime,
    stated: chosenNumber,
  };
  const trucks = ways[by] ?? Number.NaN;
  const chosen = fleets[trucks - 1];
  const output = chosen?.output ?? Number.NaN;
  const hourly = loaders * loader + trucks * truck + line('c_X');
  const match = chosen?.match ?? Number.NaN;
  const hauls = volume !== 0;
  const hours = hauls ? volume / output : 0;
  const shifts = hours / num(lines['basis.h_s']);
  const days = up(shifts / num(lines['basis.n_d']));
  const daily = (output / load) * dayHours;
  const paid = text(lines['haul.pay']) === 'whole days' ? days * dayHours : hours;
  const cost = hauls ? paid * hourly : 0;
  const density = loadMass / load;
  const free = [loader, truck].filter((rate) => rate === 0).length + 0 * (loader + truck);
  const table = 'haul.fleet';
  const column = (key: keyof (typeof fleets)[number]) => fleets.map((fleet) => cell(fleet[key]));

  // A leg is on a public road unless somebody says that it is not.
  const onRoads = rowsOf(drawn, 'haul.route').filter((leg) => text(leg.land) !== 'private ground').length;
  const isPrivate = text(lines['haul.law']) === 'private ground';

  const job: Worked = {
    'haul.V_j': cell(volume),
    ...(items.length > 0 && { 'haul.N_j': cell(number) }),
    'haul.T_j': cell(hours),
    'haul.S_j': cell(shifts),
    'haul.D_j': cell(days),
    'haul.T_p': cell(paid),
    'haul.K_h': cell(cost),
    'haul.C_L': cell(loader),
    'haul.C_T': cell(truck),
    'haul.N_0': cell(free),
    'haul.c_0': where(volume, none(free)),
    'haul.c_P': where(volume, within(trips.heaviest, line('P'))),
    'haul.c_W': where(volume, within(trips.gross, line('W_m'))),
    ...workAxles(drawn, trips.gross, volume),
    'haul.n_pu': cell(onRoads),
    'haul.c_pu': isPrivate ? where(volume, none(onRoads)) : { verdict: 'does not apply' },
    'haul.c_pw': where(volume, within(trips.power, line('P_e'))),
    'haul.c_V': where(volume, within(trips.largest, trips.byVolume)),
    'haul.c_j': where(items.length, within(hauled, volume)),
    'haul.c_l': where(volume, within(trips.bucketTime, trips.loadTime)),
    'haul.c_MF': where(volume, within(match, line('MF_m'))),
    'haul.c_n': where(volume, within(trucks, line('n_p'))),
    'haul.c_N': where(volume, within(daily, line('N_p'))),
    'haul.c_a': where(volume, within(hours / dayHours, line('D_a'))),
  };
  if (!(hauls && items.length > 0)) return { output, days, cost, daily, hauls, volume, worked: job };
  return {
    output,
    days,
    cost,
    daily,
    hauls,
    volume,
    worked: {
      ...job,
      'haul.N_x': cell(needed),
      'haul.N_a': cell(up(needed)),
      'haul.n_f': cell(most),
      'haul.r': cell(ratio),
      [`${table}.n`]: column('trucks'),
      [`${table}.MF_n`]: column('match'),
      [`${table}.Q_d`]: column('least'),
      [`${table}.a`]: column('terms'),
      [`${table}.P_0`]: column('idle'),
      [`${table}.Q_q`]: column('queued'),
      [`${table}.Q_n`]: column('output'),
      [`${table}.C_n`]: column('hourly'),
      [`${table}.u_n`]: column('unit'),
      [`${table}.D_n`]: column('days'),
      'haul.u_x': cell(lowest),
      'haul.n_u': cell(cheapest),
      'haul.n_k': cell(trucks),
      'haul.MF': cell(match),
      'haul.Q': cell(output),
      'haul.Q_b': cell(output / swollen),
      'haul.Q_m': cell(output * density),
      'haul.C': cell(hourly),
      'haul.u': cell(hourly / output),
      'haul.u_b': cell((hourly / output) * swollen),
      'haul.u_m': cell(hourly / output / density),
      'haul.N_d': cell(daily),
      'haul.N_h': cell(output / load),
    },
  };
}
