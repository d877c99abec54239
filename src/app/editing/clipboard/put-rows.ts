import {
  type Cell,
  cellOf,
  type Edit,
  type GivenColumn,
  insertTableRows,
  joinEdits,
  replaceTableRows,
  setCells,
  type Table,
} from '../../../document/index.ts';
import { insertionLabel } from '../lines/describe-insertion.ts';

/** Rows for a table, as they were read: by the name of a column a cell for each row. */
interface NewRows {
  readonly length: number;
  readonly cells: Readonly<Record<string, readonly Cell[]>>;
}

/** Where rows go in a table: in place of all that are there, behind them, or over those from a row on (from 0). */
export type Where =
  | { readonly kind: 'replace' }
  | { readonly kind: 'behind' }
  | { readonly kind: 'from'; readonly row: number };

const verbs = { replace: 'take', behind: 'add', from: 'paste' } as const;

/**
 * The edit that puts rows into a table of a sheet, and says in its label how many, how many of them are new, and
 * `account`.
 */
export function putRows(sheet: string, table: Table, rows: NewRows, where: Where, account: string): Edit {
  const at = { sheet, table: table.id };
  const before = table.length ?? 0;
  const verb = verbs[where.kind];
  const label = (fresh = 0, kept = 0) => insertionLabel(verb, rows.length, { fresh, kept, account });
  if (where.kind === 'replace') return { ...replaceTableRows(at, table, rows), label: label() };
  if (where.kind === 'behind') return { ...insertTableRows(at, table, before, rows), label: label() };
  const { row } = where;
  const grown = Math.max(0, row + rows.length - before);
  const growth = grown > 0 ? [insertTableRows(at, table, before, { length: grown, cells: {} })] : [];
  const filled = table.columns.flatMap((column) => {
    const cells = Object.hasOwn(rows.cells, column.name) ? rows.cells[column.name] : undefined;
    return cells ? [setCells({ ...at, column: column.id }, row, cells)] : [];
  });
  return joinEdits(label(grown, othersFilled(table, rows, row).length), [...growth, ...filled]);
}

/** The columns that rows from a row on have nothing for, and that hold something there. */
function othersFilled(table: Table, { length, cells }: NewRows, row: number): readonly GivenColumn[] {
  const there = Math.min(length, (table.length ?? 0) - row);
  return table.columns
    .filter((column) => column.kind === 'given')
    .filter((column) => !Object.hasOwn(cells, column.name))
    .filter((column) =>
      Array.from({ length: Math.max(0, there) }).some((_, down) => cellOf(column, row + down) !== null),
    );
}
