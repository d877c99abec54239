import { type Problem, problem } from '../../diagnostics/index.ts';
import type { HandValue, Review } from '../../document/index.ts';
import {
  differenceOf,
  type Item,
  type Notebook,
  type Quantity,
  type Result,
  resultAt,
  type Value,
  type Verdict,
} from '../../notebook/index.ts';
import {
  type Entry,
  fromSI,
  PLAIN_UNIT,
  quantityName,
  readEntry,
  type Unit,
  type UnitRegistry,
  writeQuantity,
} from '../../units/index.ts';

/** How far a hand value may be from a result where neither it nor its review says so. */
export const USUAL_TOLERANCE = '1 %';

/** A hand value beside the result it is of. */
export type HandVerdict =
  | {
      readonly kind: 'agrees' | 'differs';
      readonly result: Value;
      readonly hand: Value;
      /** Hand value less result, and how far the two are apart as a share of the larger; of numbers only. */
      readonly difference?: Quantity;
      readonly share?: number;
      readonly tolerance: string;
    }
  /** It cannot be read, or is of another kind than the result. */
  | { readonly kind: 'unread'; readonly problem: Problem }
  /** The result has no value to be compared with. */
  | { readonly kind: 'no result'; readonly result: Result };

/**
 * Compares a hand value with the result of its line or cell; of a check with its utilisation, or in words with its verdict.
 * Numbers agree where they are no further apart than the tolerance, a share of the larger of the two or a quantity of their
 * kind (of levels and dates a quantity only); where both are printed alike; and where 0 is expected and the result is that but for rounding.
 * A utilisation by hand on the other side of the limit is another verdict, however near it is.
 *
 * @param row of a column, the row of the cell, from 0
 */
export function judgeHandValue(
  notebook: Notebook,
  item: Item,
  row: number | undefined,
  written: Pick<HandValue, 'entry' | 'tolerance'>,
): HandVerdict {
  const result = resultIn(notebook, item, row);
  if (result.status !== 'ok') return { kind: 'no result', result };
  const tolerance = toleranceOf(notebook.book.review, written);
  const verdict = item.kind === 'formula' ? notebook.verdict(item.id) : undefined;
  const inWords = /^\s*(holds|fails)\b/i.exec(written.entry)?.[1]?.toLowerCase();
  if (verdict && inWords !== undefined) {
    const [hand, own] = [inWords === 'holds', verdict.holds];
    return {
      kind: hand === own ? 'agrees' : 'differs',
      result: { kind: 'truth', truth: own },
      hand: { kind: 'truth', truth: hand },
      tolerance,
    };
  }
  const value = verdict ? utilisationOf(verdict) : result.value;
  if (!value) return unread('hand-value-of-verdict', { written: written.entry });
  const { registry } = notebook.model;
  const entry = readHand(written.entry, value, registry);
  if (!entry.ok) return { kind: 'unread', problem: entry.problem };
  const { hand } = entry;
  if (hand.kind !== 'number' || value.kind !== 'number')
    return { kind: isSame(hand, value) ? 'agrees' : 'differs', result: value, hand, tolerance };
  const allowed = readTolerance(tolerance, value, registry);
  if (!allowed.ok) return { kind: 'unread', problem: allowed.problem };
  const apart = Math.abs(hand.si - value.si);
  const larger = Math.max(Math.abs(hand.si), Math.abs(value.si));
  const isAlike = areAlike(hand, value);
  const isOtherVerdict = verdict !== undefined && hand.si <= 1 !== verdict.holds;
  const difference = differenceOf(hand, value, registry);
  // A part of a level or a date would be a part of its distance from a datum.
  const share = value.unit.point === undefined ? allowed.most : 0;
  const most = allowed.isShare ? share * larger : allowed.most;
  return {
    kind: !isOtherVerdict && (isAlike || apart <= most) ? 'agrees' : 'differs',
    result: value,
    hand,
    ...(difference && { difference }),
    ...(larger > 0 && value.unit.point === undefined && { share: apart / larger }),
    tolerance,
  };
}

/** A larger share is a slip: 3 for 3 %. */
const LARGEST_SHARE = 0.25;

/** What is nothing but rounding where 0 is expected, in the unit of the result. */
const ZERO = 1e-9;

/** Whether two numbers are printed alike, or the hand value is 0 and the result as good as that. */
function areAlike(hand: Quantity, { si, unit }: Quantity): boolean {
  if (writeQuantity(hand.si, unit) === writeQuantity(si, unit)) return true;
  return fromSI(hand.si, unit) === 0 && Math.abs(fromSI(si, unit)) <= ZERO;
}

