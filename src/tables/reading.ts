import type { Outcome, Problem } from '../diagnostics/index.ts';
import type { Account } from './account.ts';
import type { TableCell } from './column.ts';
import type { Decimal } from './decimals.ts';
import type { Delimiter } from './records.ts';

/** What a table makes of a cell of one of its columns: an error, a warning, or nothing. */
export type CellCheck = (column: string, cell: TableCell) => Problem | undefined;

/** What a person says of rows and cells that can be read two ways; where nothing is said they are asked for. */
export interface Consents {
  /** Rows that say total or all, or have no words and repeat the sum of those above. */
  readonly totals?: 'out' | 'in';
  /** Rows that are called like items, and whose numbers are all sums of those above. */
  readonly sums?: 'out' | 'in';
  /** Rows of one cell of words among the others, and rows above the headers (these can only be left out). */
  readonly notes?: 'out' | 'in';
  /** Rows of numbers alone where the others have words. */
  readonly unnamed?: 'out' | 'in';
  /** Blank rows among rows of numbers that go over others, row by row: they stay, or what follows moves up. */
  readonly blankRows?: 'out' | 'in';
  /** What dashes and words for none in columns of numbers are. */
  readonly nil?: 'blank' | 'zero';
  /** What parentheses around a number are: a minus, or nothing that changes it. */
  readonly parentheses?: 'minus' | 'plain';
  /** `blank`: rows with too few cells end where their last cells are blank. */
  readonly short?: 'blank';
  /** `plain`: no number of the text has a sign between thousands, so two cells that look like one are two. */
  readonly thousands?: 'plain';
  /** Whether a text with no rows under its headers is meant so. */
  readonly noRows?: boolean;
}

/** What may be said of the rows of a text beforehand; what is not said is found out, or asked for by a refusal. */
export interface ReadOptions extends Consents {
  readonly decimal?: Decimal;
  /** Whether the rows go over others that stand beside what other columns hold. */
  readonly inPlace?: boolean;
  /** What the table makes of a cell: nothing, or what is wrong with it or remarkable. */
  readonly check?: CellCheck;
  /** The most rows, 1,000,000 if not said. */
  readonly rowLimit?: number;
}

/**
 * A table as read. `cells` has, by column name, one cell for each row, of the columns the text has; the others stay
 * blank. `units` are the units stated for them. `problems` point out cells and rows that are not as they should be
 * (errors), and what was left out or is remarkable (warnings); the rows are there all the same.
 */
export interface ReadTable {
  readonly length: number;
  readonly cells: Readonly<Record<string, readonly TableCell[]>>;
  readonly units: Readonly<Record<string, string>>;
  readonly delimiter: Delimiter;
  readonly decimal: Decimal;
  readonly problems: readonly Problem[];
}

/**
 * A table as read, or why it cannot be; and in both cases what became of each cell of the text. There is no account
 * only where a text has no cells because it cannot be parted into rows.
 */
export type TableReading = Outcome<ReadTable> & { readonly account: Account | undefined };
