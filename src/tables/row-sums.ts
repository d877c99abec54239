import type { TableCell } from './column.ts';

/** A sum of numbers, how many of them are not 0, and by how much rounding may have put it off. */
export interface Run {
  sum: number;
  summands: number;
  /** Half a step of the last digit of each number. */
  slack: number;
}

/** The most that whole numbers are taken to be off by rounding, as a part of their sum: of small counts all would be sums. */
const MOST_OF_WHOLE = 0.1;

/** How near a number called like a total is to be to a sum to count as one that does not add up. */
const NEAR = 0.1;

export function noRun(): Run {
  return { sum: 0, summands: 0, slack: 0 };
}

export function clear(run: Run): void {
  Object.assign(run, noRun());
}

/** Adds a number that is written in steps of `step`. */
export function addTo(run: Run, x = 0, step = 0): void {
  if (x === 0) return;
  run.sum += x;
  run.summands += 1;
  run.slack += step / 2;
}

/**
 * Whether a number written in steps of `step` is a sum, to the rounding of its last digit and of those of all summands.
 * `beside` says that the sum itself stands right above it: then a whole number beside it is another one.
 */
export function isWithin(x: number, step: number, { sum, slack }: Run, beside: boolean): boolean {
  const off = Math.abs(x - sum);
  const exact = 1e-9 * Math.abs(sum);
  if (off <= exact) return true;
  if (step >= 1 && (beside || off > MOST_OF_WHOLE * Math.abs(sum))) return false;
  return off <= slack + step / 2 + exact;
}

/** Whether a number is near a sum of two numbers or more, and not 0. */
export function isNear(x: number, { sum, summands }: Run): boolean {
  return summands >= 2 && x !== 0 && Math.abs(x - sum) <= NEAR * Math.abs(sum);
}

/** One step of the last digit of the number that a cell begins with. */
export function stepOf(cell: TableCell): number {
  if (typeof cell === 'number' && Number.isInteger(cell)) return 1;
  const [, power = '0'] = typeof cell === 'number' ? (/e([+-]\d+)$/.exec(`${cell}`) ?? []) : [];
  const decimals = digitsIn(`${cell}`)?.split('.')[1]?.length ?? 0;
  return 10 ** (Number(power) - decimals);
}

/** The number a cell begins with. */
export function numberIn(cell: TableCell): number | undefined {
  if (cell === null || typeof cell === 'number') return cell ?? undefined;
  const digits = digitsIn(cell);
  const x = digits === undefined ? Number.NaN : Number(digits);
  return Number.isFinite(x) ? x : undefined;
}

/** The digits a cell begins with, without signs between thousands. */
function digitsIn(cell: string): string | undefined {
  const [digits] = /^-?[\d, '’\u00a0\u2009\u202f]*\.?\d+/.exec(cell) ?? [];
  return digits === undefined || /^-?\d+(?:\.\d+)?$/.test(digits) ? digits : digits.replace(/[^\d.-]/g, '');
}
