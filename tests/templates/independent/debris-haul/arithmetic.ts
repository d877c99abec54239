import type { Cell, Drawn, Verdict } from '../program.ts';

/** A row of a table as drawn. */
export type Row = Readonly<Record<string, Cell>>;

/** The number in a cell; what is no number is NaN, which stands for "no value" in all that follows from it. */
export function num(cell: Cell | undefined, otherwise = Number.NaN): number {
  return typeof cell === 'number' ? cell : otherwise;
}

/** A percentage as a part of one. */
export function part(cell: Cell | undefined, otherwise = Number.NaN): number {
  return num(cell, otherwise * 100) / 100;
}

/** The text in a cell. */
export function text(cell: Cell | undefined, otherwise = ''): string {
  return typeof cell === 'string' ? cell : otherwise;
}

/** The rows of a table. */
export function rowsOf({ tables }: Drawn, table: string): readonly Row[] {
  return tables[table] ?? [];
}

/** A number above zero, or no value. */
export function above(value: number): number {
  return value > 0 && Number.isFinite(value) ? value : Number.NaN;
}

/** A whole number from one up, or no value. */
export function count(value: number): number {
  return Number.isInteger(value) && value >= 1 ? value : Number.NaN;
}

/** The sum of all, of nothing 0. */
export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** What the rounding of some tens of operations leaves, and no more: 537.0000002 loads are 538. */
const margin = 1e-12;

/** Up to a whole number; one that is whole but for rounding stays. */
export function up(value: number): number {
  return Math.ceil(value - margin * Math.max(1, Math.abs(value))) + 0;
}

/** Down to a whole number, as {@link up}. */
export function down(value: number): number {
  return Math.floor(value + margin * Math.max(1, Math.abs(value)));
}

/** Whether the first is more than the second by more than rounding. */
export function exceeds(first: number, second: number): boolean {
  return first - second > margin * Math.max(Math.abs(first), Math.abs(second));
}

/** How a check of a demand that may not exceed a capacity stands. */
export function within(demand: number, capacity: number): Verdict {
  if (!Number.isFinite(demand) || !Number.isFinite(capacity)) return { verdict: 'refused' };
  return {
    verdict: exceeds(demand, capacity) ? 'fails' : 'holds',
    ...(demand > 0 && capacity > 0 && { utilisation: demand / capacity }),
  };
}

/** How a check stands that has something to compare only where an amount is above zero. */
export function where(amount: number, verdict: Verdict): Verdict {
  if (Number.isNaN(amount)) return { verdict: 'refused' };
  return amount > 0 ? verdict : { verdict: 'does not apply' };
}

/** A number as a cell: without a value, null. */
export function cell(value: number): Cell {
  return Number.isFinite(value) ? value : null;
}
