import type { Cell, Drawn, Worked } from '../program.ts';
import { above, cell, count, down, num, part, rowsOf, sum, text, up } from './arithmetic.ts';
import type { Quantities } from './quantities.ts';

/** The trip of a truck, and what the loaders and one truck haul, in lcm and minutes. */
export interface Trips {
  /** A mean load. */
  readonly load: number;
  /** A mean load in t. */
  readonly loadMass: number;
  /** Loading and exchange. */
  readonly service: number;
  readonly cycle: number;
  readonly loaders: number;
  /** Output of the loaders, lcm/h. */
  readonly loading: number;
  /** Output of one truck, lcm/h. */
  readonly one: number;
  /** Trips, each item by itself. */
  readonly trips: number;
  /** A load by volume, lcm. */
  readonly byVolume: number;
  /** The heaviest load, and the heaviest truck with it, t. */
  readonly heaviest: number;
  readonly gross: number;
  /** The largest load, lcm. */
  readonly largest: number;
  /** Loading a mean load, and the time its buckets take, in minutes. */
  readonly loadTime: number;
  readonly bucketTime: number;
  readonly bucketCycle: number;
  /** The fastest speed on the route, km/h. */
  readonly fastest: number;
  /** The power that the route asks of the engine, kW. */
  readonly power: number;
  readonly worked: Worked;
}

/**
 * A load is the lesser of body and payload over loose density, made of buckets by one of several rules; the cycle is
 * load, exchange, spot, haul, dump, wait and return (Peurifoy, truck production; Nunnally, ch. 4).
 */
export function workTrips(drawn: Drawn, quantities: Quantities, efficiency: number): Trips {
  const { lines } = drawn;
  const { items, hauled, hauledMass, swollen } = quantities;
  const line = (name: string) => num(lines[`haul.${name}`]);
  const byVolume = line('V_k') * part(lines['haul.F_k']);
  const payload = line('P');
  const bucket = line('V_q') * line('F_q');
  const additions = rowsOf(drawn, 'haul.factors').map((row) => num(row.dt, 0));
  const bucketCycle = above(line('t_q0') + sum(additions));
  const policy = text(lines['haul.policy']);

  const loads = items.map((item) => {
    const byWeight = (payload * 1000) / item.looseDensity;
    const most = Math.min(byVolume, byWeight);
    const filling = most / bucket;
    const stated = above(line('q_ks'));
    const rules: Readonly<Record<string, () => readonly [buckets: number, load: number]>> = {
      'short load': () => [down(filling), down(filling) * bucket],
      'part bucket': () => [up(filling), most],
      'full bucket': () => [up(filling), up(filling) * bucket],
      'in proportion': () => [filling, most],
      'stated buckets': () => [count(line('n_qs')), Math.min(count(line('n_qs')) * bucket, most)],
      'stated load': () => [up(stated / bucket), stated],
    };
    const [buckets, load] = rules[policy]?.() ?? [Number.NaN, Number.NaN];
    const number = item.hauled / above(load);
    return {
      item,
      byWeight,
      most,
      filling,
      buckets: above(buckets),
      load: above(load),
      mass: (above(load) * item.looseDensity) / 1000,
      number,
      trips: up(number),
    };
  });
  const numbers = sum(loads.map(({ number }) => number));
  const meanBuckets = sum(loads.map(({ buckets, number }) => buckets * number)) / numbers;
  const load = hauled / numbers;
  const loadMass = hauledMass / numbers;
  const onTrucks = loads.filter(({ item }) => !(item.hauled === 0));
  const isKnown = onTrucks.length > 0 && loads.every(({ item }) => item.hauled >= 0);
  const isWeighed = isKnown && loads.every(({ mass }) => mass > 0);
  const heaviest = isWeighed ? Math.max(...onTrucks.map(({ mass }) => mass)) : Number.NaN;
  const largest =
    isKnown && loads.every((one) => one.load > 0) ? Math.max(...onTrucks.map((one) => one.load)) : Number.NaN;
  const heavy = onTrucks.find(({ mass }) => mass >= heaviest * (1 - 1e-12))?.item.name;

  const times: Readonly<Record<string, () => number>> = {
    buckets: () => meanBuckets * bucketCycle,
    'loose output': () => (load / above(line('Q_s'))) * 60,
    'bank output': () => (load / swollen / above(line('Q_bs'))) * 60,
  };
  const loadTime = times[text(lines['haul.load_by'])]?.() ?? Number.NaN;
  const service = loadTime + line('t_x');
  const loaders = count(line('n_L'));
  const empty = line('W_k');
  const gross = empty >= 0 ? empty + heaviest : Number.NaN;
  const route = workRoute(drawn, { empty, gross });
  const away = line('t_sp') + route.out + line('t_d') + line('t_w') + route.back;
  const cycle = service + away;
  const loading = ((loaders * load * 60) / service) * efficiency;
  const one = ((load * 60) / cycle) * efficiency;
  const balance = (loaders * cycle) / service;
  const table = 'haul.loads';
  return {
    load,
    loadMass,
    service,
    cycle,
    loaders,
    loading,
    one,
    trips: sum(loads.map(({ trips }) => trips)),
    byVolume,
    heaviest,
    gross,
    largest,
    loadTime,
    bucketTime: meanBuckets * bucketCycle,
    bucketCycle,
    fastest: route.fastest,
    power: route.power,
    worked: {
      ...route.worked,
      'haul.f': cell(swollen),
      'haul.q_v': cell(byVolume),
      'haul.ρ_x': cell((payload * 1000) / byVolume),
      'haul.t_q': cell(bucketCycle),
      'haul.q_q': cell(bucket),
      [`${table}.i`]: loads.map((_, row) => row + 1),
      [`${table}.item`]: loads.map(({ item }): Cell => item.name),
      [`${table}.V_i`]: loads.map(({ item }) => cell(item.hauled)),
      [`${table}.ρ_i`]: loads.map(({ item }) => cell(item.looseDensity)),
      [`${table}.q_wi`]: loads.map(({ byWeight }) => cell(byWeight)),
      [`${table}.q_mi`]: loads.map(({ most }) => cell(most)),
      [`${table}.x_i`]: loads.map(({ filling }) => cell(filling)),
      [`${table}.n_i`]: loads.map(({ buckets }) => cell(buckets)),
      [`${table}.q_i`]: loads.map((own) => cell(own.load)),
      [`${table}.M_i`]: loads.map(({ mass }) => cell(mass)),
      [`${table}.k_i`]: loads.map(({ number }) => cell(number)),
      [`${table}.N_i`]: loads.map(({ trips }) => cell(trips)),
      'haul.n_q': cell(meanBuckets),
      'haul.q_k': cell(load),
      'haul.q_kb': cell(load / swollen),
      'haul.M_k': cell(loadMass),
      'haul.M_x': cell(heaviest),
      'haul.heavy': heavy ?? null,
      'haul.M_g': cell(gross),
      'haul.t_l': cell(loadTime),
      'haul.Q_L': cell(loading),
      'haul.t_a': cell(away),
      'haul.t_c': cell(cycle),
      'haul.Q_1': cell(one),
      'haul.N_b': cell(balance),
      'haul.N_up': cell(up(balance)),
      'haul.N_dn': cell(down(balance)),
    },
  };
}

