import type { Thunk } from '../compute/stream.ts';
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

/** What a recalculation reads and writes of the scalar cells, by their index; the places of other cells are idle. */
export interface Scalars {
  /** NaN where there is no value. The array is replaced when it grows. */
  values: Float64Array;
  /** How a formula is computed anew; undefined until it is for the first time, in a circle, and for what is no formula. */
  readonly thunks: (Thunk | undefined)[];
}

/** The cells by id, made when first named: a formula may come before what it reads. */
export interface CellStore {
  readonly scalars: Scalars;
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
  const scalars: Scalars = { values: new Float64Array(64).fill(Number.NaN), thunks: [] };

  const enter = <C extends Cell>(made: C): C => {
    all.push(made);
    scalars.thunks.push(undefined);
    if (made.index >= scalars.values.length) {
      const wider = new Float64Array(made.index * 2).fill(Number.NaN);
      wider.set(scalars.values);
      scalars.values = wider;
    }
    onNew(made);
    return made;
  };

  const table = (id: string): TableCell => {
    const known = tables.get(id);
    if (known) return known;
    const made = emptyTable(id, all.length);
    tables.set(id, made);
    return enter(made);
  };

  return {
    scalars,
    all,
    table,
    find: (id) => cells.get(id),
    scalar: (id) => {
      const known = cells.get(id);
      if (known?.shape === 'scalar') return known;
      if (known) throw new Error(`${id} is a column and is used as a single value`);
      const made = absentScalar(id, all.length);
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