/** The tolerance of a hand value: its own, else that of its review, else the usual one. */
export function toleranceOf(review: Review, { tolerance }: Pick<HandValue, 'tolerance'>): string {
  return tolerance ?? review.tolerance ?? USUAL_TOLERANCE;
}

/** What is compared: the value of a line, or of a cell. */
function resultIn(notebook: Notebook, item: Item, row: number | undefined): Result {
  if (!('table' in item)) return notebook.result(item.id);
  const column = notebook.column(item.id);
  if (column.status !== 'ok') return column;
  if (row === undefined || row >= column.reading.length) return { status: 'missing' };
  return resultAt(column.reading.at(row), column.unit);
}

function utilisationOf({ utilisation }: Verdict): Quantity | undefined {
  return utilisation === undefined ? undefined : { kind: 'number', si: utilisation, unit: PLAIN_UNIT };
}

type ReadHand =
  | { readonly ok: true; readonly hand: Value }
  | { readonly ok: false; readonly problem: Problem };

/** Reads a hand value as one of the kind of a result; a number alone is in the unit of the result. */
function readHand(written: string, value: Value, registry: UnitRegistry): ReadHand {
  if (value.kind === 'text') return { ok: true, hand: { kind: 'text', text: written.trim() } };
  const read = readEntry(written, registry, value.kind === 'number' ? value.unit : undefined);
  if (!read.ok) return { ok: false, problem: read.problems[0] ?? otherKind(written, value) };
  const hand = valueRead(read.value, value);
  return hand ? { ok: true, hand } : { ok: false, problem: otherKind(written, value) };
}

function valueRead(entry: Entry, value: Value): Value | undefined {
  if (value.kind === 'truth')
    return entry.kind === 'truth' ? { kind: 'truth', truth: entry.value } : undefined;
  if (value.kind !== 'number' || (entry.kind !== 'number' && entry.kind !== 'point')) return undefined;
  const { unit } = value;
  const isAlike = entry.unit.dimension.key === unit.dimension.key && entry.unit.point === unit.point;
  return isAlike ? { kind: 'number', si: entry.si, unit } : undefined;
}

function otherKind(written: string, value: Value): Problem {
  const wanted =
    value.kind === 'truth'
      ? 'true or false'
      : value.kind === 'text'
        ? 'a text'
        : `${quantityName(value.unit.dimension, value.unit.angle)}, as ${writeQuantity(value.si, value.unit)}`;
  return problem('hand-value-kind', { from: 0, to: written.length }, { written, wanted });
}

function unread(code: 'hand-value-of-verdict', facts: { readonly written: string }): HandVerdict {
  return { kind: 'unread', problem: problem(code, { from: 0, to: facts.written.length }, facts) };
}

const folded = (text: string): string => text.normalize('NFC').trim().toLowerCase();

function isSame(hand: Value, value: Value): boolean {
  if (hand.kind === 'text' && value.kind === 'text') return folded(hand.text) === folded(value.text);
  return hand.kind === 'truth' && value.kind === 'truth' && hand.truth === value.truth;
}

/** What is wrong with a tolerance for all hand values of a review, which is a share; undefined where nothing is. */
export function toleranceProblem(written: string, registry: UnitRegistry): Problem | undefined {
  const read = readTolerance(written, { kind: 'number', si: 0, unit: PLAIN_UNIT }, registry);
  return read.ok ? undefined : read.problem;
}

type Allowed =
  | { readonly ok: true; readonly isShare: boolean; readonly most: number }
  | { readonly ok: false; readonly problem: Problem };

/** A tolerance as a share (`1 %`, `0.01`), or as a quantity of the kind of a difference of the result. */
function readTolerance(written: string, { unit }: Quantity, registry: UnitRegistry): Allowed {
  const whole = { from: 0, to: written.length };
  const read = readEntry(written, registry);
  const entry = read.ok ? read.value : undefined;
  const refused: Allowed = {
    ok: false,
    problem: problem('hand-tolerance-unfit', whole, { written, unit: unitAlone(unit) }),
  };
  if (entry?.kind !== 'number' || entry.si < 0) return refused;
  if (entry.unit.dimension.key === '' && !entry.unit.angle)
    return entry.si <= LARGEST_SHARE ? { ok: true, isShare: true, most: entry.si } : refused;
  return entry.unit.dimension.key === unit.dimension.key
    ? { ok: true, isShare: false, most: entry.si }
    : refused;
}

/** The unit of a point without what the point is measured from. */
function unitAlone({ text, point }: Unit): string {
  return point === undefined ? text : (text.split(' ')[0] ?? text);
}
