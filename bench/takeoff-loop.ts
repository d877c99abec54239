import { RATE, ROWS, type Takeoff, type Totals } from './takeoff.ts';

const net = new Float64Array(ROWS);
const cost = new Float64Array(ROWS);
const time = new Float64Array(ROWS);

/** The takeoff as anybody would write it who needs nothing but its numbers: one loop, plain sums. */
export function loopTakeoff({ quantity, waste, price }: Takeoff): Totals {
  let sumNet = 0;
  let sumCost = 0;
  let sumTime = 0;
  for (let row = 0; row < ROWS; row += 1) {
    const volume = (quantity[row] as number) * (1 + (waste[row] as number));
    const money = volume * (price[row] as number);
    const seconds = volume / RATE;
    net[row] = volume;
    cost[row] = money;
    time[row] = seconds;
    sumNet += volume;
    sumCost += money;
    sumTime += seconds;
  }
  return { net: sumNet, cost: sumCost, time: sumTime };
}
