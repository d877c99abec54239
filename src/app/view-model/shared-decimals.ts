import type { ColumnResult } from '../../notebook/index.ts';
import { fromSI, isMoney, type Unit, writeIn } from '../../units/index.ts';

/** A column of so many rows is looked through for its decimals; in a longer one each number has its own. */
const MOST_ROWS = 400;
/** With more decimals than these, large numbers beside small ones would be all zeros. */
const MOST_DECIMALS = 4;
const CENTS = 2;
const SMALLEST_AMOUNT = 0.005;
/** What a change of units leaves behind a whole number. */
const WHOLE = 1e-9;

/**
 * How many decimals all numbers of a column have on the page, so that they stand below one another and add to what is
 * printed as their sum: of amounts of money cents, unless all are whole; of other numbers as many as the one with most
 * would have alone. Undefined where each is written by itself.
 */
export function sharedDecimals(result: ColumnResult, unit: Unit): number | undefined {
  if (result.status !== 'ok' || result.reading.holds !== 'number' || unit.point !== undefined)
    return undefined;
  const { values, length } = result.reading;
  if (isMoney(unit) && unit.dimension.powers.length === 1) return decimalsOfMoney(values, length, unit);
  if (length > MOST_ROWS) return undefined;
  let most = 0;
  for (let row = 0; row < length; row += 1) {
    const value = values[row] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const written = writeIn(value, unit);
    if (written.includes('e')) return undefined;
    most = Math.max(most, written.split('.')[1]?.length ?? 0);
  }
  return most > MOST_DECIMALS ? undefined : most;
}

/** Amounts too small for cents are not made nothing: then each is written by itself. */
function decimalsOfMoney(values: Float64Array, length: number, unit: Unit): number | undefined {
  let decimals = 0;
  for (let row = 0; row < length; row += 1) {
    const amount = fromSI(values[row] ?? 0, unit);
    if (isWhole(amount)) continue;
    if (Math.abs(amount) < SMALLEST_AMOUNT) return undefined;
    decimals = CENTS;
  }
  return decimals;
}

function isWhole(value: number): boolean {
  return Number.isNaN(value) || Math.abs(value - Math.round(value)) <= WHOLE * Math.max(1, Math.abs(value));
}
