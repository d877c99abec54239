import { ChangedIds } from './changed-ids.ts';
import type { World } from './compute/context.ts';
import { createDirtySet } from './order/dirty-set.ts';
import { createOrder, type Order } from './order/order.ts';
import { type Cell, type Cycle, PAST_ALL_ROWS, ROW_ABOVE, SAME_ROW, TO_END, WHOLE } from './store/cells.ts';
import {
  ALL_ROWS,
  clean,
  empty,
  markAllDirty,
  markDirty,
  type RowWindow,
  reshape,
  resize,
} from './store/column.ts';
import type { Links } from './store/links.ts';
import { updateColumn } from './update/column.ts';
import { updateRows } from './update/rows.ts';
import { compute as computeScalar, updateScalar } from './update/scalar.ts';
import { type Allowance, advanceColumn, isLong } from './update/slice.ts';
import { updateTable } from './update/table.ts';

const NONE: ReadonlySet<Cell> = new Set();

/** Keeps every cell up to date with what it reads. */
export interface Recalculation {
  readonly order: Order;
  /** Marks a cell to be computed at the next run. */
  readonly mark: (cell: Cell) => void;
  /**
   * Computes what is marked and what depends on it, each cell once, sources first; the ids of what changed. With an allowance,
   * long work comes last, and what is not done when the time is over stays marked: it is pending.
   */
  readonly run: (allowance?: Allowance) => ChangedIds;
  /** Cells whose value is not computed yet, and all that depends on them. */
  readonly pending: ReadonlySet<Cell>;
}

