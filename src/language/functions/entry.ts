import type { UnitRegistry } from '../../units/index.ts';
import type { Type } from '../type.ts';

export type FunctionGroup =
  | 'arithmetic'
  | 'rounding'
  | 'powers and logarithms'
  | 'angles'
  | 'logic'
  | 'aggregates'
  | 'conditional aggregates'
  | 'lookup and interpolation'
  | 'rows of a table'
  | 'chance'
  | 'dates'
  | 'text';

/**
 * What a parameter takes. `like` asks for the same kind as every other parameter of that letter (numbers of one
 * dimension, points of one kind; the literal 0 fits any dimension); `number` any dimension but no point.
 */
export type Taking =
  | { readonly kind: 'plain' | 'angle' | 'number' | 'truth' | 'text' | 'date' | 'any' }
  | { readonly kind: 'like'; readonly letter: string; readonly points?: boolean; readonly texts?: boolean }
  /** A literal text, one of `choices` if they are listed. */
  | { readonly kind: 'option'; readonly choices?: readonly string[] };

export interface Parameter {
  readonly name: string;
  readonly takes: Taking;
  /**
   * `each`: broadcast over the axes; `column`: its fresh axes are gathered into an array for the evaluator.
   * An option has no role.
   */
  readonly role: 'each' | 'column' | 'option';
  readonly optional?: boolean;
  /**
   * One element of this column is picked as the result: texts arrive by exact code, and NaN where another row has no
   * value, which does not matter.
   */
  readonly picked?: boolean;
  /** This and every following parameter repeat as a group. */
  readonly repeats?: boolean;
}

/** Puts things as the person would: a value (SI) of the kind of the argument at fault, and an argument as they wrote it. */
export interface AsPerson {
  readonly shown: (si: number) => string;
  readonly written: (argument: number) => string;
}

/** Why a call has no value, in words that finish the sentence "NAME: …". */
export interface ToldRefusal {
  readonly words: string | ((person: AsPerson) => string);
  /** Index of the argument at fault, to point at. */
  readonly argument?: number;
}
/** The condition of a call, its first argument, holds in none of so many rows; it `sought` the "least" of their values. */
export interface UnmetCondition {
  readonly sought: string;
  readonly rows: number;
}
/** The key of a call, its first argument, stands in no row of its second one. */
export interface UnlistedKey {
  readonly unlisted: true;
}
export type Refusal = ToldRefusal | UnmetCondition;
/** Why a function of whole columns has no value. */
export type GatherRefusal = Refusal | UnlistedKey;

/** Element by element. NaN means outside its domain; `refuse` then says why. Truth is 1 or 0, points are SI. */
export interface EachEvaluator {
  readonly kind: 'each';
  readonly of: (...args: number[]) => number;
  readonly refuse?: (args: readonly number[]) => Refusal;
}
/** Element by element on texts and numbers, with the options after them; `undefined` is a refusal. */
export interface TextEvaluator {
  readonly kind: 'text';
  readonly of: (
    args: readonly (number | string)[],
    options: readonly string[],
  ) => number | string | undefined;
  readonly refuse?: (args: readonly (number | string)[]) => Refusal;
}
/**
 * From whole columns. `pooled` arguments are flattened into one sample given as `columns[0]`; otherwise column
 * arguments are aligned element by element over their common fresh axes, one array each. `each` holds the
 * elementwise arguments. Equal texts (case and outer spaces aside) are equal numbers. No array is kept or
 * changed. NaN means refused; only a picked column may hold NaN.
 */
export interface GatherEvaluator {
  readonly kind: 'gather';
  readonly pooled?: boolean;
  readonly of: (
    columns: readonly Float64Array[],
    each: readonly number[],
    options: readonly string[],
  ) => number;
  readonly refuse?: (
    columns: readonly Float64Array[],
    each: readonly number[],
    options: readonly string[],
  ) => GatherRefusal;
  /**
   * The same for many calls on the same columns, with what they share (sorting, a check of the keys) done once:
   * `search(columns, options)(each)` is `of(columns, each, options)` to the last bit, and takes no walk along a column.
   */
  readonly search?: (
    columns: readonly Float64Array[],
    options: readonly string[],
  ) => (each: readonly number[]) => number;
  /** `refuse` for many calls on the same columns: `refuseMany(columns, options)(each)` takes no walk along a column. */
  readonly refuseMany?: (
    columns: readonly Float64Array[],
    options: readonly string[],
  ) => (each: readonly number[]) => GatherRefusal;
  /** Of a function of a condition (`columns[0]`) and values (`columns[1]`, if it has any): what it makes of those chosen. */
  readonly chosen?: ChosenValues;
}
/** How the values of the rows in which a condition holds make one, for many conditions over the same values. */
export interface ChosenValues {
  /** From the values chosen, in the order of their rows. */
  readonly of: (values: Float64Array) => number;
  /**
   * `of` the first k values for every k from 0 to all, in one go. A sum has its values added in the order given, so that
   * its last digit may be another than in the order of the rows.
   */
  readonly ofBeginnings: (values: Float64Array) => Float64Array;
}
/** Down the rows of the formula's own table in stored order: reads `values`, writes `out` of equal length. */
export interface ScanEvaluator {
  readonly kind: 'scan';
  readonly of: (values: Float64Array, out: Float64Array) => void;
  /** One step of the same: the running value after `value`, `before` being undefined on the first row. */
  readonly step: (before: number | undefined, value: number) => number;
}
/** The checker turns the call into a node of its own kind (branch, above, row, blank, known, series). */
export interface SpecialEvaluator {
  readonly kind: 'special';
  readonly node: 'branch' | 'above' | 'row' | 'blank' | 'known' | 'series' | 'power';
}
export type Evaluator = EachEvaluator | TextEvaluator | GatherEvaluator | ScanEvaluator | SpecialEvaluator;

