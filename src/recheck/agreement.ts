import { roundingMargin } from '../units/index.ts';
import type { Hazard } from './lower/watched.ts';
import type { EngineValue } from './program.ts';
import type { GridValue } from './second-engine.ts';

/** How far two numbers may be apart, relative to the larger. */
const RELATIVE = 1e-9;
/** And how far what is left of a balance may, relative to the sum of the magnitudes. */
export const OF_MAGNITUDES = 1e-12;

/** How near two values must be to agree, as reports say it. */
export const RECHECK_TOLERANCE = `${RELATIVE} of the value, or ${OF_MAGNITUDES} of the sum of the magnitudes for what is left of a balance`;

export type Verdict =
  | 'agree'
  /** Neither has a value. */
  | 'without value'
  /** Two numbers too far apart, unless they are what is left of a balance. */
  | 'apart'
  | 'differ';

/** The errors of a formula the second engine cannot read, which say nothing about a value. */
const UNREADABLE = new Set(['#ERROR!', '#NAME?', '#REF!', '#SPILL!', '#LIC!']);

/** Whether a value of the grid says only that its formula could not be read. */
export function isUnreadable(grid: GridValue): grid is { readonly error: string } {
  return typeof grid === 'object' && UNREADABLE.has(grid.error);
}

/** Compares a value of the live engine (texts as codes) with the grid's. */
export function verdictOf(engine: number | boolean | undefined, grid: GridValue): Verdict {
  if (isUnreadable(grid)) return 'differ';
  if (typeof grid === 'object') return engine === undefined ? 'without value' : 'differ';
  if (engine === undefined || typeof engine !== typeof grid) return 'differ';
  if (typeof engine === 'boolean' || typeof grid === 'boolean') return engine === grid ? 'agree' : 'differ';
  return Math.abs(engine - grid) <= RELATIVE * Math.max(Math.abs(engine), Math.abs(grid)) ? 'agree' : 'apart';
}

/** The chances whose normal quantile the second engine has to 1e-9, by an audit in the tests. */
const LEAST_CHANCE = 1e-9;

/** Whether the value of a watched cell makes a comparison idle. */
export const isIdle: Readonly<Record<Hazard, (value: GridValue) => boolean>> = {
  tie: isTie,
  tail: (chance) => typeof chance === 'number' && Math.min(chance, 1 - chance) < LEAST_CHANCE,
};

/** Whether a rounded quotient hangs on its last digit: nearer than half the margin to the edge of the rounding rule. */
function isTie(quotient: GridValue): boolean {
  if (typeof quotient !== 'number') return false;
  const margin = roundingMargin(quotient);
  const fromWhole = Math.abs(quotient - Math.round(quotient));
  // Whole numbers are met within the margin; halves go up from the margin below.
  const edges = [margin, 0.5 - margin];
  return edges.some((edge) => Math.abs(fromWhole - edge) <= margin / 2);
}

/** A value of the engine with a text as its code. */
export function encodeValue(
  value: EngineValue,
  codeOf: (text: string) => number,
): number | boolean | undefined {
  return typeof value === 'string' ? codeOf(value) : value;
}
