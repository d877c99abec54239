import type { Drawn, Worked } from '../program.ts';
import { above, cell, num, part, rowsOf, sum, text, up, where, within } from './arithmetic.ts';
import { none, type Quantities } from './quantities.ts';
import type { Trips } from './trips.ts';
import { compactedOfBank, looseOfBank } from './volumes.ts';

/** What the other sheets need of the fill. */
export interface Fill {
  readonly cost: number;
  readonly days: number;
  readonly loosened: number;
  readonly shrunk: number;
  /** What one machine places in an hour, ccm, and costs in it, operation by operation. */
  readonly placed: readonly { readonly rate: number; readonly hourly: number }[];
  readonly worked: Worked;
}

interface Day {
  readonly efficiency: number;
  readonly hours: number;
}

/**
 * A volume known in one state in the other two; what stays on the site and is fit for fill against what is wanted; loads,
 * trucks, hours, days and cost of the rest, and of placing all of it.
 */
export function workFill(drawn: Drawn, quantities: Quantities, trips: Trips, day: Day): Fill {
  const { lines } = drawn;
  const line = (name: string) => num(lines[`fill.${name}`]);
  const row = Object.fromEntries(
    ['S_s', 'F_s', 'LF_s', 'ρ_ls', 'Z_s', 'SF_s', 'ρ_cs'].map((name) => [
      name,
      lines[`fill.${name}`] ?? null,
    ]),
  );
  const density = above(line('ρ_b'));
  const volume = line('A_f') * (line('h_f') / 1000) * (1 + part(lines['fill.w_f']));
  const loosened = looseOfBank(text(lines['fill.swell_by']), row, density);
  const shrunk = compactedOfBank(text(lines['fill.shrink_by']), row, density);
  const states: Readonly<Record<string, number>> = {
    bank: volume,
    loose: volume / loosened,
    compacted: volume / shrunk,
  };
  const bank = states[text(lines['fill.state'])] ?? Number.NaN;
  const wanted = bank * shrunk;
  const load = Math.min(trips.byVolume, (num(lines['haul.P']) * 1000 * loosened) / density);

  const { items } = quantities;
  const stays = sum(items.map((item) => item.bank - item.hauledBank));
  const staysMass = sum(items.map((item) => item.mass - item.hauledMass));
  const fit = part(lines['fill.k_u']) * stays * line('SF_u');
  const used = Math.min(fit, wanted);
  const idle = stays * (1 - part(lines['fill.k_u'])) + (fit - used) / line('SF_u');
  const imported = (wanted - used) / shrunk;
  const mass = (imported * density) / 1000;
  const usedMass = used === 0 ? 0 : (part(lines['fill.k_u']) * staysMass * used) / fit;

  const placing = workPlacing(drawn, { wanted, loosened, shrunk, efficiency: day.efficiency });
  const own = text(lines['fill.by_f']) === 'own trucks';
  const trucks = Number.isInteger(line('n_tf')) ? line('n_tf') : Number.NaN;
  const cycle = line('t_lf') + line('t_df') + (2 * 60 * line('L_f')) / above(line('v_f'));
  const output = ((trucks * load * 60) / cycle) * day.efficiency * (shrunk / loosened);
  const toImport = wanted - used;
  const hauling = own ? toImport / above(output) : 0;
  const hours = Math.max(placing.hours, hauling);
  const days = up(hours / day.hours);
  const truck = num(lines['haul.c_T']) + num(lines['haul.c_D']);
  const hourly = placing.hourly + (own ? line('n_tf') * truck : 0);
  const material = mass * line('c_f');
  const again = usedMass * line('c_u');
  const cost = material + again + hours * hourly;
  const free = [
    [mass, line('c_f')],
    [usedMass, line('c_u')],
  ] as const;
  const unpaid =
    free.filter(([amount, price]) => amount > 0 && price === 0).length +
    0 * sum(free.map(([amount, price]) => amount + price));
  const keepUp = own ? (placing.hours === 0 ? 0 : up((hauling * line('n_tf')) / placing.hours)) : 0;
  return {
    cost,
    days,
    loosened,
    shrunk,
    placed: placing.placed,
    worked: {
      ...placing.worked,
      'fill.V': cell(volume),
      'fill.f': cell(loosened),
      'fill.S': cell(100 * (loosened - 1)),
      'fill.LF': cell(1 / loosened),
      'fill.SF': cell(shrunk),
      'fill.Z': cell(100 * (1 - shrunk)),
      'fill.ρ_l': cell(density / loosened),
      'fill.ρ_c': cell(density / shrunk),
      'fill.V_b': cell(bank),
      'fill.V_l': cell(bank * loosened),
      'fill.V_c': cell(wanted),
      'fill.c_lc': within(wanted, bank * loosened),
      'fill.q': cell(load),
      'fill.V_o': cell(stays),
      'fill.V_k': cell(fit),
      'fill.V_u': cell(used),
      'fill.V_r': cell(fit - used),
      'fill.V_w': cell(idle),
      // More used than is there leaves a balance that does not close either.
      'fill.c_o': where(stays, none(Math.abs(idle))),
      'fill.V_ci': cell(toImport),
      'fill.V_bi': cell(imported),
      'fill.V_li': cell(imported * loosened),
      'fill.c_bal': within(fit, wanted),
      'fill.M': cell(mass),
      'fill.n_l': cell(up((imported * loosened) / load)),
      'fill.M_u': cell(usedMass),
      'fill.K_u': cell(again),
      'fill.K_f': cell(material),
      'fill.t_cf': cell(cycle),
      'fill.Q_tf': cell(output),
      'fill.T_q': cell(hauling),
      'fill.T_f': cell(hours),
      'fill.D_f': cell(days),
      'fill.N_tf': cell(keepUp),
      'fill.C_f': cell(hourly),
      'fill.K_p': cell(hours * hourly),
      'fill.K_s': cell(cost),
      'fill.N_f': cell(unpaid),
      'fill.c_0': none(unpaid),
      'fill.N_op': placing.placed.length,
      'fill.c_op': where(wanted, within(1, placing.placed.length)),
      'fill.c_tf': own ? within(hauling, placing.hours) : { verdict: 'does not apply' },
    },
  };
}

