// A table of data: every function's kinds, written from the design and OpenFormula, not from the program's own table.
import type { Rational } from '../../../src/units/index.ts';

/**
 * `NAME(parameter; parameter…) = result`. Kinds of parameter:
 *   plain (a number without dimension, marked an angle or not), unmarked (no angle), angle, truth, text, date,
 *   n (a number of any dimension), any (anything);
 *   a b c (numbers, those of one letter alike), A B (numbers or points), V W (anything, those of one letter alike).
 * `[]` after a kind: a column may stand there and is gathered; `…`: repeats, with the parameter before it if they are
 * joined by a comma; `?`: may be left out; `{one|two}`: a literal choice.
 * Shapes, `kind:shape`, keep arguments where the function has a value; they say nothing of kinds.
 * Results: a kind or letter, `a^2`, `a^1/2`, `product` (of all n).
 */
const table = `
  ABS(a) = a
  SIGN(n) = plain
  LESSER(A; A…) = A
  GREATER(A; A…) = A
  PRODUCT(n[]…) = product
  SUMSQ(a[]…) = a^2
  ROUND(unmarked; plain:digits?) = plain
  ROUNDUP(unmarked; plain:digits?) = plain
  ROUNDDOWN(unmarked; plain:digits?) = plain
  TRUNC(unmarked; plain:digits?) = plain
  INT(unmarked) = plain
  CEILING(a; a:step) = a
  FLOOR(a; a:step) = a
  MROUND(a; a:step) = a
  MOD(a; a:step) = a
  QUOTIENT(a; a:step) = plain
  SQRT(a:positive) = a^1/2
  EXP(plain:small) = plain
  LN(plain:above) = plain
  LOG10(plain:above) = plain
  LOG(plain:above; plain:base) = plain
  PI() = plain
  SIN(angle) = plain
  COS(angle) = plain
  TAN(angle) = plain
  ASIN(plain:sine) = angle
  ACOS(plain:sine) = angle
  ATAN(plain) = angle
  ATAN2(a; a) = angle
  SINH(plain:small) = plain
  COSH(plain:small) = plain
  TANH(plain:small) = plain
  ASINH(plain) = plain
  ACOSH(plain:above) = plain
  ATANH(plain:sine) = plain
  ERF(plain:small) = plain
  ERFC(plain:small) = plain
  IF(truth; V; V) = V
  IFS(truth,V…) = V
  SWITCH(W; W,V…; V) = V
  CHOOSE(plain:place; V…) = V
  AND(truth…) = truth
  OR(truth…) = truth
  XOR(truth; truth) = truth
  NOT(truth) = truth
  ISBLANK(any:cell) = truth
  SUM(a[]…) = a
  AVERAGE(A[]…) = A
  MIN(A[]…) = A
  MAX(A[]…) = A
  COUNT(any[]…) = plain
  MEDIAN(A[]…) = A
  VAR(a[]:two…) = a^2
  VARP(a[]…) = a^2
  STDEV(a[]:two…) = a
  STDEVP(a[]…) = a
  PERCENTILE(A[]; plain:chance) = A
  LARGE(A[]; plain:rank) = A
  SMALL(A[]; plain:rank) = A
  SUMPRODUCT(n[]; n[]) = product
  SUMIF(truth[]; a[]) = a
  COUNTIF(truth[]) = plain
  AVERAGEIF(truth[]:some; A[]) = A
  MINIF(truth[]:some; A[]) = A
  MAXIF(truth[]:some; A[]) = A
  INDEX(V[]:column; plain:row) = V
  MATCH(V:key; V[]:keys; {exact|first|at or below|at or above}) = plain
  LOOKUP(V:key; V[]:keys; W[]:column; {exact|first|at or below|at or above}) = W
  INTERPOLATE(A:inside; A[]:rising; B[]:column; {hold|refuse}?) = B
  INTERPOLATE2(a; c; a[]:column; c[]:column; b[]:column; {hold}) = b
  ABOVE(V:own; V) = V
  ROW() = plain
  RUNNINGSUM(a:own) = a
  RUNNINGMAX(A:own) = A
  RUNNINGMIN(A:own) = A
  KNOWN(any) = any
  NORMSINV(plain:chance) = plain
  NORMINV(plain:chance; a; a:positive) = a
  LOGINV(plain:chance; plain:small; plain:chance) = plain
  TRIANGINV(plain:chance; a:low; a:low; a:high) = a
  BETAINV(plain:chance; plain:above; plain:above; a:low; a:high) = a
  DATE(plain:year; plain:month; plain:month) = date
  YEAR(date) = plain
  MONTH(date) = plain
  DAY(date) = plain
  WEEKDAY(date) = plain
  WORKDAY(date; plain:days; date[]?) = date
  NETWORKDAYS(date; date; date[]?) = plain
  TEXT(n:text; {}; {}) = text
  LEN(text) = plain
  LEFT(text; plain:place) = text
  RIGHT(text; plain:place) = text
  MID(text; plain:place; plain:place) = text
  UPPER(text) = text
  LOWER(text) = text
  TRIM(text) = text
`;

