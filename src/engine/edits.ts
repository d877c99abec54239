import type { Problem } from '../diagnostics/index.ts';
import type { Typed } from '../language/index.ts';
import { referencesWithReach } from './order/references.ts';
import type { Recalculation } from './recalculation.ts';
import type { BufferPool } from './store/buffer-pool.ts';
import type { CellStore } from './store/cell-store.ts';
import {
  type ColumnCell,
  type Content,
  NO_FAILED_ROWS,
  newFormula,
  type ScalarCell,
  type TableCell,
  type ValueKind,
  WHOLE,
} from './store/cells.ts';
import {
  ALL_ROWS,
  adopt,
  difference,
  empty,
  markDirty,
  noRows,
  type RowWindow,
  reshape,
  resize,
  write,
} from './store/column.ts';
import type { Link, Links } from './store/links.ts';
import type { TextPool } from './store/text-pool.ts';

/** A given value: an SI number, true or false, blank, or an entry that could not be read. */
export type Given = number | boolean | { readonly missing: true } | { readonly failed: Problem };

/** What the values of a given column are. NaN is blank, or wrong where `failed` has the row (from 0). */
export interface ColumnInfo {
  readonly holds?: ValueKind;
  readonly failed?: ReadonlyMap<number, Problem>;
}

/** Where a formula stands and how it is written. */
export interface Place {
  /** The table as `sheet.table`, if the formula is a column's. */
  readonly table?: string;
  /** The text the spans of the typed tree point into. */
  readonly text: string;
}

/** The edits an engine takes. They show after the next recalculation. */
export interface CellEdits {
  readonly setInput: (id: string, value: Given) => void;
  readonly setInputText: (id: string, text: string) => void;
  /** Sets how many rows a table has whose rows no series makes. Columns keep the rows that remain; new rows are blank. */
  readonly setTableLength: (table: string, length: number) => void;
  /** Sets all rows of a given column, as many as the table has. The values are copied. */
  readonly setColumn: (id: string, table: string, values: Float64Array, info?: ColumnInfo) => void;
  /** Sets the rows of a given column from row `from` (counted from 0) on; `info` tells of these rows. */
  readonly patchColumn: (id: string, from: number, values: Float64Array, info?: ColumnInfo) => void;
  /** Sets a formula that has been checked; a SERIES makes the rows of its table. */
  readonly setFormula: (id: string, typed: Typed, place: Place) => void;
  /** Sets a cell or column that cannot be computed: its formula has this problem. */
  readonly setFailed: (id: string, problem: Problem, place?: { readonly table?: string }) => void;
  /** Takes a cell or column away. What refers to it fails until it is set again. */
  readonly remove: (id: string) => void;
}

