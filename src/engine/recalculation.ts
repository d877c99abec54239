import { ChangedIds } from './changed-ids.ts';
import type { World } from './compute/context.ts';
import { createDirtySet } from './order/dirty-set.ts';
import { createOrder, type Order } from './order/order.ts';
import { type Cell, type Knot, PAST_ALL_ROWS, ROW_ABOVE, SAME_ROW, TO_END, WHOLE } from './store/cells.ts';
import { ALL_ROWS, clean, empty, type RowWindow, reshape, resize, soil, soilAll } from './store/column.ts';
import type { Links } from './store/links.ts';
import { updateColumn } from './update/column.ts';
import { updateRows } from './update/rows.ts';
import { compute, updateScalar } from './update/scalar.ts';
import { updateTable } from './update/table.ts';

/** Keeps every cell up to date with what it reads. */
export interface Recalculation {
  readonly order: Order;
  /** Marks a cell to be computed at the next run. */
  readonly mark: (cell: Cell) => void;
  /** Computes what is marked and what depends on it, each cell once, sources first; the ids of what changed. */
  readonly run: () => ChangedIds;
}

/** A recalculation over cells that are still to come. */
export function createRecalculation(links: Links, world: () => World): Recalculation {
  const order = createOrder();
  const dirty = createDirtySet();
  // Positions are settled only when a run begins.
  let marked: Cell[] = [];
  let changed: Cell[] = [];

  const reachInto = (reader: Cell, reach: number, source: Cell, moved: RowWindow): void => {
    if (reader.shape !== 'column') return;
    if (source.shape === 'table') reshape(reader);
    else if (reach & WHOLE) soilAll(reader);
    const to = reach & TO_END ? PAST_ALL_ROWS : moved.to;
    if (reach & SAME_ROW) soil(reader, moved.from, to);
    if (reach & ROW_ABOVE) soil(reader, moved.from + 1, to + 1);
  };

  /** Tells the readers of a cell, those outside a circle it may be in, which of its rows have changed. */
  const announce = (cell: Cell, index: number, moved: RowWindow, inside?: Knot): void => {
    if (moved.to <= moved.from) return;
    changed.push(cell);
    const { all } = world();
    const { next, reader, reach } = links;
    for (let edge = links.first[index] ?? -1; edge >= 0; edge = next[edge] as number) {
      const to = reader[edge] as number;
      const far = reach[edge] as number;
      if (inside && all[to]?.knot === inside) continue;
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
        soilAll(maker);
        dirty.add(maker.position);
      }
    }
  };

  const updateKnot = (knot: Knot): void => {
    for (const member of knot.members) dirty.remove(member.position);
    if (knot.kind === 'rows') {
      const windows = updateRows(knot, world());
      for (const [at, member] of knot.members.entries())
        announce(member, member.index, windows[at] as RowWindow, knot);
      return;
    }
    // Tables first: their columns have as many rows.
    for (const member of knot.members) if (member.shape === 'table') spoil(member, world());
    for (const member of knot.members) {
      if (member.shape !== 'table') spoil(member, world());
      announce(member, member.index, ALL_ROWS, knot);
    }
  };

  return {
    order,
    mark: (cell) => marked.push(cell),
    run: () => {
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
      for (let at = dirty.take(); at >= 0; at = dirty.take()) {
        const cell = order.cells[at] as Cell;
        const index = order.indices[at] as number;
        const thunk = scalars.thunks[index];
        // A scalar is computed without a look at its cell, which in a large book would be fetched from memory.
        if (thunk) {
          if (compute(thunk, index, scalars)) announce(cell, index, ALL_ROWS);
        } else if (cell.knot) updateKnot(cell.knot);
        else update(cell);
      }
      return new ChangedIds(changed);
    },
  };
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
