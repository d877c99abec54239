import type { Notebook } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { displayUnit } from '../../../record/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';

/**
 * The heading of a column of a table for other programs, with the unit of the numbers below it: `volume in place (cy)`.
 * Where the page shows these in another unit each of them says its own, and the heading none. Undefined where the place
 * is no heading.
 */
export function headingText(notebook: Notebook, place: CellPlace, view: UnitsView): string | undefined {
  const found = findPlace(notebook.book, place);
  if (found?.kind !== 'column' || place.item !== 'head') return undefined;
  const { column, part } = found;
  const words = column.label?.trim() || column.name;
  const unit = notebook.unitOf(`${place.sheet}.${part.name}.${column.name}`);
  if (unit === undefined || unit.text === '') return words;
  return displayUnit(unit, view, notebook.model.registry).text === unit.text
    ? `${words} (${unit.text})`
    : words;
}