export interface Slot {
  readonly kind: string;
  /** A column may stand here, and its rows are gathered. */
  readonly column: boolean;
  readonly shape: string;
  readonly optional: boolean;
  readonly choices?: readonly string[];
}

export interface Signature {
  readonly name: string;
  /** Slots in order; a list of slots repeats as a group. */
  readonly slots: readonly (Slot | readonly Slot[])[];
  readonly result: string;
}

function readSlot(text: string): Slot {
  const choices = /^\{(.*)\}\??$/.exec(text)?.[1];
  const optional = text.endsWith('?');
  if (choices !== undefined)
    return { kind: 'option', column: false, shape: '', optional, choices: choices.split('|') };
  const [, kind = '', column, , shape = ''] = /^(\w+)(\[\])?(:(\w+))?\??$/.exec(text) ?? [];
  if (kind === '') throw new Error(`no slot: ${text}`);
  return { kind, column: column !== undefined, shape, optional };
}

function readSignature(line: string): Signature {
  const [, name = '', inside = '', result = ''] = /^(\w+)\((.*)\) = (.+)$/.exec(line.trim()) ?? [];
  if (name === '') throw new Error(`no signature: ${line}`);
  const slots = inside
    .split(/; ?/)
    .filter((text) => text !== '')
    .map((text) => (text.endsWith('…') ? text.slice(0, -1).split(',').map(readSlot) : readSlot(text)));
  return { name, slots, result };
}

/** Every function but POWER and SERIES, which are checked like `^` and as a whole formula. */
export const signatures: readonly Signature[] = table.trim().split('\n').map(readSignature);

export const signatureByName: ReadonlyMap<string, Signature> = new Map(
  signatures.map((signature) => [signature.name, signature]),
);

/** The slot of every argument of a call with so many, repeated groups spread out; undefined if so many do not fit. */
export function slotsFor(signature: Signature, count: number): readonly Slot[] | undefined {
  const { slots } = signature;
  const group = slots.find((slot): slot is readonly Slot[] => Array.isArray(slot));
  const single = slots.filter((slot): slot is Slot => !Array.isArray(slot));
  if (!group) {
    const needed = single.filter((slot) => !slot.optional).length;
    return count >= needed && count <= single.length ? single.slice(0, count) : undefined;
  }
  const repeats = (count - single.length) / group.length;
  if (!Number.isInteger(repeats) || repeats < 1) return undefined;
  return slots.flatMap((slot) =>
    Array.isArray(slot) ? Array.from({ length: repeats }, () => group).flat() : [slot as Slot],
  );
}

/** The power of a result, `2` of `a^2` or `1/2` of `a^1/2`. Throws on what is none. */
export function powerOf(written: string): Rational {
  const [n, d = 1, ...more] = written.split('/').map(Number);
  if (more.length > 0 || !Number.isInteger(n) || n === undefined || n < 1 || !Number.isInteger(d) || d < 1)
    throw new Error(`${written} is no power of a result`);
  return { n, d };
}
