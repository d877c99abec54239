import type { CalcColumn, Row, SeriesColumn } from '../../../document/index.ts';
import type { Item } from '../../../notebook/index.ts';
import type { Session } from '../../session/session.ts';

/** What a line of the page shows: a row of a block, or the formula of a table's column. */
export type LineSource = Row | CalcColumn | SeriesColumn;

/** All that the drawing of a line's value needs. */
export interface LineContext {
  readonly session: Session;
  readonly sheet: string;
  readonly source: LineSource;
  /** The line's item of the model; absent while the model lacks it. */
  readonly item: Item | undefined;
  /** Whether the line shows what it hides elsewhere, numbers put in or a check's formula: where the person rests, and on paper. */
  readonly full: boolean;
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
