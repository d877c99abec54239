import type { Typed } from '../language/index.ts';
import type { Unit } from '../units/index.ts';

/**
 * What a person entered. `written` is the number in its unit, before any factor (12 for `12 ft`; seconds since
 * 1970-01-01 for a date); without a unit it is plain. `missing` was left blank, `failed` could not be read.
 */
export type RecheckEntry =
  | { readonly kind: 'number'; readonly written: number; readonly unit?: Unit }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'truth'; readonly value: boolean }
  | { readonly kind: 'missing' }
  | { readonly kind: 'failed' };

interface RecheckBase {
  /** `sheet.name` or `sheet.table.column`, as the typed trees refer to it. */
  readonly id: string;
  /** The unit a person reads it in, for the words of a finding. */
  readonly unit?: Unit;
}
/** One entered value. */
export interface RecheckInput extends RecheckBase {
  readonly kind: 'input';
  readonly entry: RecheckEntry;
}
/** An entered column, one entry a row of its table (defaults already in place of blanks). */
export interface RecheckColumn extends RecheckBase {
  readonly kind: 'column';
  /** `sheet.table`. */
  readonly table: string;
  readonly entries: readonly RecheckEntry[];
}
/** A calculated line, or with `table` a calculated column. */
export interface RecheckFormula extends RecheckBase {
  readonly kind: 'formula';
  readonly table?: string;
  readonly tree: Typed;
}
export type RecheckCell = RecheckInput | RecheckColumn | RecheckFormula;

export interface RecheckTable {
  /** `sheet.table`. */
  readonly id: string;
  /** How many rows the engine gives it. */
  readonly rows: number;
  /** Whether a series that makes the rows has no value, so that there are none. */
  readonly failed?: boolean;
}

/** A whole book as the recheck takes it: every cell once, in any order. */
export interface RecheckProgram {
  readonly tables: readonly RecheckTable[];
  readonly cells: readonly RecheckCell[];
  /** The units the book defines, in its order: `{ symbol: 'shift', definition: '10 h' }`, or `base`. */
  readonly units?: readonly { readonly symbol: string; readonly definition: string }[];
}

/** A value of the live engine: a number in SI, a truth value or a text; undefined where there is none. */
export type EngineValue = number | boolean | string | undefined;

/** Reads the live engine: `row` counts from 0 and is absent for a line. */
export type EngineValues = (id: string, row?: number) => EngineValue;
