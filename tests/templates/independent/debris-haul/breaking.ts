import type { Drawn, Worked } from '../program.ts';
import { above, cell, num, rowsOf, sum, text, up } from './arithmetic.ts';
import { below, none, type Quantities } from './quantities.ts';

const yard = 0.9144 ** 3;

/** What the other sheets need of the breaking. */
export interface Breaking {
  readonly days: number;
  readonly hours: number;
  readonly machineHours: number;
  readonly cost: number;
  /** What one machine breaks in an hour, in m³, and costs in it, line by line. */
  readonly broken: readonly { readonly rate: number; readonly hourly: number }[];
  readonly worked: Worked;
}

/** Hours are work over rate (FM 5-434, 1-4 and 1-5): a rate of a 60-minute hour takes the efficiency, observed hours have it in them. */
export function workBreaking(drawn: Drawn, { items }: Quantities, efficiency: number): Breaking {
  const { lines } = drawn;
  const works = rowsOf(drawn, 'breaking.works').map((row) => {
    const name = text(row.item);
    const found = items.filter((item) => item.name === name);
    // A name that stands twice could mean either volume.
    const only = found.length === 1 ? found[0] : undefined;
    const volume = only?.volume ?? Number.NaN;
    // What is spread over no area has no thickness.
    const thickness = volume / above(only?.area ?? Number.NaN);
    const condition = num(row.k, 1);
    const machines = num(row.n, 1);
    const hourly = num(row.c, 0);
    const rates: Readonly<Record<string, () => number>> = {
      volume: () => num(row.R_v) * condition * efficiency,
      area: () => num(row.R_a) * thickness * condition * efficiency,
      hours: () => condition / above(num(row.h_v)),
    };
    const rate = rates[text(row.by)]?.() ?? Number.NaN;
    const hours = volume / above(rate) / above(machines);
    // Reinforced concrete keeps the largest hammers to less than half of what they break of the rest.
    const kind = only?.kind ?? '';
    const isConcrete = kind === 'concrete';
    const fastest = kind === '' ? Number.NaN : (isConcrete ? 60 : 140) * yard;
    const cheapest = kind === '' ? Number.NaN : (isConcrete ? 3 : 0.5) / yard;
    return {
      name,
      volume,
      thickness,
      rate,
      hours,
      machineHours: hours * machines,
      hourly,
      cost: hours * machines * hourly,
      found: found.length,
      kind,
      fastest,
      cheapest,
    };
  });

  const all = works.map(({ hours }) => hours);
  const hours = lines['breaking.order'] === 'together' ? Math.max(0, ...all) : sum(all);
  const shifts = hours / num(lines['basis.h_s']);
  const days = up(shifts / num(lines['basis.n_d']));
  const machineHours = sum(works.map((work) => work.machineHours));
  const cost = sum(works.map((work) => work.cost));

  const unpriced = items.filter(({ name }) => !works.some((work) => work.name === name && work.hourly > 0));
  const isKnown = items.every(({ kind }) => kind !== '');
  const concrete = isKnown ? unpriced.filter(({ kind }) => kind === 'concrete').length : Number.NaN;
  const names = new Set(items.map(({ name }) => name));
  const twice = [...names].filter((name) => stands(items, name) > 1 || stands(works, name) > 1).length;
  const free =
    works.filter((work) => work.volume > 0 && work.hourly === 0).length +
    0 * sum(works.map((work) => work.volume + work.hourly));
  const table = 'breaking.works';
  const isEmpty = items.length === 0;
  return {
    days,
    hours,
    machineHours,
    cost,
    broken: works,
    worked: {
      [`${table}.V`]: works.map(({ volume }) => cell(volume)),
      [`${table}.h`]: works.map(({ thickness }) => cell(thickness * 1000)),
      [`${table}.R`]: works.map(({ rate }) => cell(rate)),
      [`${table}.T`]: works.map((work) => cell(work.hours)),
      [`${table}.T_m`]: works.map((work) => cell(work.machineHours)),
      [`${table}.K_i`]: works.map((work) => cell(work.cost)),
      [`${table}.n_t`]: works.map(({ found }) => cell(found)),
      [`${table}.kind`]: works.map(({ kind }) => (kind === '' ? null : kind)),
      [`${table}.R_x`]: works.map(({ fastest }) => cell(fastest)),
      [`${table}.u_n`]: works.map(({ cheapest }) => cell(cheapest)),
      'breaking.c_R': none(below(works.map(({ fastest, rate }) => [fastest, rate]))),
      'breaking.c_u': none(
        below(works.map(({ hourly, rate, cheapest }) => [hourly / above(rate), cheapest])),
      ),
      'breaking.T_b': cell(hours),
      'breaking.S_b': cell(shifts),
      'breaking.D_b': cell(days),
      'breaking.T_mt': cell(machineHours),
      'breaking.K_b': cell(cost),
      'breaking.N_0': cell(unpriced.length),
      'breaking.N_c': cell(concrete),
      'breaking.c_c': isEmpty ? { verdict: 'does not apply' } : none(concrete),
      'breaking.c_2': isEmpty ? { verdict: 'does not apply' } : none(twice),
      'breaking.N_2': cell(twice),
      'breaking.N_h': cell(free),
      'breaking.c_h': none(free),
    },
  };
}

function stands(rows: readonly { readonly name: string }[], name: string): number {
  return rows.filter((row) => row.name === name).length;
}
