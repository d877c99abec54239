import type { FormulaItem, Notebook } from '../../notebook/index.ts';
import { referencesOfItem } from '../../notebook/index.ts';
import { type Reader, readersOf, rowsOf, wantsNone } from './governing-row.ts';
import { tableOf } from './worked-aggregates.ts';

/** So many lines on the way from a check its rows are looked for. */
const STEPS = 3;

/** The rows of a table that make a check what it is. */
export interface RowsBehind {
  /** `sheet.table`. */
  readonly table: string;
  /** From 0. */
  readonly rows: readonly number[];
  /** The line that counts them, or takes its greatest or least value from them. */
  readonly reader: FormulaItem;
  readonly does: 'gives' | 'counts';
}

/** The rows that govern a check: those that it wants none of, or the one its greatest or least value stands in. */
export function rowsBehind(notebook: Notebook, check: FormulaItem): RowsBehind | undefined {
  const counts = wantsNone(check);
  let reached: readonly FormulaItem[] = [check];
  const seen = new Set([check.id]);
  for (let step = 0; step < STEPS; step += 1) {
    for (const item of reached) {
      const found = readersOf(item, counts)
        .map((reader) => rowsRead(notebook, reader))
        .find((rows) => rows !== undefined);
      if (found) return found;
    }
    reached = reached.flatMap((item) =>
      [...referencesOfItem(item)].flatMap((id) => {
        const next = notebook.model.items.get(id);
        if (next?.kind !== 'formula' || seen.has(id)) return [];
        seen.add(id);
        return [next];
      }),
    );
  }
  return undefined;
}

function rowsRead(notebook: Notebook, reader: Reader): RowsBehind | undefined {
  const { item, values, takes } = reader;
  const table = takes === 'looked up' ? undefined : tableOf(values);
  if (table === undefined) return undefined;
  const rows = takes === 'counted' ? rowsCounted(notebook, reader) : rowsOf(notebook, reader);
  return rows.length === 0
    ? undefined
    : { table, rows, reader: item, does: takes === 'counted' ? 'counts' : 'gives' };
}

/** All the rows in which a condition holds. */
function rowsCounted(notebook: Notebook, { item, values }: Reader): readonly number[] {
  const found = notebook.parts.elementsOf(values, { item, checked: item.checked });
  return found ? [...found.values.keys()].filter((row) => found.values[row] === 1) : [];
}
