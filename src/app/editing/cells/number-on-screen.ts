import type { Notebook } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { columnView, entryView } from '../../../record/index.ts';
import { entryInPrint, isBareNumber } from '../../../units/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';

/** The number that the page shows in the value of a given line or the cell of a given column; undefined where it shows none. */
export function numberOnScreen(notebook: Notebook, place: CellPlace, view: UnitsView): string | undefined {
  const found = findPlace(notebook.book, place);
  const { registry } = notebook.model;
  if (found?.kind === 'row' && found.row.kind === 'given' && place.field === 'value') {
    const result = notebook.result(`${place.sheet}.${found.row.name}`);
    if (result.status !== 'ok' || result.value.kind !== 'number') return undefined;
    return entryView(found.row, result.value, view, registry).number;
  }
  if (found?.kind !== 'cell' || found.column.kind !== 'given') return undefined;
  const id = `${place.sheet}.${found.part.name}.${found.column.name}`;
  return columnView(notebook, id, found.column, view).at(found.row).text;
}

/** Whether a person typed nothing but the number that the page shows at a place, which may be rounded: it stays as it is. */
export function isNumberOnScreen(
  notebook: Notebook,
  place: CellPlace,
  view: UnitsView,
  typed: string,
): boolean {
  if (!isBareNumber(typed)) return false;
  const shown = numberOnScreen(notebook, place, view);
  return shown !== undefined && plain(shown) === plain(typed);
}

/** Digits as they are printed without what groups them, so that all ways to type a number are one. */
function plain(number: string): string {
  return entryInPrint(number.trim()).replace(/[\s\u202f\u00a0,]/g, '');
}
