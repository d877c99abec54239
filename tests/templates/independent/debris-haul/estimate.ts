import type { Cell, Drawn, Verdict, Worked } from '../program.ts';
import { cell, num, part, rowsOf, sum, text, up, where, within } from './arithmetic.ts';
import type { Breaking } from './breaking.ts';
import type { Fleet } from './fleet.ts';
import { none, type Quantities } from './quantities.ts';
import { workRanges } from './ranges.ts';

/** Working days: mobilisation, then hauling alongside the breaking or after it; the fill after all of it or beside it. */
export function workDays(
  { lines }: Drawn,
  breaking: Breaking,
  fleet: Fleet,
  fillDays: number,
): { readonly demolition: number; readonly days: number } {
  const [start, lag] = [num(lines['cost.D_m']), num(lines['cost.D_l'])];
  const demolition =
    text(lines['cost.overlap']) === 'in turn'
      ? start + breaking.days + fleet.days
      : start + Math.max(breaking.days, lag + fleet.days);
  const beside = Math.max(demolition, start + fillDays);
  return { demolition, days: text(lines['cost.fill_at']) === 'after' ? demolition + fillDays : beside };
}

/** Watering of the strip: C = 100 - 0.8 p d t / i in mm/h, passes an hour, h and L/m² (EPA-450/3-88-008). */
export function workDust(
  { lines }: Drawn,
  { area }: Quantities,
  breaking: Breaking,
  fleet: Fleet,
  { days, dayHours }: { readonly days: number; readonly dayHours: number },
): { readonly cost: number; readonly worked: Worked } {
  const line = (name: string) => num(lines[`dust.${name}`]);
  const passes = fleet.volume === 0 ? 0 : 0 * fleet.volume + (2 * fleet.daily) / dayHours;
  const evaporation = line('p_e') >= 0 ? line('p_e') : Number.NaN;
  const control = 100 - (0.8 * evaporation * passes * line('t_i')) / line('i_w');
  const once = area * line('i_w');
  const daily = (once * dayHours) / line('t_i');
  const sprayed = line('q_n') * 60 * breaking.machineHours;
  const water = daily * days + sprayed;
  const cost = days * line('c_k') + water * line('c_w');
  const least = num(lines['dust.η_m']);
  const prices = [line('c_k'), line('c_w')];
  const free = prices.filter((price) => price === 0).length + 0 * sum(prices);
  return {
    cost,
    worked: {
      'dust.A_w': cell(area),
      'dust.d_v': cell(passes),
      // The formula has no meaning below nothing controlled.
      ...(!(control < 0) && { 'dust.η': cell(control) }),
      'dust.c_η': where(
        fleet.volume,
        control < 0 && least > 0 ? { verdict: 'fails' } : within(least, control),
      ),
      'dust.V_a': cell(once),
      'dust.V_d': cell(daily),
      'dust.V_n': cell(sprayed),
      'dust.V_t': cell(water),
      'dust.N_k': cell(up(daily / line('V_k'))),
      'dust.K_w': cell(cost),
      'dust.N_0': cell(free),
      'dust.c_0': where(fleet.volume, none(free)),
    },
  };
}

/** Holds where something of a percentage is entered. */
function some(percentage: Cell | undefined): Verdict {
  return moreThanNothing(num(percentage));
}

function moreThanNothing(amount: number): Verdict {
  if (Number.isNaN(amount)) return { verdict: 'refused' };
  return { verdict: amount > 0 ? 'holds' : 'fails' };
}