/** A gathered argument as a column of the A1 grid. */
export interface LoweredColumn {
  readonly count: number;
  /** The whole range, absolute. */
  readonly range: string;
  /** The absolute address of one element, from 0. */
  readonly cell: (index: number) => string;
  /** The element at a whole place from 1 that a cell holds, as a formula. */
  readonly pick: (place: string) => string;
  /** How it is searched, where it stands on the grid as a column of the book. */
  readonly search?: LoweredSearch;
}
/** A column of the grid that can be searched without a cell for every element; made when first asked for. */
export interface LoweredSearch {
  /** The address of a cell that holds 1 where every element rises above the one before it. */
  readonly rises: () => string;
  /** How many elements of a rising column are not above a value, as a formula. */
  readonly countUpTo: (value: string) => string;
  /** Its elements in ascending order; undefined where some are equal to the tolerance only, so that none is expected. */
  readonly order: () => LoweredOrder | undefined;
}
/** The different elements of a column in an order in which they are expected to ascend. */
export interface LoweredOrder {
  /** The address of an element that has no value, with which no search of the column has one. */
  readonly gap?: string;
  /** The address of a cell that holds 1 where they do ascend so on the grid, and equal ones are equal there. */
  readonly holds: string;
  /** What stands beside the greatest element that is not above a value, as a formula. */
  readonly beside: (value: string, what: BesideElement) => string;
}
/**
 * The element, its row from 1 (`only`: unless it stands in several) or the first of its rows; and the same of the next
 * greater one.
 */
export type BesideElement = 'here' | 'only' | 'first' | 'next' | 'next only' | 'next first';
/** What lowering may write besides plain formulas. */
export interface LoweringTools {
  /** The address of a cell that holds this number; numbers never stand in formula text. */
  readonly constant: (value: number) => string;
  /** A helper cell with this formula (without `=`); its address. */
  readonly helper: (formula: string) => string;
  /** A helper column, one formula an element. */
  readonly column: (count: number, formula: (index: number) => string) => LoweredColumn;
  /** `a <= b` to the language's tolerance, and the other comparisons, as an A1 formula giving TRUE or FALSE. */
  readonly compare: (op: '=' | '<>' | '<' | '<=' | '>' | '>=', left: string, right: string) => string;
  /** A formula that is an error, for what has no value. */
  readonly refused: string;
}
/**
 * The call as a plain spreadsheet formula of `+ - * / ^`, comparisons and the few functions the design allows.
 * `each` arguments arrive as operands that need no parentheses; `columns` as ranges.
 */
export type Lower = (
  each: readonly string[],
  columns: readonly LoweredColumn[],
  options: readonly string[],
  tools: LoweringTools,
) => string;

/** A form of its own in mathematics; a function without one is its name with arguments in parentheses. */
export type TypesetForm =
  | 'root'
  | 'bars'
  | 'floor'
  | 'ceiling'
  | 'pi'
  | 'exponential'
  | 'power'
  | 'sum'
  | 'blank'
  | 'not'
  | 'and'
  | 'or'
  | 'if'
  | 'ifs'
  | 'switch';

/**
 * How a call over columns is worked by hand: its terms added up, or listed behind its name (`name`: behind that of another
 * function); nothing but what it comes to; or the row found by its place (`row`), by a key (`match`), or what lies between
 * two rows (`line`) or four (`grid`). `extreme`: one of the terms is the result.
 */
export interface WorkedForm {
  readonly as: 'sum' | 'list' | 'value' | 'row' | 'match' | 'line' | 'grid';
  readonly name?: string;
  readonly extreme?: 'greatest' | 'least';
}

/** An example of a call. It runs in the tests and stands in the reference. */
export interface FunctionExample {
  readonly formula: string;
  /** Entries by name; a list of them, under `table.column`, is a column. */
  readonly given?: Readonly<Record<string, string | readonly string[]>>;
  /** The table whose column the formula is. */
  readonly within?: string;
  readonly unit?: string;
  /** In `unit`, a date as it is written; a list has one value a row. */
  readonly value: number | string | boolean | readonly number[];
}

/** One function of the language: everything anyone needs to know of it. */
export interface FunctionEntry {
  readonly name: string;
  readonly group: FunctionGroup;
  readonly parameters: readonly Parameter[];
  /** Turns the literal options into what the evaluator takes; a text is the reason they do not fit. */
  readonly prepare?: (
    options: readonly string[],
    types: readonly Type[],
    units: UnitRegistry,
  ) => readonly string[] | string;
  /** The result, axes aside, from the argument types (options left out); a text is the reason it has none. */
  readonly gives: (types: readonly Type[]) => Type | string;
  readonly evaluate: Evaluator;
  /** Absent where the special node is lowered by itself, or where `noRecheck` says why there is none. */
  readonly lower?: Lower;
  /** Why the second engine does not recompute it. */
  readonly noRecheck?: string;
  readonly typeset?: TypesetForm;
  /** The name mathematics uses where it is another: `sin`, `arctan`, `max`. */
  readonly typesetName?: string;
  /** How a call over columns has its numbers put in, where that is not its terms behind its name. */
  readonly worked?: WorkedForm;
  /** One line. */
  readonly help: string;
  readonly example: FunctionExample;
}
