import {
  type Edit,
  insertTableRows,
  joinEdits,
  replaceTableRows,
  setCells,
  type Table,
} from '../../../document/index.ts';
import { insertionLabel } from '../lines/describe-insertion.ts';
import { followItems, nameColumn } from './follow-items.ts';
import { cellsFor, type NewRows } from './new-rows.ts';
import {
  filledFrom,
  headingOf,
  heldFrom,
  type OtherColumn,
  othersFilled,
  reasonsToConfirm,
} from './other-columns.ts';

/** Where rows go in a table: in place of all that are there, behind them, or over those from a row on (from 0). */
export type Where =
  | { readonly kind: 'replace' }
  | { readonly kind: 'behind' }
  | { readonly kind: 'from'; readonly row: number };

/** What becomes of the cells of rows that are gone over, in columns the text has nothing for: `follow` goes with their items. */
export type Others = 'stay' | 'empty' | 'follow';

const verbs = { replace: 'take', behind: 'add', from: 'paste' } as const;

/**
 * The edit that puts rows into a table of a sheet, and says in its label how many, how many of them are new, which columns
 * hold what they held because the text has nothing for them, and `account`.
 */
export function putRows(
  sheet: string,
  table: Table,
  rows: NewRows,
  where: Where,
  account: string,
  others: Others = 'stay',
): Edit {
  const at = { sheet, table: table.id };
  const before = table.length ?? 0;
  const verb = verbs[where.kind];
  const label = (
    more: {
      readonly fresh?: number;
      readonly kept?: readonly OtherColumn[];
      readonly followed?: readonly OtherColumn[];
      readonly emptied?: readonly OtherColumn[];
      readonly below?: number;
    } = {},
  ) => {
    const { kept = [], followed = [], emptied = [] } = more;
    const named = {
      kept: kept.map(headingOf),
      followed: followed.map(headingOf),
      emptied: emptied.map(headingOf),
    };
    return insertionLabel(verb, rows.length, { ...more, ...named, account });
  };
  if (where.kind === 'replace') return { ...replaceTableRows(at, table, rows), label: label() };
  if (where.kind === 'behind') return { ...insertTableRows(at, table, before, rows), label: label() };
  const { row } = where;
  const grown = Math.max(0, row + rows.length - before);
  const growth = grown > 0 ? [insertTableRows(at, table, before, { length: grown, cells: {} })] : [];
  const filled = table.columns.flatMap((column) => {
    const cells = cellsFor(column, rows);
    return cells ? [setCells({ ...at, column: column.id }, row, cells)] : [];
  });
  const kept = othersFilled(table, rows, row);
  const told = { fresh: grown, below: rowsBelow(table, rows, row) };
  if (others === 'follow') {
    const from = followItems(table, rows, row)?.from ?? [];
    const following = filledFrom(table, rows, row);
    const followed = following.map((column) => heldFrom(at, table, column, row, from));
    const isAny = from.some((place) => place !== undefined);
    const words = label(isAny ? { ...told, followed: following } : { ...told, emptied: following });
    return joinEdits(words, [...growth, ...filled, ...followed]);
  }
  const blank = Array.from({ length: rows.length - grown }, () => undefined);
  const changed =
    others === 'empty'
      ? kept.map((column) => heldFrom(at, table, column, row, blank))
      : reasonsToConfirm(at, table, rows, row);
  return joinEdits(label({ ...told, ...(others === 'empty' ? { emptied: kept } : { kept }) }), [
    ...growth,
    ...filled,
    ...changed,
  ]);
}

/** How many rows of a list stay below a shorter one that is put over it from its first row on; none where no item is named. */
export function rowsBelow(table: Table, rows: NewRows, row: number): number {
  return row === 0 && nameColumn(table, rows) ? Math.max(0, (table.length ?? 0) - rows.length) : 0;
}
