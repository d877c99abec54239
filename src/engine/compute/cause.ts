import type { Problem } from '../../diagnostics/index.ts';
import type { CallNode, Typed } from '../../language/index.ts';
import type { ColumnCell, Formula, ScalarCell, TableCell } from '../store/cells.ts';

/** Why a part of a formula has no value at one place. */
export type Cause =
  /** Because a cell it reads has none. `row` is counted from 0, absent for a scalar or a column as a whole. */
  | {
      readonly kind: 'cell';
      readonly cell: ScalarCell | ColumnCell;
      readonly row?: number;
      readonly node: Typed;
    }
  /** Because the rows of a table could not be determined. */
  | { readonly kind: 'table'; readonly table: TableCell; readonly node: Typed }
  /** Because of what it does itself. `waiting` if the remedy lies elsewhere. */
  | { readonly kind: 'own'; readonly status: 'problem' | 'waiting'; readonly problem: Problem };

/** Where a value that is missing comes from in the end. */
export type Root =
  | { readonly kind: 'blank'; readonly cell: ScalarCell | ColumnCell; readonly row?: number }
  | {
      readonly kind: 'fault';
      readonly cell: ScalarCell | ColumnCell;
      readonly row?: number;
      readonly problem: Problem;
    };

/** Looks at the parts of one formula after it was computed, to say why there is no value. */
export interface CauseFinder {
  readonly formula: Formula;
  /** The value of a part where the cursors stand; NaN if it has none. */
  readonly value: (node: Typed) => number;
  /** The columns an aggregate gathers where the cursors stand; undefined if something in them has no value. */
  readonly gathered: (node: CallNode) => readonly Float64Array[] | undefined;
  /** What is found out of a part once for all rows: found again only after values may have changed. */
  readonly once: <T>(node: Typed, find: () => T) => T;
  /** Why a part without a value has none. */
  readonly cause: (node: Typed) => Cause;
  /** Where the lack of a value starts. */
  readonly root: (cell: ScalarCell | ColumnCell, row: number | undefined) => Root;
  /** Whether a row without a value lacks it only because something in that row of the table is blank. */
  readonly isBlankRow: (column: ColumnCell, row: number) => boolean;
  /** That a cell is blank, in words. */
  readonly blankWords: (root: Root) => string;
  /** The text of a part as written. */
  readonly written: (node: Typed) => string;
  /** What a person calls a part: the description of the line or column that it names, else as written. */
  readonly called: (node: Typed) => string;
  /** A value in words, in the unit the person wrote if the part has one: "4.5 kN". */
  readonly shown: (si: number, node: Typed) => string;
  readonly textOf: (code: number) => string;
  /** A text that a part has, in the words that a person reads of it. */
  readonly wordsOf: (code: number, node: Typed) => string;
  readonly normalOf: (code: number) => number;
  readonly scalar: (id: string) => ScalarCell;
  readonly column: (id: string, table: string) => ColumnCell;
  readonly table: (id: string) => TableCell;
}

/** The cause of the first part without a value, if there is one. */
export function firstCause(parts: readonly Typed[], finder: CauseFinder): Cause | undefined {
  const part = parts.find((node) => Number.isNaN(finder.value(node)));
  return part && finder.cause(part);
}

/** A fault of the part itself. */
export function ownFault(problem: Problem, status: 'problem' | 'waiting' = 'problem'): Cause {
  return { kind: 'own', status, problem };
}
