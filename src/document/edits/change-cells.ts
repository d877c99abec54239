import * as z from 'zod/mini';
import { fail, type Outcome, problem } from '../../diagnostics/index.ts';
import { cellsBetween, overwriteCells, spliceCells } from '../cells.ts';
import { type Path, pathText } from '../json/path.ts';
import { areSound, countOfIds, rowIdsOf, spliceIds } from '../row-ids.ts';
import { type Book, bookSchema } from '../schema/book.ts';
import {
  type Cell,
  CHUNK_CELLS,
  type Column,
  cellSchema,
  type GivenColumn,
  isSurelyCell,
  TABLE_ROW_LIMIT,
} from '../schema/columns.ts';
import type { RowIds, Table } from '../schema/parts.ts';
import { schemaProblems } from '../schema/problems.ts';
import type { Patch } from './patch.ts';
import { type Change, changeAt } from './places.ts';
import type { Step } from './step.ts';

const NOWHERE = { from: 0, to: 0 };

type Splice = Extract<Patch, { kind: 'splice' }>;

const cellsSchema = z.array(cellSchema);

/** Applies a `cells` patch: cells of a given column are overwritten, the column stays as long as it is. */
export function overwrite(book: Book, patch: Extract<Patch, { kind: 'cells' }>): Outcome<Step> {
  const { at, from, values } = patch;
  const to = from + values.length;
  let old: readonly Cell[] = [];
  const changed = changeAt(book, bookSchema, at, at.length, (target) => {
    if (at[4] !== 'columns' || at.length !== 6 || (target as Column).kind !== 'given') {
      return unfit(at, 'a given column');
    }
    const column = target as GivenColumn;
    const length = lengthOf(column);
    if (!isWithin(from, to, length)) return outside(at, from, to, length);
    const refused = cellsRefused(values, at);
    if (refused !== undefined) return refused;
    old = cellsBetween(column.chunks, from, to);
    return { ok: true, value: { ...column, chunks: overwriteCells(column.chunks, from, values) } };
  });
  if (!changed.ok) return changed;
  return {
    ok: true,
    value: { book: changed.value as Book, inverse: { kind: 'cells', at, from, values: old } },
  };
}

/** Applies a `splice` patch: rows of a table are taken out and put in, in all its given columns at once. */
export function spliceRows(book: Book, patch: Splice): Outcome<Step> {
  const { at, from, remove, insert, cells } = patch;
  const old: Record<string, readonly Cell[]> = {};
  let back: RowIds | null = null;
  const changed = changeAt(book, bookSchema, at, at.length, (target) => {
    const table = target as Table;
    if (at[2] !== 'parts' || at.length !== 4 || table.kind !== 'table' || table.length === undefined) {
      return unfit(at, 'a table with rows of its own');
    }
    const refused = rowsRefused(table, table.length, patch);
    if (refused !== undefined) return refused;
    const columns = table.columns.map((column) => {
      if (column.kind !== 'given') return column;
      old[column.id] = cellsBetween(column.chunks, from, from + remove);
      const given = Object.hasOwn(cells, column.id) ? cells[column.id] : undefined;
      const values = given ?? new Array<Cell>(insert).fill(null);
      return { ...column, chunks: spliceCells(column.chunks, from, remove, values) };
    });
    const { ids: before, ...others } = table;
    back = before ?? null;
    const ids = patch.back === undefined ? idsAfter(table, patch) : patch.back;
    const length = table.length - remove + insert;
    if (ids && (countOfIds(ids) !== length || !areSound(ids)))
      return unfit([...at, 'ids'], 'one for each row');
    return { ok: true, value: { ...others, length, ...(ids && { ids }), columns } };
  });
  if (!changed.ok) return changed;
  const inverse: Patch = { kind: 'splice', at, from, remove: insert, insert: remove, cells: old, back };
  return { ok: true, value: { book: changed.value as Book, inverse } };
}

/** The identities of the rows after a splice; rows that say none do so while they are only added at the end. */
function idsAfter(table: Table, { from, remove, insert, ids }: Splice): RowIds | undefined {
  const { length = 0 } = table;
  if (!table.ids && !ids && remove === 0 && from === length) return undefined;
  return spliceIds(rowIdsOf(table), from, remove, insert, ids);
}

function rowsRefused(
  table: Table,
  length: number,
  { at, from, remove, insert, cells }: Splice,
): Change | undefined {
  if (!isWithin(from, from + remove, length)) return outside(at, from, from + remove, length);
  const path = pathText(at);
  if (!Number.isInteger(insert) || insert < 0 || length - remove + insert > TABLE_ROW_LIMIT) {
    const facts = { path, length: length - remove + insert, limit: TABLE_ROW_LIMIT };
    return fail(problem('edit-rows-too-many', NOWHERE, facts));
  }
  for (const [id, values] of Object.entries(cells)) {
    const column = table.columns.find((one) => one.id === id);
    if (column?.kind !== 'given') return unfit([...at, 'columns', id], 'a given column');
    if (values.length !== insert) {
      const facts = { path, column: column.name, cells: values.length, rows: insert };
      return fail(problem('edit-rows-uneven', NOWHERE, facts));
    }
    const refused = cellsRefused(values, [...at, 'columns', id]);
    if (refused !== undefined) return refused;
  }
  return undefined;
}

function cellsRefused(values: readonly Cell[], at: Path): Change | undefined {
  if (values.every(isSurelyCell)) return undefined;
  const checked = z.safeParse(cellsSchema, values);
  if (checked.success) return undefined;
  return { ok: false, problems: schemaProblems(checked.error, cellsSchema, values, at) };
}

function lengthOf(column: GivenColumn): number {
  const last = column.chunks[column.chunks.length - 1];
  return last === undefined ? 0 : (column.chunks.length - 1) * CHUNK_CELLS + last.length;
}

function isWithin(from: number, to: number, length: number): boolean {
  return Number.isInteger(from) && Number.isInteger(to) && from >= 0 && from <= to && to <= length;
}

function unfit(at: Path, expected: string): Outcome<never> {
  return fail(problem('edit-place-unfit', NOWHERE, { path: pathText(at), expected }));
}

function outside(at: Path, from: number, to: number, length: number): Outcome<never> {
  return fail(problem('edit-rows-outside', NOWHERE, { path: pathText(at), from, to, length }));
}
