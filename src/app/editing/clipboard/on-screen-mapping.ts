import type { Table } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import type { Destination, Mapping } from '../../../tables/index.ts';
import { displayedUnit, unitOfBareNumbers } from '../cells/carry-unit.ts';

/** A table of a sheet as the page shows it. */
export interface ShownTable {
  readonly sheet: string;
  readonly table: Table;
  readonly view: UnitsView;
}

/**
 * A mapping in which numbers whose header states no unit, nor a column beside them, are in the one that the page shows
 * above their column.
 */
export function onScreenMapping(notebook: Notebook, shown: ShownTable, mapping: Mapping): Mapping {
  const beside = new Set([...mapping.goes.values()].flatMap((to) => (to.kind === 'unit' ? [to.of] : [])));
  const goes = [...mapping.goes].map(([position, to]) => {
    const isStated = to.kind === 'column' && beside.has(to.name);
    return [position, isStated ? to : onScreen(notebook, shown, to)] as const;
  });
  return { ...mapping, goes: new Map(goes) };
}

function onScreen(notebook: Notebook, { sheet, table, view }: ShownTable, to: Destination): Destination {
  if (to.kind !== 'column' || to.unit !== '') return to;
  const column = table.columns.find(({ name }) => name === to.name);
  if (!column) return to;
  const place = { sheet, part: table.id, item: 'r0', field: column.id };
  const unit = displayedUnit(notebook, place, view) ?? '';
  return unit === (unitOfBareNumbers(notebook.book, place) ?? '') ? to : { ...to, unit, assumed: true };
}
