import type { GivenColumn } from '../../../document/index.ts';
import { cellOf } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { displayUnit } from '../../../record/index.ts';
import { guardText } from '../../../tables/index.ts';
import { type Unit, writeIn } from '../../../units/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';
import { cellContent } from './cell-content.ts';

/**
 * The text of a cell for other programs: results with all their digits in the unit of their line, the rest as typed.
 * Where the page shows a number in another unit, it is in that one and says so, and means the same wherever it goes.
 */
export function cellValueText(notebook: Notebook, place: CellPlace, view: UnitsView = 'written'): string {
  const numberText = (si: number, unit: Unit): string => {
    const shown = displayUnit(unit, view, notebook.model.registry);
    const number = writeIn(si, shown, exact);
    return shown.text === unit.text ? number : `${number} ${shown.text}`;
  };
  const found = findPlace(notebook.book, place);
  if (found?.kind === 'row' && place.field === 'value') {
    const result = notebook.result(`${place.sheet}.${found.row.name}`);
    if (result.status !== 'ok') return '';
    const { value } = result;
    if (value.kind === 'number') return numberText(value.si, value.unit);
    return value.kind === 'text' ? value.text : value.truth ? 'TRUE' : 'FALSE';
  }
  if (found?.kind === 'cell') {
    const typed = found.column.kind === 'given' ? cellOf(found.column, found.row) : null;
    // The page shows an entry as it was typed, in whatever unit.
    if (typeof typed === 'string' && view === 'written' && found.column.kind === 'given')
      return guardedWords(found.column, typed);
    const column = notebook.column(`${place.sheet}.${found.part.name}.${found.column.name}`);
    if (column.status !== 'ok' || found.row >= column.reading.length) return '';
    const read = column.reading.at(found.row);
    if (read.status !== 'ok') return cellContent(notebook.book, place).text;
    if (typeof read.value === 'number') return numberText(read.value, column.unit);
    return typeof read.value === 'string' ? guardText(read.value) : `${read.value}`;
  }
  return cellContent(notebook.book, place).text;
}

/** Without the last digits that a computation or a change of units leaves. */
const exact = { digits: 14, grouping: 'none' } as const;

/** Words that no other program takes for a formula. */
function guardedWords(column: GivenColumn, text: string): string {
  return column.type === 'text' ? guardText(text) : text;
}
