import type { CalcColumn, Row, SeriesColumn } from '../../../document/index.ts';
import type { Item } from '../../../notebook/index.ts';
import type { Session } from '../../session/session.ts';
import type { OnPaper } from '../paper/on-paper.ts';

/** What a line of the page shows: a row of a block, or the formula of a table's column. */
export type LineSource = Row | CalcColumn | SeriesColumn;

/** All that the drawing of a line's value needs. */
export interface LineContext {
  readonly session: Session;
  readonly sheet: string;
  readonly source: LineSource;
  /** The line's item of the model; absent while the model lacks it. */
  readonly item: Item | undefined;
  /** Whether a check shows its formula: where the person rests, and on paper. */
  readonly full: boolean;
  /** Whether the numbers are put in: where the person rests, and on paper as far as its working is wanted. */
  readonly numbers: boolean;
  /** Given where the line is laid out for paper. */
  readonly paper: OnPaper | undefined;
  /** How many em of formula fit beside the description, and below it. */
  readonly room: Room;
}

/**
 * How many em of formula fit beside the description, and on lines of its own, and how many times as much of numbers put in;
 * `result` is what a result takes behind it, which the column of a table has for its formula. `across` is all up to the units,
 * in px.
 */
export interface Room {
  readonly beside: number;
  readonly below: number;
  readonly numbers: number;
  readonly result: number;
  readonly across: number;
}
