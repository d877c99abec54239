import type { CalcColumn, Row, SeriesColumn } from '../../document/index.ts';
import type { Item } from '../../notebook/index.ts';
import type { Session } from '../session/session.ts';

/** What a line of the page shows: a row of a block, or the formula of a table's column. */
export type LineSource = Row | CalcColumn | SeriesColumn;

/** All that the drawing of a line's value needs. */
export interface LineContext {
  readonly session: Session;
  readonly sheet: string;
  readonly source: LineSource;
  /** The line's item of the model; absent while the model lacks it. */
  readonly item: Item | undefined;
  /** Whether the person is on this line. */
  readonly active: boolean;
  /** How many em of formula fit beside the description, and below it. */
  readonly room: Room;
}

/** How many em of formula fit beside the description, and on lines of its own; `across` is all up to the units, in px. */
export interface Room {
  readonly beside: number;
  readonly below: number;
  readonly across: number;
}