/** Times on the road: distance over the speed driven, or over that at the total resistance, rolling plus or less grade. */
function workRoute(
  drawn: Drawn,
  masses: { readonly empty: number; readonly gross: number },
): {
  readonly out: number;
  readonly back: number;
  readonly fastest: number;
  /** The most that any leg asks of the engine, kW. */
  readonly power: number;
  readonly worked: Worked;
} {
  const speeds = rowsOf(drawn, 'haul.speeds').map((row) => ({
    resistance: num(row.R),
    loaded: num(row.v_l),
    empty: num(row.v_e),
  }));
  const legs = rowsOf(drawn, 'haul.route').map((row) => {
    const [grade, roll] = [num(row.grade, 0), num(row.roll, 0)];
    const isDriven = text(row.v_by, 'driven') === 'driven';
    const at = (resistance: number, key: 'loaded' | 'empty') =>
      between(
        speeds.map((speed) => [speed.resistance, speed[key]] as const),
        resistance,
      );
    const [out, back] = isDriven
      ? [num(row.v_os), num(row.v_bs)]
      : [at(roll + grade, 'loaded'), at(roll - grade, 'empty')];
    const minutes = (speed: number) => (num(row.dist) / above(speed)) * 60;
    return {
      resistances: [roll + grade, roll - grade],
      speeds: [out, back],
      minutes: [minutes(out), minutes(back)],
    };
  });
  const column = (key: 'resistances' | 'speeds' | 'minutes', which: 0 | 1) =>
    legs.map((leg) => cell(leg[key][which] ?? Number.NaN));
  // Weight times resistance is the pull at the wheels; nothing is asked of the engine on the way down.
  const gravity = num(drawn.lines['basis.g'], 9.80665);
  const losses = part(drawn.lines['haul.η_e']);
  const powers = ([0, 1] as const).map((which) =>
    legs.map(({ resistances, speeds: own }) => {
      const weight = (which === 0 ? masses.gross : masses.empty) * gravity;
      const pull = (weight * (resistances[which] ?? Number.NaN)) / 100;
      return Math.max(0, (pull * (own[which] ?? Number.NaN)) / 3.6 / losses);
    }),
  );
  const [out, back] = ([0, 1] as const).map((which) =>
    sum(legs.map(({ minutes }) => minutes[which] ?? Number.NaN)),
  );
  return {
    out: out ?? Number.NaN,
    back: back ?? Number.NaN,
    fastest: Math.max(0, ...legs.flatMap(({ speeds: own }) => own)),
    power: Math.max(0, ...powers.flat()),
    worked: {
      'haul.route.R_o': column('resistances', 0),
      'haul.route.R_b': column('resistances', 1),
      'haul.route.P_o': (powers[0] ?? []).map(cell),
      'haul.route.P_b': (powers[1] ?? []).map(cell),
      'haul.route.v_o': column('speeds', 0),
      'haul.route.v_b': column('speeds', 1),
      'haul.route.t_o': column('minutes', 0),
      'haul.route.t_b': column('minutes', 1),
      'haul.t_h': cell(out ?? Number.NaN),
      'haul.t_r': cell(back ?? Number.NaN),
    },
  };
}

/** On straight lines between points that ascend; before the first as at the first, beyond the last no value. */
function between(points: readonly (readonly [number, number])[], at: number): number {
  const [first] = points;
  if (!first) return Number.NaN;
  if (at <= first[0]) return first[1];
  const next = points.findIndex(([x]) => at <= x + 1e-12);
  const [before, after] = [points[next - 1], points[next]];
  if (!before || !after) return Number.NaN;
  return before[1] + ((after[1] - before[1]) * (at - before[0])) / (after[0] - before[0]);
}
