import { drawsFrom } from './draws.ts';

/** The length of the table. */
export const ROWS = 100_000;

/** The given columns of a takeoff in SI: quantity (m³), waste (plain), price (USD/m³). */
export interface Takeoff {
  readonly quantity: Float64Array;
  readonly waste: Float64Array;
  readonly price: Float64Array;
}

/** What the estimate comes to: net volume (m³), cost (USD), time (s). */
export interface Totals {
  readonly net: number;
  readonly cost: number;
  readonly time: number;
}

/** Cubic metres a second: 40 an hour. */
export const RATE = 40 / 3600;

/** The table, always the same. */
export function takeoff(): Takeoff {
  const draw = drawsFrom(ROWS);
  const column = (value: () => number) => Float64Array.from({ length: ROWS }, value);
  return {
    quantity: column(() => 1 + draw(1000) / 10),
    waste: column(() => draw(20) / 100),
    price: column(() => 5 + draw(500) / 10),
  };
}

/** A column of quantities to put in place of the first, other ones for each number. */
export function otherQuantity(which: number): Float64Array {
  const draw = drawsFrom(which + 1);
  return Float64Array.from({ length: ROWS }, () => 1 + draw(1000) / 10);
}
