import { problem } from '../diagnostics/index.ts';
import { referencesOf, type Typed } from '../language/index.ts';
import { standardUnits } from '../units/index.ts';
import type { ChangedIds } from './changed-ids.ts';
import type { World } from './compute/context.ts';
import { registerFile } from './compute/registers.ts';
import { type CellEdits, createEdits } from './edits.ts';
import { createExplainer } from './explain/explainer.ts';
import type { Wording } from './explain/write-operand.ts';
import {
  type ColumnReading,
  pendingReading,
  type Reading,
  readPendingColumn,
  readScalar,
  readWholeColumn,
} from './read.ts';
import { createRecalculation } from './recalculation.ts';
import { createBufferPool } from './store/buffer-pool.ts';
import { createCellStore } from './store/cell-store.ts';
import type { Cell } from './store/cells.ts';
import { createLinks } from './store/links.ts';
import { createTextPool, type TextPool } from './store/text-pool.ts';
import { type TrialPlace, tryElements, tryFormula } from './trial.ts';
import type { Allowance } from './update/slice.ts';

/** The calculation engine: cells and columns in, values out. Values are SI; ids are `sheet.name`. */
export interface Engine extends CellEdits {
  /** The texts of text columns: their values are codes of this pool. */
  readonly texts: Pick<TextPool, 'codeOf' | 'textOf' | 'normalOf'>;
  /**
   * Computes everything the edits since the last call have touched. The ids of the cells, columns and tables (their
   * rows) whose value, or whose reason to have none, may have changed. Call it before reading. With an allowance, what
   * is not computed when its time is over is pending: it has no value, and further calls compute it.
   */
  readonly recalculate: (allowance?: Allowance) => ChangedIds;
  /** How many cells are not computed yet, and the rows done of one that is in work. */
  readonly pending: Pending | undefined;
  readonly read: (id: string) => Reading;
  readonly readColumn: (id: string) => ColumnReading;
  /** The number of rows of a table; undefined if the series that makes them has no value. */
  readonly rowsOf: (table: string) => number | undefined;
  /** What a checked formula would come to where it is not set; nothing changes. */
  readonly tryFormula: (typed: Typed, place: TrialPlace) => Reading;
  /**
   * What a part that runs over the whole columns of a table comes to in each of its rows, NaN without a value; undefined
   * while something in it is pending. Texts are codes of the pool.
   */
  readonly tryElements: (typed: Typed, place: TrialPlace) => Float64Array | undefined;
}

/** What is still to be computed. */
export interface Pending {
  /** Cells and columns without a value for it. */
  readonly cells: number;
  /** A column in work, with the rows that are done. */
  readonly column?: { readonly id: string; readonly done: number; readonly rows: number };
}

/**
 * An engine without cells. `wording` says in which units messages show values nobody wrote a unit for, and how lines and
 * columns are described.
 */
export function createEngine(wording: Partial<Wording> = {}): Engine {
  const links = createLinks();
  const recalculation = createRecalculation(links, () => world);
  const store = createCellStore(links, (cell) => {
    recalculation.order.append(cell);
    recalculation.mark(cell);
  });
  const texts = createTextPool();
  const buffers = createBufferPool();
  const world: World = {
    ...store,
    texts,
    buffers,
    register: registerFile(),
    isBlankRow: (column, row) => explainer.isBlankRow(column, row),
  };
  const explainer = createExplainer(world, { units: standardUnits, system: 'SI', ...wording });
  const waits = (typed: Typed): boolean =>
    [...referencesOf(typed)].some((id) => {
      const cell = store.find(id);
      return cell !== undefined && recalculation.pending.has(cell);
    });
  return {
    ...createEdits(store, links, texts, buffers, recalculation),
    texts,
    recalculate: (allowance) => {
      explainer.forget();
      return recalculation.run(allowance);
    },
    get pending() {
      return pendingOf(recalculation.pending);
    },
    read: (id) => {
      const cell = store.find(id);
      if (!cell)
        return { status: 'problem', problem: problem('nothing-there', { from: 0, to: 0 }, { name: id }) };
      if (cell.shape === 'column') throw new Error(`${id} is a column; read it with readColumn`);
      if (recalculation.pending.has(cell)) return pendingReading();
      return readScalar(cell, store.scalars.values[cell.index] as number, explainer, texts);
    },
    readColumn: (id) => {
      const cell = store.find(id);
      if (cell?.shape !== 'column') throw new Error(`${id} is no column`);
      if (recalculation.pending.has(cell)) return readPendingColumn(cell);
      return readWholeColumn(cell, explainer, texts);
    },
    rowsOf: (id) => {
      const { failed, length } = store.table(id);
      return failed ? undefined : length;
    },
    tryFormula: (typed, place) =>
      waits(typed) ? pendingReading() : tryFormula(world, explainer, typed, place),
    tryElements: (typed, place) => (waits(typed) ? undefined : tryElements(world, typed, place)),
  };
}

function pendingOf(cells: ReadonlySet<Cell>): Pending | undefined {
  if (cells.size === 0) return undefined;
  for (const cell of cells) {
    if (cell.shape !== 'column' || cell.dirtyFrom === 0 || cell.dirtyFrom >= cell.values.length) continue;
    return { cells: cells.size, column: { id: cell.id, done: cell.dirtyFrom, rows: cell.values.length } };
  }
  return { cells: cells.size };
}
