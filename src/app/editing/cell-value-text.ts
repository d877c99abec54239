import type { Notebook, Value } from '../../notebook/index.ts';
import { writeIn } from '../../units/index.ts';
import type { CellPlace } from '../session/place.ts';
import { cellContent } from './cell-content.ts';
import { findPlace } from './find-place.ts';

/** The text of a cell for other programs: results with all their digits in the unit of their line, the rest as typed. */
export function cellValueText(notebook: Notebook, place: CellPlace): string {
  const found = findPlace(notebook.book, place);
  if (found?.kind === 'row' && place.field === 'value') {
    const result = notebook.result(`${place.sheet}.${found.row.name}`);
    return result.status === 'ok' ? plainText(result.value) : '';
  }
  if (found?.kind === 'cell') {
    const column = notebook.column(`${place.sheet}.${found.part.name}.${found.column.name}`);
    if (column.status !== 'ok' || found.row >= column.reading.length) return '';
    const read = column.reading.at(found.row);
    if (read.status !== 'ok') return cellContent(notebook.book, place).text;
    if (typeof read.value === 'number') return writeIn(read.value, column.unit, exact);
    return `${read.value}`;
  }
  return cellContent(notebook.book, place).text;
}

/** Without the last digits that a change of units leaves. */
const exact = { digits: 14, grouping: 'none' } as const;

function plainText(value: Value): string {
  if (value.kind === 'number') return writeIn(value.si, value.unit, exact);
  return value.kind === 'text' ? value.text : value.truth ? 'TRUE' : 'FALSE';
}
