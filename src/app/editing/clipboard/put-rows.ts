import {
  type Edit,
  emptiedColumns,
  insertTableRows,
  joinEdits,
  removeTableRows,
  replaceTableRows,
  rowIdsOf,
  setCells,
  type Table,
  type TablePlace,
} from '../../../document/index.ts';
import { insertionLabel } from '../lines/describe-insertion.ts';
import { cellsFor, type NewRows } from './new-rows.ts';
import { filledFrom, headingOf, heldFrom, othersFilled, reasonsToConfirm } from './other-columns.ts';
import { movedUp, type Others, othersOf, sourcesOf, whatBecomes } from './what-becomes.ts';
import type { Where } from './where.ts';

const verbs = { replace: 'take', behind: 'add', from: 'paste' } as const;

/**
 * The edit that puts rows into a table of a sheet, and says in its label how many, how many of them are new, which columns
 * hold what they held because the text has nothing for them, what is deleted, open or blank by it, and `account`.
 */
export function putRows(
  sheet: string,
  table: Table,
  rows: NewRows,
  where: Where,
  account: string,
  others: Others = othersOf(where),
): Edit {
  const at = { sheet, table: table.id };
  const before = table.length ?? 0;
  const becomes = whatBecomes(table, rows, where, others);
  const sources = sourcesOf(table, rows, where, others);
  const isFollowed = others === 'follow' && sources.some((source) => source !== undefined);
  const label = (more: { readonly [which: string]: readonly string[] }, fresh = 0): string =>
    insertionLabel(verbs[where.kind], rows.length, { ...becomes, ...more, fresh, account });
  if (where.kind === 'behind') return { ...insertTableRows(at, table, before, rows), label: label({}) };
  if (where.kind === 'replace') {
    const { next } = rowIdsOf(table);
    const following = isFollowed ? filledFrom(table, rows, 0) : [];
    const emptied = isFollowed ? [] : emptiedColumns(table, rows);
    const columns = { followed: following.map(headingOf), emptied: emptied.map(headingOf) };
    return joinEdits(label(columns), [
      replaceTableRows(at, table, rows),
      ...following.map((column) => heldFrom(at, table, rows, column, 0, sources, (down) => next + down)),
    ]);
  }
  const { row } = where;
  const grown = Math.max(0, row + rows.length - before);
  const growth = grown > 0 ? [insertTableRows(at, table, before, { length: grown, cells: {} })] : [];
  const filled = table.columns.flatMap((column) => {
    const cells = cellsFor(column, rows);
    return cells ? [setCells({ ...at, column: column.id }, row, cells)] : [];
  });
  const kept = othersFilled(table, rows, row);
  const held = others === 'follow' ? filledFrom(table, rows, row) : kept;
  const going =
    others === 'stay'
      ? reasonsToConfirm(at, table, rows, row)
      : held.map((column) =>
          heldFrom(
            at,
            table,
            rows,
            column,
            row,
            sources.slice(0, others === 'empty' ? before - row : undefined),
          ),
        );
  const word = others === 'stay' ? 'kept' : isFollowed ? 'followed' : 'emptied';
  return joinEdits(label({ [word]: held.map(headingOf) }, grown), [
    ...growth,
    ...filled,
    ...going,
    ...removals(at, movedUp(table, rows, where, others)),
  ]);
}

/** The edits that take rows out of a table, the last first, those side by side together. */
function removals(at: TablePlace, rows: readonly number[]): readonly Edit[] {
  const runs: { from: number; count: number }[] = [];
  for (const row of rows) {
    const last = runs.at(-1);
    if (last && last.from + last.count === row) last.count += 1;
    else runs.push({ from: row, count: 1 });
  }
  return runs.toReversed().map(({ from, count }) => removeTableRows(at, from, count));
}