/** The edits over the cells of an engine. */
export function createEdits(
  store: CellStore,
  links: Links,
  texts: TextPool,
  buffers: BufferPool,
  { order, mark }: Recalculation,
): CellEdits {
  const touch = (cell: ScalarCell | ColumnCell): void => {
    if (cell.shape === 'column') reshape(cell);
    mark(cell);
  };

  const relink = (cell: ScalarCell | ColumnCell | TableCell, wanted: readonly Link[]): void => {
    if (cell.sources.length === 0 && wanted.length === 0) return;
    links.link(cell, wanted);
    order.disturb(cell);
  };

  const linksOf = (typed: Typed): readonly Link[] =>
    referencesWithReach(typed).map(({ id, table, reach }) => ({
      source: table === undefined ? store.scalar(id) : store.column(id, table),
      reach,
    }));

  /** Lets the first series column by name make the rows of its table. */
  const setSeries = (table: TableCell, series: readonly ColumnCell[]): void => {
    table.series = [...series].sort((a, b) => (a.id < b.id ? -1 : 1));
    const content = table.series[0]?.content;
    const wanted = content?.kind === 'formula' ? linksOf(content.formula.typed) : [];
    relink(
      table,
      wanted.map(({ source }) => ({ source, reach: WHOLE })),
    );
    for (const column of table.series) touch(column);
    mark(table);
  };

  /** Puts new content into a cell, which then reads what the links say. */
  const replace = (cell: ScalarCell | ColumnCell, content: Content, wanted: readonly Link[] = []): void => {
    cell.content = content;
    touch(cell);
    if (cell.shape === 'scalar') {
      store.scalars.thunks[cell.index] = undefined;
      relink(cell, wanted);
      return;
    }
    const { table } = cell;
    const makesRows = content.kind === 'formula' && content.formula.typed.kind === 'series';
    if (content.kind !== 'given') cell.failedRows = NO_FAILED_ROWS;
    if (wanted.length > 0 || cell.sources.length > 1)
      relink(cell, [{ source: table, reach: WHOLE }, ...(makesRows ? [] : wanted)]);
    const others = table.series.filter((column) => column !== cell);
    if (makesRows) setSeries(table, [...others, cell]);
    else if (others.length < table.series.length) setSeries(table, others);
  };

  const giveScalar = (id: string, value: number, holds: ValueKind, failed?: Problem): void => {
    const cell = store.scalar(id);
    const { content } = cell;
    const { values } = store.scalars;
    const same = content.kind === 'given' && content.holds === holds && content.failed === failed;
    if (same && Object.is(values[cell.index], value)) return;
    values[cell.index] = value;
    if (same) mark(cell);
    else replace(cell, { kind: 'given', holds, ...(failed && { failed }) });
  };

  /** Writes rows of a given column and marks those that differ, or whose problem does. */
  const giveRows = (column: ColumnCell, from: number, values: Float64Array, info: ColumnInfo): void => {
    const { content } = column;
    const holds = info.holds ?? (content.kind === 'given' ? content.holds : 'number');
    const given = cleaned(column.id, values, buffers.take(values.length));
    const fresh = content.kind !== 'given' || content.holds !== holds;
    if (fresh) replace(column, { kind: 'given', holds });
    const to = from + values.length;
    if (column.failedRows.size > 0 || info.failed) {
      const kept = [...column.failedRows].filter(([row]) => row < from || row >= to);
      const added = [...(info.failed ?? [])].map(([row, problem]) => [row + from, problem] as const);
      column.failedRows = new Map([...kept, ...added]);
    }
    const whole = values.length === column.table.givenLength;
    const changed = whole ? swapIn(column, given, buffers) : noRows();
    if (!whole) {
      write(column, from, values.length, given.values, 0, changed);
      buffers.give(given.values);
    }
    if (changed.to <= changed.from) return;
    markDirty(column, changed.from, changed.to);
    mark(column);
  };

  return {
    setInput: (id, value) => {
      if (typeof value === 'boolean') giveScalar(id, value ? 1 : 0, 'truth');
      else if (typeof value === 'object')
        giveScalar(id, Number.NaN, 'number', 'failed' in value ? value.failed : undefined);
      else if (Number.isFinite(value)) giveScalar(id, value + 0, 'number');
      else throw new RangeError(`${id} is given ${value}, which is no number to compute with`);
    },
    setInputText: (id, text) => giveScalar(id, texts.codeOf(text), 'text'),
    setTableLength: (id, length) => {
      const table = store.table(id);
      if (!Number.isInteger(length) || length < 0) throw new RangeError(`${id} cannot have ${length} rows`);
      if (table.givenLength === length) return;
      table.givenLength = length;
      mark(table);
      for (const column of table.columns) {
        if (column.content.kind !== 'given') continue;
        cut(column, length);
        touch(column);
      }
    },
    setColumn: (id, tableId, values, info = {}) => {
      const column = store.column(id, tableId);
      const { givenLength } = column.table;
      if (values.length !== givenLength)
        throw new RangeError(`${id} is given ${values.length} rows, and its table has ${givenLength}`);
      giveRows(column, 0, values, info);
    },
    patchColumn: (id, from, values, info = {}) => {
      const column = store.find(id);
      if (column?.shape !== 'column' || column.content.kind !== 'given')
        throw new Error(`${id} is no given column`);
      if (from < 0 || from + values.length > column.values.length)
        throw new RangeError(`${id} has no rows ${from} to ${from + values.length - 1}`);
      giveRows(column, from, values, info);
    },
    setFormula: (id, typed, { table: tableId, text }) => {
      const table = tableId === undefined ? undefined : store.table(tableId);
      const cell = tableId === undefined ? store.scalar(id) : store.column(id, tableId);
      replace(cell, newFormula(typed, text, table), linksOf(typed));
    },
    setFailed: (id, problem, place) => {
      const cell = place?.table === undefined ? store.scalar(id) : store.column(id, place.table);
      replace(cell, { kind: 'failed', problem });
      blankOut(cell, store);
    },
    remove: (id) => {
      const cell = store.find(id);
      if (!cell) return;
      replace(cell, { kind: 'absent' });
      blankOut(cell, store);
    },
  };
}

/** Gives a given column as many rows; those that remain keep their values and problems. */
function cut(column: ColumnCell, length: number): void {
  resize(column, length);
  if (column.failedRows.size > 0)
    column.failedRows = new Map([...column.failedRows].filter(([row]) => row < length));
}

/** Puts a whole new array in place of a column's, unless all values are the same; the rows that differ. */
function swapIn(
  column: ColumnCell,
  given: { values: Float64Array; gaps: number },
  buffers: BufferPool,
): RowWindow {
  const before = column.values;
  const { first, last } = difference(
    before,
    0,
    given.values,
    0,
    Math.min(before.length, given.values.length),
  );
  const same = first > last && before.length === given.values.length;
  if (!same) adopt(column, given.values, given.gaps);
  buffers.give(same ? given.values : before);
  return before.length === given.values.length ? { from: first, to: last + 1 } : ALL_ROWS;
}

function blankOut(cell: ScalarCell | ColumnCell, { scalars }: CellStore): void {
  if (cell.shape === 'column') empty(cell);
  else scalars.values[cell.index] = Number.NaN;
}

/** Copies values without -0, so that equal values are the same, and counts the blanks. Refuses an infinite number. */
function cleaned(
  id: string,
  values: Float64Array,
  into: Float64Array,
): { readonly values: Float64Array; readonly gaps: number } {
  let odd = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as number;
    into[i] = value + 0;
    // True of NaN and of the infinite.
    if (value - value !== 0) odd += 1;
  }
  if (odd > 0 && values.some((value) => Math.abs(value) === Number.POSITIVE_INFINITY))
    throw new RangeError(`${id} is given an infinite number`);
  return { values: into, gaps: odd };
}
