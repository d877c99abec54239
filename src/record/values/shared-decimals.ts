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
    most = Math.max(most, decimalsIn(written));
  }
  return most > MOST_DECIMALS ? undefined : most;
}

/** So many digits a number keeps that is written with fewer for the sake of its neighbours. */
const LEAST_DIGITS = 3;

/**
 * How many decimals computed lines of one unit have in common, so that they stand below one another: as few as the one
 * with fewest has alone, for none gets digits that are not meant. Undefined, and each is written by itself, where another
 * would be left with less than three digits, where digits would be taken from an exact number or from one that `keeps` its
 * own, or where numbers that differ would read the same.
 */
export function decimalsOfLines(
  values: readonly number[],
  unit: Unit,
  keeps: readonly boolean[],
): number | undefined {
  if (unit.point !== undefined) return undefined;
  const alone = values.map((si) => writeIn(si, unit, { grouping: 'none' }));
  if (alone.some((text) => text.includes('e'))) return undefined;
  const own = alone.map(decimalsIn);
  const isExact = alone.map((text, at) => isSame(Number(text), fromSI(values[at] ?? 0, unit)));
  const goingOn = own.filter((_, at) => !isExact[at]);
  const decimals = goingOn.length === 0 ? Math.max(...own) : Math.min(...goingOn);
  if (decimals > MOST_DECIMALS) return undefined;
  const together = values.map((si) => writeIn(si, unit, { decimals, grouping: 'none' }));
  const keepsEnough = own.every((most, at) => {
    if (most <= decimals) return true;
    return !isExact[at] && !keeps[at] && digitsIn(together[at] ?? '') >= LEAST_DIGITS;
  });
  return keepsEnough && new Set(together).size === new Set(alone).size ? decimals : undefined;
}

function decimalsIn(text: string): number {
  return text.split('.')[1]?.length ?? 0;
}

/** How many digits of a number count, from its first that is not 0. */
function digitsIn(text: string): number {
  return text.replace(/\D/g, '').replace(/^0+/, '').length;
}

function isSame(written: number, value: number): boolean {
  return Math.abs(written - value) <= WHOLE * Math.abs(value);
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
