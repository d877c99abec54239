import type { LoweredOrder } from '../../language/index.ts';
import type { GridLabel, OpenSheet } from '../grid.ts';
import type { EngineValues, RecheckCell, RecheckTable } from '../program.ts';
import type { TextCodes } from '../text-codes.ts';
import type { Budget } from './budget.ts';
import type { Constants } from './constants.ts';
import type { WrittenCells } from './written-cells.ts';

/** The sheet of one table: row numbers in column A, then its columns, then helper cells. Row 1 is for headings. */
export interface TableSheet {
  readonly table: RecheckTable;
  readonly sheet: OpenSheet;
}

/** Where the value of a cell, or of every row of a column, stands. */
export interface ValuePlace {
  readonly cell: RecheckCell;
  readonly sheet: OpenSheet;
  /** The row of the value, or of the first row's. */
  readonly row: number;
  readonly column: number;
  /** The rows of a column; absent for a line. */
  readonly count?: number;
}

/** What lowering a formula needs of the book around it. */
export interface BookPlan {
  readonly tables: ReadonlyMap<string, TableSheet>;
  readonly places: ReadonlyMap<string, ValuePlace>;
  /** Helper cells of lines, a line of the sheet each: column A is for labels, B the value, then its own helpers. */
  readonly work: OpenSheet;
  readonly constants: Constants;
  readonly texts: TextCodes;
  readonly values: EngineValues;
  readonly labels: GridLabel[];
  readonly budget: Budget;
  readonly searches: Searches;
  readonly written: WrittenCells;
}

/** What the searches of a book share, by the id of the column. */
export interface Searches {
  /** The sheet of what is written for them. */
  readonly sheet: OpenSheet;
  readonly orders: Map<string, LoweredOrder | 'none'>;
  readonly rises: Map<string, string>;
  readonly picks: Map<string, string>;
}

/** The first row of values on a table's sheet. */
export const FIRST_ROW = 1;
/** The column of a value on the work sheet and the sheet of lines. */
export const VALUE_COLUMN = 1;
/** The formula of a value there is none of. */
export const REFUSED = 'NA()';

/** The place of a cell or column; throws on a reference the program does not contain. */
export function placeOf(plan: BookPlan, id: string): ValuePlace {
  const place = plan.places.get(id);
  if (!place) throw new Error(`the program refers to ${id} and does not contain it`);
  return place;
}

export function tableOf(plan: BookPlan, id: string): TableSheet {
  const found = plan.tables.get(id);
  if (!found) throw new Error(`the program refers to the table ${id} and does not contain it`);
  return found;
}
