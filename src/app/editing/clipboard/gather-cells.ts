import {
  type Book,
  type CalcColumn,
  type ColumnPlace,
  type Edit,
  type Statement,
  stateCells,
} from '../../../document/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { targetsAt } from '../cells/state-target.ts';

/** Changes of what is stated in cells of tables, gathered by their columns. */
export interface GatheredCells {
  /** Takes note of a cell; false where the place is none of a calculated column. */
  readonly take: (at: CellPlace, statement: Statement | undefined) => boolean;
  /** An edit for each column, however many of its cells change. */
  readonly edits: () => readonly Edit[];
}

interface Column {
  readonly place: ColumnPlace;
  readonly column: CalcColumn;
  readonly changes: Map<number, Statement | undefined>;
}

/** Gathers changes of stated cells: a column has one list of them, which two edits side by side would each set whole. */
export function gatherCells(book: Book): GatheredCells {
  const columns = new Map<string, Column>();
  return {
    take: (at, statement) => {
      const [target] = targetsAt(book, at);
      if (target?.kind !== 'cell') return false;
      const { id, place, column, row } = target;
      const known = columns.get(id);
      if (known) known.changes.set(row, statement);
      else columns.set(id, { place, column, changes: new Map([[row, statement]]) });
      return true;
    },
    edits: () =>
      [...columns.values()].map(({ place, column, changes }) => stateCells(place, column, changes)),
  };
}
