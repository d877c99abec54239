import { cell, num } from './debris-haul/arithmetic.ts';
import { workBands } from './debris-haul/bands.ts';
import { workBreaking } from './debris-haul/breaking.ts';
import { drawEstimate } from './debris-haul/draw.ts';
import { workCost, workDays, workDust } from './debris-haul/estimate.ts';
import { workFill } from './debris-haul/fill.ts';
import { workFleet } from './debris-haul/fleet.ts';
import { workMaterials, workQuantities } from './debris-haul/quantities.ts';
import { workStockpile } from './debris-haul/stockpile.ts';
import { workTrips } from './debris-haul/trips.ts';
import { units } from './debris-haul/units.ts';
import type { Drawn, IndependentProgram, Worked } from './program.ts';
import { withoutNegatives } from './signs.ts';

/**
 * Quantities, breaking, haul fleet, stockpile, dust water, fill and cost of demolition debris: volume states and
 * rates after FM 5-434 (2000), 1-4 to 1-6; loads, cycles and balance after Peurifoy and after Nunnally, ch. 2 and 4;
 * match factor after Morgan and Peterson (1968); watering after EPA-450/3-88-008.
 */
export const debrisHaul: IndependentProgram = { template: 'debris-haul', units, draw: drawEstimate, work };

/** Grades, savings of time, shrinkage of rock that bulks, and credits. */
const signed: ReadonlySet<string> = new Set([
  'haul.route.grade',
  'haul.speeds.R',
  'haul.factors.dt',
  'fill.Z_s',
  'cost.extra.qty',
  'cost.extra.price',
  'swell.materials.c_r',
]);

function work(entered: Drawn): Worked {
  const drawn = withoutNegatives(entered, signed);
  const { lines } = drawn;
  const efficiency = num(lines['basis.t_eff']) / 60;
  const dayHours = num(lines['basis.h_s']) * num(lines['basis.n_d']);
  const quantities = workQuantities(drawn);
  const breaking = workBreaking(drawn, quantities, efficiency);
  const trips = workTrips(drawn, quantities, efficiency);
  const fleet = workFleet(drawn, quantities, trips, dayHours);
  const fill = workFill(drawn, quantities, trips, { efficiency, hours: dayHours });
  const { demolition, days } = workDays(drawn, breaking, fleet, fill.days);
  const dust = workDust(drawn, quantities, breaking, fleet, { days, dayHours });
  const costs = {
    breaking: breaking.cost,
    hauling: fleet.cost,
    dust: dust.cost,
    fill: fill.cost,
    demolition,
    days,
  };
  return {
    'basis.E': cell(efficiency),
    'basis.H_d': cell(dayHours),
    ...workMaterials(drawn),
    ...quantities.worked,
    ...breaking.worked,
    ...trips.worked,
    ...fleet.worked,
    ...workStockpile(drawn, quantities, { breaking, fleet }, dayHours),
    ...dust.worked,
    ...fill.worked,
    ...workBands(drawn, { quantities, trips, fill, broken: breaking.broken }),
    ...workCost(drawn, quantities, costs),
  };
}