/** A recalculation over cells that are still to come. */
export function createRecalculation(links: Links, world: () => World): Recalculation {
  const order = createOrder();
  const dirty = createDirtySet();
  // Positions are settled only when a run begins.
  let marked: Cell[] = [];
  let changed: Cell[] = [];
  let pending: ReadonlySet<Cell> = NONE;

  const reachInto = (reader: Cell, reach: number, source: Cell, moved: RowWindow): void => {
    if (reader.shape !== 'column') return;
    if (source.shape === 'table') reshape(reader);
    else if (reach & WHOLE) markAllDirty(reader);
    const to = reach & TO_END ? PAST_ALL_ROWS : moved.to;
    if (reach & SAME_ROW) markDirty(reader, moved.from, to);
    if (reach & ROW_ABOVE) markDirty(reader, moved.from + 1, to + 1);
  };

  /** Tells the readers of a cell, those outside a circle it may be in, which of its rows have changed. */
  const announce = (cell: Cell, index: number, moved: RowWindow, inside?: Cycle): void => {
    if (moved.to <= moved.from) return;
    changed.push(cell);
    const { all } = world();
    const { next, reader, reach } = links;
    for (let edge = links.first[index] ?? -1; edge >= 0; edge = next[edge] as number) {
      const to = reader[edge] as number;
      const far = reach[edge] as number;
      if (inside && all[to]?.cycle === inside) continue;
      if (far !== 0) reachInto(all[to] as Cell, far, cell, moved);
      dirty.add(order.positions[to] as number);
    }
  };

  const update = (cell: Cell): void => {
    switch (cell.shape) {
      case 'scalar':
        if (updateScalar(cell, world())) announce(cell, cell.index, ALL_ROWS);
        return;
      case 'column':
        announce(cell, cell.index, updateColumn(cell, world()));
        return;
      case 'table': {
        const change = updateTable(cell, world());
        if (change === 'rows') announce(cell, cell.index, ALL_ROWS);
        const [maker] = cell.series;
        if (change !== 'series' || !maker) return;
        markAllDirty(maker);
        dirty.add(maker.position);
      }
    }
  };

  /** Whether the circle is computed; with an allowance rows of it may be left. */
  const updateCycle = (cycle: Cycle, allowance?: Allowance): boolean => {
    for (const member of cycle.members) dirty.remove(member.position);
    if (cycle.kind === 'rows') {
      const { windows, done } = updateRows(cycle, world(), allowance);
      for (const [at, member] of cycle.members.entries())
        announce(member, member.index, windows[at] as RowWindow, cycle);
      return done;
    }
    // Tables first: their columns have as many rows.
    for (const member of cycle.members) if (member.shape === 'table') spoil(member, world());
    for (const member of cycle.members) {
      if (member.shape !== 'table') spoil(member, world());
      announce(member, member.index, ALL_ROWS, cycle);
    }
    return true;
  };

  const compute = (cell: Cell): void => {
    const { scalars } = world();
    const thunk = scalars.thunks[cell.index];
    // A scalar is computed without a look at its cell, which in a large book would be fetched from memory.
    if (thunk) {
      if (computeScalar(thunk, cell.index, scalars)) announce(cell, cell.index, ALL_ROWS);
    } else if (cell.cycle) updateCycle(cell.cycle);
    else update(cell);
  };

  const runAll = (): void => {
    const { scalars } = world();
    for (let at = dirty.take(); at >= 0; at = dirty.take()) {
      const cell = order.cells[at] as Cell;
      const index = order.indices[at] as number;
      const thunk = scalars.thunks[index];
      // A scalar is computed without a look at its cell, which in a large book would be fetched from memory.
      if (thunk) {
        if (computeScalar(thunk, index, scalars)) announce(cell, index, ALL_ROWS);
      } else if (cell.cycle) updateCycle(cell.cycle);
      else update(cell);
    }
  };

  /** All that reads these cells, directly or not, and the cells. */
  const reachedFrom = (cells: Iterable<Cell>, into: Set<Cell>): Set<Cell> => {
    const { all } = world();
    const waiting = [...cells];
    for (let cell = waiting.pop(); cell; cell = waiting.pop()) {
      if (into.has(cell)) continue;
      into.add(cell);
      if (cell.cycle) waiting.push(...cell.cycle.members);
      for (let edge = links.first[cell.index] ?? -1; edge >= 0; edge = links.next[edge] as number)
        waiting.push(all[links.reader[edge] as number] as Cell);
    }
    return into;
  };

  const drain = (): void => {
    for (let at = dirty.take(); at >= 0; at = dirty.take()) marked.push(order.cells[at] as Cell);
  };

  /** What is short, and waits for nothing long; how many cells. The long ones, and what waits for them, stay marked. */
  const runShort = (allowance: Allowance): number => {
    const behind = new Set<Cell>();
    let computed = 0;
    for (let at = dirty.take(); at >= 0; at = dirty.take()) {
      const cell = order.cells[at] as Cell;
      if (behind.has(cell) || isLong(cell, world(), allowance)) {
        for (const member of cell.cycle?.members ?? []) dirty.remove(member.position);
        marked.push(cell);
        reachedFrom([cell], behind);
        continue;
      }
      compute(cell);
      computed += 1;
      if ((computed & 7) === 0 && allowance.isOver()) {
        drain();
        break;
      }
    }
    return computed;
  };

  /** All that is marked, the long in slices, until the time is over. */
  const runLong = (allowance: Allowance): void => {
    for (const cell of marked) dirty.add(cell.position);
    marked = [];
    for (let at = dirty.take(); at >= 0; at = dirty.take()) {
      const cell = order.cells[at] as Cell;
      if (!advance(cell, allowance)) marked.push(cell);
      if (marked.length > 0 || allowance.isOver()) {
        drain();
        return;
      }
    }
  };

  /** Whether the cell is computed. */
  const advance = (cell: Cell, allowance: Allowance): boolean => {
    if (cell.cycle) return updateCycle(cell.cycle, allowance);
    if (cell.shape !== 'column' || cell.content.kind !== 'formula' || !isLong(cell, world(), allowance)) {
      compute(cell);
      return true;
    }
    const { changed: rows, done } = advanceColumn(cell, cell.content.formula, world(), allowance);
    announce(cell, cell.index, rows);
    return done;
  };

  /** What has changed for those who read: a value that is pending has none, so that only its coming and going counts. */
  const settle = (): ChangedIds => {
    const before = pending;
    if (marked.length === 0 && before.size === 0) return new ChangedIds(changed);
    pending = new Set([...reachedFrom(marked, new Set())].filter((cell) => !isGiven(cell)));
    const told = new Set(changed.filter((cell) => !pending.has(cell)));
    for (const cell of before) if (!pending.has(cell)) told.add(cell);
    for (const cell of pending) if (!before.has(cell)) told.add(cell);
    return new ChangedIds([...told]);
  };

  return {
    order,
    mark: (cell) => marked.push(cell),
    run: (allowance) => {
      changed = [];
      const { scalars } = world();
      for (const cell of order.repair()) {
        scalars.thunks[cell.index] = undefined;
        if (cell.shape === 'column') reshape(cell);
        marked.push(cell);
      }
      dirty.reserve(order.cells.length);
      for (const cell of marked) dirty.add(cell.position);
      marked = [];
      if (!allowance) runAll();
      else {
        // However short the time, every run gets on.
        const computed = runShort(allowance);
        if (marked.length > 0 && (computed === 0 || !allowance.isOver())) runLong(allowance);
      }
      return settle();
    },
    get pending() {
      return pending;
    },
  };
}

function isGiven(cell: Cell): boolean {
  return cell.shape === 'scalar' && cell.content.kind === 'given';
}

/** Takes the value from a cell that is in a loop. */
function spoil(cell: Cell, world: World): void {
  switch (cell.shape) {
    case 'scalar':
      world.scalars.values[cell.index] = Number.NaN;
      return;
    case 'column':
      resize(cell, cell.table.length);
      empty(cell);
      clean(cell);
      cell.reshaped = false;
      return;
    case 'table':
      cell.failed = true;
      cell.length = 0;
      cell.plan = undefined;
  }
}
