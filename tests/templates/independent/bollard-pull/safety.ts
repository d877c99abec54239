import type { Worked } from '../program.ts';
import type { Entries } from './entries.ts';
import type { Combination } from './load.ts';

/** Factor of safety shown for a line that is slack or idle. */
export const idle = 1000;

/** Break strength over tension; a line without tension is idle. */
export const safetyOf = (strength: number, tension: number): number =>
  tension > 0 ? strength / tension : idle;

/** UFC 4-159-03 (2005), Table 3-18; half of it at least, and a factor of safety below 1 is none, as the line parts. */
export const wantedWithLoss = (number: Entries['number']): number =>
  Math.max(1, number('moor.n_req') * Math.max(0.5, number('moor.p_lost') / 100));

/** What the bollards need of the mooring: the tensions in each state that counts, line by line. */
export interface Pulls {
  /** All lines in use, in each combination; undefined where the sharing leaves some of them open. */
  readonly intact: readonly (readonly number[])[] | undefined;
  /** The same, and each line lost in turn; undefined where some state has none. */
  readonly lost: readonly (readonly number[])[] | undefined;
  /** The combination of each of these states. */
  readonly combinations: readonly Combination[];
}

/** The combination shown, with all lines in use. */
export interface Intact {
  readonly tensions: readonly number[] | undefined;
  /** Least factors of safety, of the lines and with all of the force along the berth shared; undefined where left open. */
  readonly least: number | undefined;
  readonly leastAlong: number | undefined;
  /** What is left of the moment over what is allowed; not a number where the sharing gives none. */
  readonly momentOff: number;
  readonly worked: Worked;
}
