import {
  absentColumn,
  absentScalar,
  type Cell,
  type ColumnCell,
  emptyTable,
  type ScalarCell,
  type TableCell,
  WHOLE,
} from './cells.ts';
import type { Links } from './links.ts';

/** The cells by id, made when first named: a formula may come before what it reads. */
export interface CellStore {
  /** The values of the scalar cells by slot. */
  readonly slots: { values: Float64Array };
  readonly scalar: (id: string) => ScalarCell;
  readonly column: (id: string, table: string) => ColumnCell;
  readonly table: (id: string) => TableCell;
  /** All cells by index. */
  readonly all: readonly Cell[];
  /** A scalar or column that is known already. */
  readonly find: (id: string) => ScalarCell | ColumnCell | undefined;
}

/** An empty store; `onNew` hears of every cell made, and columns are linked to their tables. */
export function createCellStore(links: Links, onNew: (cell: Cell) => void): CellStore {
  const all: Cell[] = [];
  const cells = new Map<string, ScalarCell | ColumnCell>();
  const tables = new Map<string, TableCell>();
  const slots = { values: new Float64Array(64).fill(Number.NaN) };
  let used = 0;

  const enter = <C extends Cell>(made: C): C => {
    all.push(made);
    onNew(made);
    return made;
  };

  const newSlot = (): number => {
    if (used === slots.values.length) {
      const wider = new Float64Array(used * 2).fill(Number.NaN);
      wider.set(slots.values);
      slots.values = wider;
    }
    used += 1;
    return used - 1;
  };

  const table = (id: string): TableCell => {
    const known = tables.get(id);
    if (known) return known;
    const made = emptyTable(id, all.length);
    tables.set(id, made);
    return enter(made);
  };

  return {
    slots,
    all,
    table,
    find: (id) => cells.get(id),
    scalar: (id) => {
      const known = cells.get(id);
      if (known?.shape === 'scalar') return known;
      if (known) throw new Error(`${id} is a column and is used as a single value`);
      const made = absentScalar(id, all.length, newSlot());
      cells.set(id, made);
      return enter(made);
    },
    column: (id, tableId) => {
      const known = cells.get(id);
      if (known?.shape === 'column' && known.table.id === tableId) return known;
      if (known) throw new Error(`${id} is not a column of ${tableId} and is used as one`);
      const owner = table(tableId);
      const made = absentColumn(id, all.length, owner);
      cells.set(id, made);
      owner.columns.push(made);
      enter(made);
      links.link(made, [{ source: owner, reach: WHOLE }]);
      return made;
    },
  };
}