interface Placed {
  readonly hours: number;
  readonly hourly: number;
  readonly placed: Fill['placed'];
  readonly worked: Worked;
}

/**
 * Each operation at its rate times its job factors and the efficiency (Peurifoy); a roller covers width times speed, in
 * compacted lifts, once every so many passes (FM 5-434 (2000), compaction). The slowest sets the pace.
 */
function workPlacing(
  drawn: Drawn,
  {
    wanted,
    loosened,
    shrunk,
    efficiency,
  }: Readonly<Record<'wanted' | 'loosened' | 'shrunk' | 'efficiency', number>>,
): Placed {
  const operations = rowsOf(drawn, 'fill.ops').map((row) => {
    const factors = num(row.k_1, 1) * num(row.k_2, 1) * num(row.k_3, 1) * efficiency;
    const rates: Readonly<Record<string, () => number>> = {
      bank: () => num(row.R_b) * shrunk,
      loose: () => (num(row.R_l) / loosened) * shrunk,
      passes: () => (num(row.b_w) * (num(row.v_w) * 1000) * (num(row.h_w) / 1000)) / num(row.n_w),
    };
    const rate = (rates[text(row.by)]?.() ?? Number.NaN) * factors;
    const machines = num(row.n, 1);
    const hours = wanted / above(rate * machines);
    return { factors, rate, hours, each: num(row.c, 0), hourly: machines * num(row.c, 0) };
  });
  const hours = Math.max(0, ...operations.map((one) => one.hours));
  const free =
    operations.filter((one) => one.hours > 0 && one.each === 0).length +
    0 * sum(operations.map((one) => one.hours + one.each));
  const table = 'fill.ops';
  return {
    hours,
    hourly: sum(operations.map((one) => one.hourly)),
    placed: operations.map(({ rate, each }) => ({ rate, hourly: each })),
    worked: {
      [`${table}.k_j`]: operations.map(({ factors }) => cell(factors)),
      [`${table}.R_c`]: operations.map(({ rate }) => cell(rate)),
      [`${table}.T_i`]: operations.map((one) => cell(one.hours)),
      'fill.T_p': cell(hours),
      'fill.N_p': cell(free),
      'fill.c_p': none(free),
    },
  };
}
