import { problem } from '../diagnostics/index.ts';
import type { Typed } from '../language/index.ts';
import { standardUnits } from '../units/index.ts';
import type { ChangedIds } from './changed-ids.ts';
import type { World } from './compute/context.ts';
import { registerFile } from './compute/registers.ts';
import { type CellEdits, createEdits } from './edits.ts';
import { createExplainer } from './explain/explainer.ts';
import type { Wording } from './explain/shown.ts';
import { type ColumnReading, type Reading, readScalar, readWholeColumn } from './read.ts';
import { createRecalculation } from './recalculation.ts';
import { createCellStore } from './store/cell-store.ts';
import { createLinks } from './store/links.ts';
import { createSpares } from './store/spares.ts';
import { createTextPool, type TextPool } from './store/text-pool.ts';
import { type TrialPlace, tryFormula } from './trial.ts';

/** The calculation engine: cells and columns in, values out. Values are SI; ids are `sheet.name`. */
export interface Engine extends CellEdits {
  /** The texts of text columns: their values are codes of this pool. */
  readonly texts: Pick<TextPool, 'codeOf' | 'textOf' | 'normalOf'>;
  /**
   * Computes everything the edits since the last call have touched. The ids of the cells, columns and tables (their
   * rows) whose value, or whose reason to have none, may have changed. Call it before reading.
   */
  readonly recalculate: () => ChangedIds;
  readonly read: (id: string) => Reading;
  readonly readColumn: (id: string) => ColumnReading;
  /** The number of rows of a table; undefined if the series that makes them has no value. */
  readonly rowsOf: (table: string) => number | undefined;
  /** What a checked formula would come to where it is not set; nothing changes. */
  readonly tryFormula: (typed: Typed, place: TrialPlace) => Reading;
}

/** An engine without cells. `wording` says in which units messages show values nobody wrote a unit for. */
export function createEngine(wording: Partial<Wording> = {}): Engine {
  const links = createLinks();
  const recalculation = createRecalculation(links, () => world);
  const store = createCellStore(links, (cell) => {
    recalculation.order.append(cell);
    recalculation.mark(cell);
  });
  const texts = createTextPool();
  const spares = createSpares();
  const world: World = {
    ...store,
    texts,
    spares,
    register: registerFile(),
    isBlankRow: (column, row) => explainer.isBlankRow(column, row),
  };
  const explainer = createExplainer(world, { units: standardUnits, system: 'SI', ...wording });
  return {
    ...createEdits(store, links, texts, spares, recalculation),
    texts,
    recalculate: () => {
      explainer.forget();
      return recalculation.run();
    },
    read: (id) => {
      const cell = store.find(id);
      if (!cell)
        return { status: 'problem', problem: problem('nothing-there', { from: 0, to: 0 }, { name: id }) };
      if (cell.shape === 'column') throw new Error(`${id} is a column; read it with readColumn`);
      return readScalar(cell, store.scalars.values[cell.index] as number, explainer, texts);
    },
    readColumn: (id) => {
      const cell = store.find(id);
      if (cell?.shape !== 'column') throw new Error(`${id} is no column`);
      return readWholeColumn(cell, explainer, texts);
    },
    rowsOf: (id) => {
      const { failed, length } = store.table(id);
      return failed ? undefined : length;
    },
    tryFormula: (typed, place) => tryFormula(world, explainer, typed, place),
  };
}
