import {
  cellInWords,
  cellOf,
  entryInWords,
  type GivenColumn,
  rowCalled,
  statedInRows,
  statedInWords,
  type Table,
} from '../../../document/index.ts';
import { followItems, nameColumn } from './follow-items.ts';
import { cellsFor, folded, type NewRows } from './new-rows.ts';
import { rememberLast } from './remember-last.ts';
import { isSameCell } from './same-cell.ts';
import { firstRowOf, type Where } from './where.ts';

/** What becomes of the cells of rows that are gone over, in columns the text has nothing for: `follow` goes with their items. */
export type Others = 'stay' | 'empty' | 'follow';

/** What becomes of them where nothing is said: over rows they stay, and rows that are replaced take theirs along. */
export function othersOf({ kind }: Where, said?: Others): Others {
  return said ?? (kind === 'from' ? 'stay' : 'empty');
}

/** What becomes of what a person entered in the rows of a table when others are put into it; all of it in words. */
export interface Becomes {
  /** Stated values that are gone: `M of deck slab 4700 ST (weighed at gate)`. */
  readonly deleted: readonly string[];
  /** Stated values whose reasons were given for other figures, or another item. */
  readonly open: readonly string[];
  /** Entries that the new rows have nothing in the place of. */
  readonly blanked: readonly string[];
  /** The items of a longer list that stay below; none where no item is named. */
  readonly below: readonly string[];
  /** Those of them that stand among the new rows as well. */
  readonly twice: readonly string[];
}

/** What becomes of what rows held that others are put in the place of. */
export const whatBecomes = rememberLast(findWhatBecomes);

function findWhatBecomes(table: Table, rows: NewRows, where: Where, others: Others): Becomes {
  if (where.kind === 'behind') return { deleted: [], open: [], blanked: [], below: [], twice: [] };
  const row = firstRowOf(where);
  const length = table.length ?? 0;
  const end = where.kind === 'from' ? Math.min(row + rows.length, length) : length;
  const sources = sourcesOf(table, rows, where, others);
  const placeOf = new Map(sources.flatMap((source, down) => (source === undefined ? [] : [[source, down]])));
  const stated = statedInRows(table).filter(({ column }) => !cellsFor(column, rows));
  const isGone = (at: number): boolean => at >= row && at < end && !placeOf.has(at);
  const below = rowsBelow(table, rows, where, others);
  const name = nameColumn(table, rows);
  const now = new Set(((name && cellsFor(name, rows)) ?? []).map(folded));
  const isNew = (at: number): boolean => name !== undefined && now.has(folded(cellOf(name, at)));
  return {
    deleted: stated.filter((one) => isGone(one.row)).map((one) => statedInWords(table, one)),
    open: stated.flatMap((one) => {
      const down = placeOf.get(one.row);
      if (down === undefined || one.statement.reason.trim() === '') return [];
      return givenFor(table, rows, one.row, down) === undefined ? [] : [statedInWords(table, one)];
    }),
    blanked: where.kind === 'from' ? blankedEntries(table, rows, where, others) : [],
    below: below.map((at) => rowCalled(table, at)),
    twice: below.filter(isNew).map((at) => rowCalled(table, at)),
  };
}

/** For each new row the row, from 0, whose holdings stand in it from now on, in columns that the rows have nothing for. */
export function sourcesOf(
  table: Table,
  rows: NewRows,
  where: Where,
  others: Others,
): readonly (number | undefined)[] {
  const row = firstRowOf(where);
  const none = Array.from({ length: rows.length }, () => undefined);
  if (where.kind === 'behind' || others === 'empty') return none;
  if (others === 'follow') return followItems(table, rows, where)?.from ?? none;
  if (where.kind === 'replace') return none;
  return none.map((_, down) => (row + down < (table.length ?? 0) ? row + down : undefined));
}

/** The rows of a longer list, from 0, that stay below one that is put over it from its first row on. */
function rowsBelow(table: Table, rows: NewRows, where: Where, others: Others): readonly number[] {
  if (where.kind !== 'from' || where.row > 0 || !nameColumn(table, rows)) return [];
  const moved = new Set(movedUp(table, rows, where, others));
  const count = Math.max(0, (table.length ?? 0) - rows.length);
  return Array.from({ length: count }, (_, at) => rows.length + at).filter((at) => !moved.has(at));
}

/** The rows, from 0, below those gone over whose items stand among the new rows: they do not stay there as well. */
export function movedUp(table: Table, rows: NewRows, where: Where, others: Others): readonly number[] {
  if (where.kind !== 'from' || others !== 'follow') return [];
  const end = where.row + rows.length;
  return sourcesOf(table, rows, where, others)
    .flatMap((source) => (source !== undefined && source >= end ? [source] : []))
    .toSorted((a, b) => a - b);
}

/**
 * What the reasons of values stated in row `from` were given for, where new row `down` is something else: another item,
 * or the same with another figure. Undefined where it is the same.
 */
export function givenFor(table: Table, rows: NewRows, from: number, down: number): string | undefined {
  const before = rowCalled(table, from);
  if (isRenamed(table, rows, from, down)) return before;
  for (const column of table.columns) {
    const cells = column.kind === 'given' ? cellsFor(column, rows) : undefined;
    if (column.kind !== 'given' || !cells) continue;
    const there = cellOf(column, from);
    if (isSameCell(column, there, cells[down] ?? null)) continue;
    return `${before} with ${column.label?.trim() || column.name} ${cellInWords(column, there)}`;
  }
  return undefined;
}

/** Whether words that stand in row `from` are others in new row `down`. */
export function isRenamed(table: Table, rows: NewRows, from: number, down: number): boolean {
  return table.columns.some((column) => {
    const cells = isWords(column) ? cellsFor(column, rows) : undefined;
    if (!isWords(column) || !cells) return false;
    const there = cellOf(column, from);
    return there !== null && folded(there) !== folded(cells[down] ?? '');
  });
}

const isWords = (column: Table['columns'][number]): column is GivenColumn =>
  column.kind === 'given' && column.type === 'text';

/** Entries of rows that stay the same item, in whose place the new rows have nothing. */
function blankedEntries(
  table: Table,
  rows: NewRows,
  where: Where & { readonly kind: 'from' },
  others: Others,
): readonly string[] {
  const sources = sourcesOf(table, rows, where, others === 'follow' ? 'follow' : 'stay');
  return table.columns.flatMap((column) => {
    const cells = column.kind === 'given' ? cellsFor(column, rows) : undefined;
    if (column.kind !== 'given' || !cells) return [];
    return sources.flatMap((source, down) => {
      if (source === undefined || cells[down] !== null) return [];
      const there = cellOf(column, source);
      const isOther = column.type !== 'text' && isRenamed(table, rows, source, down);
      return there === null || isOther ? [] : [entryInWords(table, column, source, there)];
    });
  });
}
