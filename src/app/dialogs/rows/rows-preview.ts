import { type Notebook, numbersOf } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { formatQuantity, quantityText } from '../../../record/index.ts';
import type { Mapping, ReadTable, TextColumn } from '../../../tables/index.ts';

/** What a column of a text is taken as: its first value, and of numbers the sum of all rows; in the units of the page. */
export interface TakenAs {
  readonly first: string;
  readonly sum: string;
}

/** What the columns of a text are taken as, by their positions, for a table (`sheet.table`) as the page shows it. */
export function rowsPreview(
  notebook: Notebook,
  table: string,
  view: UnitsView,
  columns: readonly TextColumn[],
  mapping: Mapping,
  { cells }: Pick<ReadTable, 'cells'>,
): ReadonlyMap<number, TakenAs> {
  const taken = new Map<number, TakenAs>();
  for (const { position } of columns) {
    const to = mapping.goes.get(position);
    const values = to?.kind === 'column' && Object.hasOwn(cells, to.name) ? cells[to.name] : undefined;
    if (to?.kind === 'column' && values) taken.set(position, takenAs(notebook, table, view, to.name, values));
  }
  return taken;
}

function takenAs(
  notebook: Notebook,
  table: string,
  view: UnitsView,
  name: string,
  cells: ReadTable['cells'][string],
): TakenAs {
  const at = cells.findIndex((cell) => cell !== null);
  const numbers = numbersOf(notebook, table, name, cells);
  if (!numbers) return { first: `${cells[at] ?? ''}`, sum: '' };
  const { unit, values } = numbers;
  const shown = (si: number): string => quantityText(formatQuantity(si, unit, view, notebook.model.registry));
  const first = values[at];
  const known = values.filter((value) => value !== undefined);
  const summed = unit.point === undefined && known.length > 0;
  return {
    first: first === undefined ? 'not read' : shown(first),
    sum: summed ? shown(known.reduce((sum, value) => sum + value, 0)) : '',
  };
}
