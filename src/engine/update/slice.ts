import type { World } from '../compute/context.ts';
import { effortOf } from '../compute/effort.ts';
import { runInto } from '../compute/stream.ts';
import { type Cell, type ColumnCell, type Formula, PAST_ALL_ROWS } from '../store/cells.ts';
import { ALL_ROWS, clean, markDirty, noRows, type RowWindow, resize, write } from '../store/column.ts';
import { begin } from './column.ts';

/** The time a caller gives a recalculation. */
export interface Allowance {
  /** Whether it is over. */
  readonly isOver: () => boolean;
  /** Element operations beyond which work is long: it comes last and is done in slices. Some milliseconds, if absent. */
  readonly long?: number;
}

const LONG = 3_000_000;
/** So many times is the clock looked at while work that is just long is done. */
const LOOKS = 10;
/** What a row of columns that depend on one another costs beside its aggregates: a closure for each part. */
const STEP = 20;

/** Whether what is marked of a cell is so much work that others come first and it is done in slices. */
export function isLong(cell: Cell, world: World, { long = LONG }: Allowance): boolean {
  if (cell.cycle?.kind === 'rows') {
    const { members, table } = cell.cycle;
    const from = Math.min(...members.map((member) => member.dirtyFrom));
    return (table.length - from) * rowEffort(members, world) > long;
  }
  if (cell.cycle || cell.shape === 'table' || cell.content.kind !== 'formula') return false;
  const { formula } = cell.content;
  if (cell.shape === 'scalar') return effortOf(formula, world).ofValue() > long;
  return markedRows(cell) * effortOf(formula, world).ofRow() > long;
}

function markedRows({ table, dirtyFrom, dirtyTo, reshaped }: ColumnCell): number {
  return reshaped ? table.length : Math.max(0, Math.min(dirtyTo, table.length) - dirtyFrom);
}

function rowEffort(members: readonly ColumnCell[], world: World): number {
  return members.reduce(
    (sum, { content }) =>
      content.kind === 'formula' ? sum + STEP + effortOf(content.formula, world).ofRow() : sum,
    0,
  );
}

/** How many rows of columns that depend on one another are stepped between two looks at the clock. */
export function stepsAtOnce(
  members: readonly ColumnCell[],
  world: World,
  { long = LONG }: Allowance,
): number {
  return Math.max(1, Math.floor(long / LOOKS / rowEffort(members, world)));
}

/** The rows that may have changed, and whether all that was marked is computed. */
export interface Advance {
  readonly changed: RowWindow;
  readonly done: boolean;
}

/** Computes marked rows of a column until they are done or the time is over; what is left stays marked. */
export function advanceColumn(
  column: ColumnCell,
  formula: Formula,
  world: World,
  allowance: Allowance,
): Advance {
  const { reshaped, table } = column;
  const { length } = table;
  const anew = resize(column, length) || reshaped;
  const [from, to] =
    anew && !column.resumable ? [0, length] : [column.dirtyFrom, Math.min(column.dirtyTo, length)];
  // Work that nothing has touched meanwhile goes on with what all rows share.
  const stream = column.resumable && formula.sweep ? formula.sweep.stream : begin(formula, world);
  const count = Math.max(1, Math.floor((allowance.long ?? LONG) / LOOKS / effortOf(formula, world).ofRow()));
  const fresh = new Float64Array(Math.max(0, Math.min(count, to - from)));
  const changed = noRows();
  let row = from;
  clean(column);
  column.reshaped = false;
  while (row < to) {
    const next = Math.min(row + count, to);
    runInto(stream, row, next, fresh, 0);
    write(column, row, next - row, fresh, 0, changed);
    row = next;
    if (row < to && allowance.isOver()) break;
  }
  const done = row >= to;
  if (!done) {
    markDirty(column, row, to === length ? PAST_ALL_ROWS : to);
    column.resumable = true;
  }
  return { changed: anew ? ALL_ROWS : changed, done };
}
