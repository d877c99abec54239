import type { Problem } from '../diagnostics/index.ts';
import type { ColumnReading } from '../engine/index.ts';
import { type Unit, writeDecimals, writeNumber } from '../units/index.ts';

/** An SI number (or point) with the unit it is read in. */
export interface Quantity {
  readonly kind: 'number';
  readonly si: number;
  readonly unit: Unit;
}

/** The value of a line. */
export type Value =
  | Quantity
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'truth'; readonly truth: boolean };

/**
 * How a line stands: it has a value; it is blank; it has a problem of its own; it waits, on a line that has one or for its
 * own formula to be written; or it is a check that does not apply, whose `problem` says under which condition it does.
 */
export type Result =
  | { readonly status: 'ok'; readonly value: Value }
  | { readonly status: 'missing' }
  | { readonly status: 'problem'; readonly problem: Problem }
  | { readonly status: 'inapplicable'; readonly problem: Problem }
  | { readonly status: 'waiting'; readonly problem: Problem };

/** A column as it stands: its rows, or why it has none. */
export type ColumnResult =
  | { readonly status: 'ok'; readonly unit: Unit; readonly reading: ColumnReading }
  | { readonly status: 'problem' | 'waiting'; readonly problem: Problem };

/** The remark of a check that rests on values beyond their permitted ranges; `on` are the ids of their lines and columns. */
export type OutOfRangeRemark = Problem & { readonly data: { readonly on: readonly string[] } };

/**
 * The remark of a check that stated values ease; `by` are the ids of their lines and columns, or the side of the check itself.
 * `only`: without them it would not hold.
 */
export type EasedRemark = Problem & {
  readonly data: { readonly by: readonly string[]; readonly only: boolean };
};

/** A check: whether it holds, with demand over capacity where both are numbers of one sign. */
export interface Verdict {
  readonly holds: boolean;
  readonly demand?: Quantity;
  readonly capacity?: Quantity;
  /** Demand over capacity; absent where the capacity is not above zero. */
  readonly utilisation?: number;
  /** Counts against none or one are compared: how near it is to its limit means nothing. */
  readonly isYesOrNo?: true;
  /** Present where it rests on values beyond their permitted ranges. */
  readonly outOfRange?: OutOfRangeRemark;
}

/** How near a check is to its limit, 1 at it; undefined where it has no capacity, or only holds or fails. */
export function shareOf({ utilisation, isYesOrNo }: Verdict): number | undefined {
  return isYesOrNo ? undefined : utilisation;
}

/**
 * Puts the checks nearest to their limit first: what fails, the furthest beyond it in front; then what holds by how near it
 * is, and what only holds; last what has no verdict.
 */
export function byNearness(a: Verdict | undefined, b: Verdict | undefined): number {
  const [x, y] = [rankOf(a), rankOf(b)];
  return x.rank - y.rank || y.share - x.share || 0;
}

function rankOf(verdict: Verdict | undefined): { readonly rank: number; readonly share: number } {
  const share = verdict && shareOf(verdict);
  if (!verdict) return { rank: 3, share: 0 };
  if (!verdict.holds) return { rank: 0, share: share ?? Number.MAX_VALUE };
  return share === undefined ? { rank: 2, share: 0 } : { rank: 1, share };
}

/** How a check stands in a few words: one that holds and rests on values beyond their permitted ranges does not just hold. */
export function verdictWord({ holds, outOfRange }: Verdict): 'holds' | 'holds, beyond range' | 'fails' {
  if (!holds) return 'fails';
  return outOfRange ? 'holds, beyond range' : 'holds';
}

/**
 * A utilisation as the page prints it, in percent: a check that fails never prints 100 % or less, one that holds never
 * more than 100 %.
 */
export function writeUtilisation(utilisation: number, holds: boolean): string {
  const percent = utilisation * 100;
  for (let decimals = percent < 10 ? 1 : 0; decimals <= 6; decimals += 1) {
    const shown = Number(writeDecimals(percent, decimals));
    if (holds ? shown <= 100 : shown > 100) return `${writeNumber(percent, { decimals })} %`;
  }
  return holds ? '100 %' : 'just over 100 %';
}
