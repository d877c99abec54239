import type { Problem } from '../diagnostics/index.ts';
import { type Account, columnLetters, type TableReading } from '../tables/index.ts';
import { Refused } from './refused.ts';

/** What became of the cells of a table file, as `--json` has it. The counts of cells add up to `cells`. */
export interface PrintedTable {
  readonly file: string;
  /** `null` where the file is no text. */
  readonly encoding: string | null;
  readonly status: 'taken' | 'refused';
  /** The rows of the file under its headers, without those left out. */
  readonly rows: number;
  /** How many of them the table has now: none where the file is refused. */
  readonly rows_taken: number;
  readonly blank_rows: number;
  /** How many rows the table had, all of which are replaced. */
  readonly rows_replaced: number;
  readonly cells: number;
  readonly cells_by_fate: Readonly<Record<string, number>>;
  readonly columns: readonly PrintedTextColumn[];
  readonly decimal?: string;
  readonly delimiter?: string;
  readonly problems: readonly Problem[];
}

/** A column of a table file: its letter, its header, and where it goes. */
interface PrintedTextColumn {
  readonly letter: string;
  readonly header: string;
  /** `null` where it goes nowhere. */
  readonly column: string | null;
  /** The column of the table for whose numbers it has the unit, row by row. */
  readonly unit_of?: string;
  readonly unit: string;
}

/** A table file that is refused, with its account. */
export class RefusedTable extends Refused {
  readonly #tables: Readonly<Record<string, PrintedTable>>;

  constructor(message: string, id: string, printed: PrintedTable) {
    super(message);
    this.#tables = { [id]: printed };
  }

  override printed(): object {
    return { ...super.printed(), results: {}, problems: [], tables: this.#tables };
  }
}

/** The account of a table file whose rows are put in place of as many as `replaced`. */
export function printTable(
  file: string,
  encoding: string | undefined,
  read: TableReading,
  problems: readonly Problem[],
  replaced: number,
): PrintedTable {
  const { account } = read;
  const isRefused = !read.ok || problems.some(({ severity }) => severity === 'error');
  return {
    file,
    encoding: encoding ?? null,
    status: isRefused ? 'refused' : 'taken',
    rows: account?.lines.length ?? 0,
    rows_taken: isRefused ? 0 : (account?.lines.length ?? 0),
    rows_replaced: isRefused ? 0 : replaced,
    blank_rows: account?.blankRows ?? 0,
    cells: account?.cells ?? 0,
    cells_by_fate:
      account === undefined ? {} : isRefused ? heldBack(account.counts, problems) : account.counts,
    columns: (account?.columns ?? []).map(({ position, header, column, unit, unitOf }) => ({
      letter: columnLetters(position),
      header,
      column: column ?? null,
      unit,
      ...(unitOf !== undefined && { unit_of: unitOf }),
    })),
    ...(read.ok && { decimal: read.value.decimal, delimiter: read.value.delimiter }),
    problems,
  };
}

/** The fates of cells of a file that is refused for what is in them: nothing of it is taken, and all but these wait. */
function heldBack(counts: Account['counts'], problems: readonly Problem[]): Account['counts'] {
  const told = problems.filter(({ code }) => code === 'cell-unread').length;
  const more = problems.find(({ code }) => code === 'cells-unread-more')?.data.more;
  const unread = Math.min(counts.marked, told + Number(more ?? 0));
  return {
    ...counts,
    taken: 0,
    marked: 0,
    refused: counts.refused + unread,
    held: counts.held + counts.taken + counts.marked - unread,
  };
}
