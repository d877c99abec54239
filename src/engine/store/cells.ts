import type { Problem } from '../../diagnostics/index.ts';
import type { CallNode, Typed } from '../../language/index.ts';
import type { Program, Thunk } from '../compute/stream.ts';

/** What kind of value a cell holds; inside the engine all are numbers (truth 1 or 0, text a code). */
export type ValueKind = 'number' | 'text' | 'truth';

/** How a reader depends on what it reads; bits that add up. */
export const SAME_ROW = 1;
/** Row r reads row r - 1. */
export const ROW_ABOVE = 2;
/** A change of row r reaches every later row. */
export const TO_END = 4;
/** A change anywhere reaches everything. */
export const WHOLE = 8;

/** More than any row number. A whole number, for a row that is infinite would make every index a floating one. */
export const PAST_ALL_ROWS = 2 ** 30;

/** One cell another reads. */
export interface Source {
  readonly source: Cell;
  readonly reach: number;
  /** The number of the edge among the links. */
  readonly edge: number;
}

interface CellBase {
  readonly id: string;
  /** Its number among all cells. */
  readonly index: number;
  /** Its place in the order of evaluation; sources come first. */
  position: number;
  /** What it reads. */
  sources: readonly Source[];
  /** The circle of cells it belongs to, if any. */
  cycle: Cycle | undefined;
}

/** A circle of cells: one that ABOVE opens row by row, or a loop, which has no value. */
export type Cycle =
  | { readonly kind: 'rows'; readonly members: readonly ColumnCell[]; readonly table: TableCell }
  | { readonly kind: 'loop'; readonly members: readonly Cell[]; readonly loop: readonly Cell[] };

/** A formula and what has been made of it so far; parts are made when first needed. */
export interface Formula {
  readonly typed: Typed;
  /** The text its spans point into. */
  readonly text: string;
  /** The table it makes a column of. */
  readonly table: TableCell | undefined;
  /** Counts evaluations, so that what holds for one of them is computed once. */
  epoch: number;
  /** How much work it is, in element operations about. */
  effort: Effort | undefined;
  /** The running functions in it, with the values they had at the last evaluation. */
  scans: Map<CallNode, ScanState> | undefined;
  /** As a column, in blocks. */
  sweep: Program | undefined;
  /** As a column, row by row. */
  stepper: Stepper | undefined;
}

/** How many element operations a formula takes about, as the tables stand. */
export interface Effort {
  /** As one value. */
  readonly ofValue: () => number;
  /** For one row of a column, beside what all rows share. */
  readonly ofRow: () => number;
}

/** The running values of one RUNNINGSUM or its like, one a row. */
export interface ScanState {
  out: Float64Array;
  /** The evaluation `out` belongs to. */
  epoch: number;
}

/** A formula of a circle that ABOVE opens: at each row the running functions step, then the value is computed. */
export interface Stepper {
  readonly steps: readonly (() => void)[];
  readonly value: Thunk;
}

/** The numbers that make the rows of a table. */
export interface SeriesPlan {
  start: number;
  step: number;
  stop: number;
  count: number;
  /** Whether the last row is the stop itself. */
  meets: boolean;
}

/** Where the value of a cell comes from. `absent`: somebody refers to it, and nobody has set it. */
export type Content =
  | { readonly kind: 'absent' }
  | { readonly kind: 'given'; readonly holds: ValueKind; readonly failed?: Problem }
  | { readonly kind: 'formula'; readonly holds: ValueKind; readonly formula: Formula }
  | { readonly kind: 'failed'; readonly problem: Problem };

/** One value, kept with those of all scalars. */
export interface ScalarCell extends CellBase {
  readonly shape: 'scalar';
  content: Content;
}

/** A column of a table: one number a row, NaN where there is no value. */
export interface ColumnCell extends CellBase {
  readonly shape: 'column';
  readonly table: TableCell;
  content: Content;
  values: Float64Array;
  /** How many of the values are NaN. */
  gaps: number;
  /** Given rows that are not blank but wrong. */
  failedRows: ReadonlyMap<number, Problem>;
  /** The rows to be computed again: from `dirtyFrom` to before `dirtyTo`. */
  dirtyFrom: number;
  dirtyTo: number;
  /** Whether the column or the rows of its table are others than at the last evaluation. */
  reshaped: boolean;
  /** Whether rows were left for later and nothing has touched the column since. */
  resumable: boolean;
}

/** A table: how many rows it has, and the cursors that element-by-element evaluation reads. */
export interface TableCell extends CellBase {
  readonly shape: 'table';
  /** The number of rows in force. */
  length: number;
  /** The number of rows set from outside; in force unless a series makes the rows. */
  givenLength: number;
  /** Whether the rows could not be determined; `length` is then 0. */
  failed: boolean;
  readonly columns: ColumnCell[];
  /** The series columns, the first by name making the rows. */
  series: readonly ColumnCell[];
  /** What the first series column asks for; undefined if it has no value or there is none. */
  plan: SeriesPlan | undefined;
  /** This row, for column formulas. */
  row: number;
  /** The row of the fresh axis, inside aggregates. */
  fresh: number;
}

export type Cell = ScalarCell | ColumnCell | TableCell;

/** The formula of the series that makes the rows of a table, if one does. */
export function makerOf(table: TableCell): Formula | undefined {
  const content = table.series[0]?.content;
  return content?.kind === 'formula' ? content.formula : undefined;
}

/** Whether all of a column fails for one reason: a loop, a formula that is none, a column that is not there. */
export function failsAsWhole({ cycle, content }: ColumnCell): boolean {
  return cycle?.kind === 'loop' || content.kind === 'absent' || content.kind === 'failed';
}

export const NO_SOURCES: readonly Source[] = [];
export const NO_FAILED_ROWS: ReadonlyMap<number, Problem> = new Map();
const NO_VALUES = new Float64Array(0);

// What every recalculation looks at comes first, to lie in one line of the cache.
function base<S extends Cell['shape']>(id: string, index: number, shape: S) {
  return { id, shape, cycle: undefined, index, position: -1, sources: NO_SOURCES };
}

/** A formula nothing has been made of yet, with the kind of value it gives. */
export function newFormula(
  typed: Typed,
  text: string,
  table: TableCell | undefined,
): Extract<Content, { kind: 'formula' }> {
  const { kind } = typed.type;
  const holds = kind === 'text' || kind === 'truth' ? kind : 'number';
  const formula = {
    typed,
    text,
    table,
    epoch: 0,
    effort: undefined,
    scans: undefined,
    sweep: undefined,
    stepper: undefined,
  };
  return { kind: 'formula', holds, formula };
}

/** A scalar nobody has set yet. */
export function absentScalar(id: string, index: number): ScalarCell {
  return { ...base(id, index, 'scalar'), content: { kind: 'absent' } };
}

/** A column nobody has set yet. */
export function absentColumn(id: string, index: number, table: TableCell): ColumnCell {
  return {
    ...base(id, index, 'column'),
    table,
    content: { kind: 'absent' },
    values: NO_VALUES,
    gaps: 0,
    failedRows: NO_FAILED_ROWS,
    dirtyFrom: 0,
    dirtyTo: PAST_ALL_ROWS,
    reshaped: true,
    resumable: false,
  };
}

/** A table without rows. */
export function emptyTable(id: string, index: number): TableCell {
  return {
    ...base(id, index, 'table'),
    columns: [],
    length: 0,
    givenLength: 0,
    failed: false,
    series: [],
    plan: undefined,
    row: 0,
    fresh: 0,
  };
}