/** The estimate: overhead and profit on the direct cost before credits, contingency on both, then the credits off. */
export function workCost(
  drawn: Drawn,
  quantities: Quantities,
  {
    breaking,
    hauling,
    dust,
    fill,
    demolition,
    days,
  }: Readonly<Record<'breaking' | 'hauling' | 'dust' | 'fill' | 'demolition' | 'days', number>>,
): Worked {
  const { lines } = drawn;
  const amounts = rowsOf(drawn, 'cost.extra').map((row) => num(row.qty) * num(row.price));
  const scrap = quantities.steelRecovered * num(lines['cost.c_s']);
  const others = sum(amounts);
  const direct =
    breaking + hauling + quantities.disposalFees + quantities.recyclingCharges - scrap + dust + fill + others;
  const credits = scrap + quantities.recyclingCredits + sum(amounts.map((amount) => Math.max(0, -amount)));
  const gross = direct + credits;
  const overhead = gross * part(lines['cost.k_o']);
  const ranges = workRanges(drawn, {
    breaking,
    'loading and hauling': hauling,
    'disposal fees': quantities.disposalFees,
    'recycling charges': quantities.recyclingCharges,
    'scrap credit': -scrap,
    'dust control': dust,
    'imported fill': fill,
    'other lines': others,
  });
  const isRange = lines['cost.k_by'] !== 'percentage';
  const lacking = (ranges.enough - direct) * (1 + part(lines['cost.k_o']));
  const contingency = isRange ? Math.max(0, lacking) : (gross + overhead) * part(lines['cost.k_c']);
  const covered = sum(ranges.likely);
  const estimate = direct + overhead + contingency;
  // A range from an amount to the same amount is none.
  const flat =
    ranges.likely.filter((amount, row) => amount !== 0 && ranges.least[row] === ranges.greatest[row]).length +
    0 * sum([...ranges.least, ...ranges.greatest]);
  const nothing = amounts.filter((amount) => amount === 0).length + 0 * others;
  return {
    'cost.extra.amount': amounts.map(cell),
    'cost.ranges.K_m': ranges.likely.map(cell),
    'cost.ranges.K_a': ranges.least.map(cell),
    'cost.ranges.K_z': ranges.greatest.map(cell),
    'cost.ranges.m_i': ranges.means.map(cell),
    'cost.ranges.K_q': ranges.quantiles.map(cell),
    'cost.K_e': cell(ranges.mean),
    'cost.s_K': cell(ranges.deviation),
    'cost.K_p': cell(ranges.enough),
    'cost.K_r': cell(covered),
    'cost.c_r': isRange ? within(Math.abs(covered - direct), 0.001 * gross) : { verdict: 'does not apply' },
    'cost.N_w': cell(flat),
    'cost.c_w': isRange ? none(flat) : { verdict: 'does not apply' },
    'cost.c_cr': isRange ? moreThanNothing(contingency) : { verdict: 'does not apply' },
    'cost.K_1': cell(breaking),
    'cost.K_2': cell(hauling),
    'cost.K_3': cell(quantities.disposalFees),
    'cost.K_4': cell(quantities.recyclingCharges),
    'cost.K_5': cell(scrap),
    'cost.K_6': cell(dust),
    'cost.K_7': cell(fill),
    'cost.K_8': cell(others),
    'cost.K_n': cell(direct),
    'cost.K_v': cell(credits),
    'cost.K_g': cell(gross),
    'cost.c_v': within(credits, gross),
    'cost.K_o': cell(overhead),
    'cost.K_c': cell(contingency),
    'cost.K_t': cell(estimate),
    'cost.c_o': some(lines['cost.k_o']),
    'cost.c_c': isRange ? { verdict: 'does not apply' } : some(lines['cost.k_c']),
    'cost.N_0': cell(nothing),
    'cost.c_0': none(nothing),
    'cost.N_e': amounts.length,
    'cost.c_e': within(1, amounts.length),
    'cost.u_b': cell(estimate / quantities.bank),
    'cost.u_m': cell(estimate / quantities.mass),
    'cost.u_A': cell(estimate / quantities.area),
    'cost.D_x': cell(demolition),
    'cost.D_t': cell(days),
    'cost.c_D': within(days, num(lines['cost.D_w'])),
  };
}
