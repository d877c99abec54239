import { type Problem, problem } from '../diagnostics/index.ts';
import type { Explainer } from './explain/explainer.ts';
import {
  type ColumnCell,
  type Content,
  failsAsWhole,
  type ScalarCell,
  type ValueKind,
} from './store/cells.ts';
import type { TextPool } from './store/text-pool.ts';

/** What a value is when it is read: an SI number, a text, or true or false. */
export type Value = number | string | boolean;

/** A cell or one row of a column as it stands. `missing`: blank itself; `waiting`: the remedy lies elsewhere. */
export type Reading =
  | { readonly status: 'ok'; readonly value: Value }
  | { readonly status: 'missing' }
  | { readonly status: 'problem' | 'waiting'; readonly problem: Problem };

/** A column as it stands. Valid until the next edit or recalculation. */
export interface ColumnReading {
  readonly holds: ValueKind;
  readonly length: number;
  /** SI numbers, truth 1 or 0, text codes; NaN where there is no value. Not to be written to. */
  readonly values: Float64Array;
  /** How many rows have no value. */
  readonly gaps: number;
  /** One row, counted from 0. */
  readonly at: (row: number) => Reading;
  readonly statusAt: (row: number) => Reading['status'];
  readonly problemAt: (row: number) => Problem | undefined;
  readonly textAt: (row: number) => string | undefined;
  /** What is wrong with the column as a whole: a loop, rows that are not known. */
  readonly problem?: Problem;
  /** Whether the remedy for that lies elsewhere. */
  readonly waiting?: boolean;
  /** Whether it only waits to be computed. */
  readonly pending?: boolean;
}

/** Reads a scalar whose value is `value`. */
export function readScalar(cell: ScalarCell, value: number, explainer: Explainer, texts: TextPool): Reading {
  if (Number.isNaN(value)) return explainer.reason(cell, undefined);
  return { status: 'ok', value: decodeValue(value, holdsOf(cell.content), texts) };
}

/** Reads a column. */
export function readWholeColumn(column: ColumnCell, explainer: Explainer, texts: TextPool): ColumnReading {
  const { values, content } = column;
  const holds = holdsOf(content);
  const at = (row: number): Reading => {
    if (row < 0 || row >= values.length) throw new RangeError(`${column.id} has no row ${row}`);
    const value = values[row] as number;
    if (Number.isNaN(value)) return explainer.reason(column, row);
    return { status: 'ok', value: decodeValue(value, holds, texts) };
  };
  const problemOf = (reading: Reading) => ('problem' in reading ? reading.problem : undefined);
  const whole = column.table.failed || failsAsWhole(column);
  const reason = whole ? explainer.reason(column, undefined) : undefined;
  return {
    holds,
    length: values.length,
    values,
    gaps: column.gaps,
    at,
    statusAt: (row) => at(row).status,
    problemAt: (row) => problemOf(at(row)),
    textAt: (row) => {
      const value = values[row];
      return holds !== 'text' || value === undefined || Number.isNaN(value) ? undefined : texts.textOf(value);
    },
    ...(reason && 'problem' in reason && { problem: reason.problem, waiting: reason.status === 'waiting' }),
  };
}

/** How a cell or row stands that is not computed yet. */
export function pendingReading(): { readonly status: 'waiting'; readonly problem: Problem } {
  return { status: 'waiting', problem: problem('not-computed-yet', { from: 0, to: 0 }, {}) };
}

/** A column that is not computed yet: it has rows, and none of them has a value. */
export function readPendingColumn({ values, content }: ColumnCell): ColumnReading {
  const waiting = pendingReading();
  const { length } = values;
  return {
    holds: holdsOf(content),
    length,
    values: new Float64Array(length).fill(Number.NaN),
    gaps: length,
    at: () => waiting,
    statusAt: () => waiting.status,
    problemAt: () => waiting.problem,
    textAt: () => undefined,
    problem: waiting.problem,
    pending: true,
  };
}

function holdsOf(content: Content): ValueKind {
  return content.kind === 'given' || content.kind === 'formula' ? content.holds : 'number';
}

/** A number of the engine as the value it stands for. */
export function decodeValue(value: number, holds: ValueKind, texts: TextPool): Value {
  if (holds === 'text') return texts.textOf(value);
  return holds === 'truth' ? value === 1 : value;
}
