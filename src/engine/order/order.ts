import type { Cell } from '../store/cells.ts';
import { cycleOf } from './cycles.ts';
import { componentsOf } from './strong-components.ts';

/**
 * The order of evaluation: sources before readers, the members of a circle side by side. It is kept through edits:
 * only the stretch between a cell and a source that now stands after it is sorted again.
 */
export interface Order {
  /** The cells by position. */
  readonly cells: readonly Cell[];
  /** The positions by the index of the cell, and the other way round; the arrays are replaced when they grow. */
  readonly positions: Int32Array;
  readonly indices: Int32Array;
  /** Puts a new cell at the end. */
  readonly append: (cell: Cell) => void;
  /** Says that the sources of a cell are others than before. */
  readonly disturb: (cell: Cell) => void;
  /** Makes the order right again; the cells that have entered or left a circle, or whose circle may have changed. */
  readonly repair: () => readonly Cell[];
}

const NONE: readonly Cell[] = [];

/** An empty order. */
export function createOrder(): Order {
  const cells: Cell[] = [];
  const disturbed = new Set<Cell>();

  /** The stretch in which every wrong edge and every circle that may have changed lies. */
  const stretch = (): readonly [from: number, to: number] => {
    let from = cells.length;
    let to = -1;
    const include = (position: number): void => {
      from = Math.min(from, position);
      to = Math.max(to, position);
    };
    for (const cell of disturbed) {
      if (cell.cycle) include(cell.position);
      for (const { source } of cell.sources) {
        if (source.position < cell.position) continue;
        include(source.position);
        include(cell.position);
      }
    }
    // A circle is sorted as a whole.
    for (const member of cells[from]?.cycle?.members ?? []) from = Math.min(from, member.position);
    for (const member of cells[to]?.cycle?.members ?? []) to = Math.max(to, member.position);
    return [from, to];
  };

  const place = (cell: Cell, position: number): void => {
    cell.position = position;
    order.positions[cell.index] = position;
    order.indices[position] = cell.index;
    cells[position] = cell;
  };

  const order = {
    cells,
    positions: new Int32Array(64),
    indices: new Int32Array(64),
    append: (cell: Cell) => {
      if (cell.index >= order.positions.length) {
        order.positions = wider(order.positions);
        order.indices = wider(order.indices);
      }
      place(cell, cells.length);
    },
    disturb: (cell: Cell) => {
      disturbed.add(cell);
    },
    repair: () => {
      if (disturbed.size === 0) return NONE;
      const [from, to] = stretch();
      disturbed.clear();
      if (to < from) return NONE;
      const changed: Cell[] = [];
      let position = from;
      for (const group of componentsOf(cells.slice(from, to + 1))) {
        const [only] = group;
        const circle = group.length > 1 || only?.sources.some((edge) => edge.source === only);
        const cycle = circle ? cycleOf(group) : undefined;
        for (const cell of cycle?.members ?? group) {
          if (cycle || cell.cycle) changed.push(cell);
          cell.cycle = cycle;
          place(cell, position);
          position += 1;
        }
      }
      return changed;
    },
  };
  return order;
}

function wider(array: Int32Array): Int32Array<ArrayBuffer> {
  const longer = new Int32Array(array.length * 2);
  longer.set(array);
  return longer;
}
