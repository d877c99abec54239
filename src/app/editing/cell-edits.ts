import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import {
  type Book,
  type Edit,
  type RowField,
  setCells,
  setColumnField,
  setPartField,
  setRowField,
} from '../../document/index.ts';
import type { CellPlace } from '../session/place.ts';
import { cellFromText } from './cell-content.ts';
import { type Found, findPlace } from './find-place.ts';

/**
 * The edit that puts `text` into the cell at a place. Refused where nothing can be typed, and for a symbol, which is
 * renamed with all that uses it (`put-text.ts`).
 */
export function enterText(book: Book, place: CellPlace, text: string): Outcome<Edit> {
  const found = findPlace(book, place);
  if (!found) return fail(problem('edit-place-unfit', nowhere, { path: place.item, expected: 'a cell' }));
  switch (found.kind) {
    case 'prose':
      return succeed({ ...setPartField(place, 'text', text), label: 'change a text' });
    case 'title':
      return succeed({ ...setPartField(place, 'title', text.trim() || undefined), label: 'change a title' });
    case 'row':
      return rowEdit(place, found, text);
    case 'column':
      return columnEdit(place, found, text);
    case 'cell': {
      const { column, row, part } = found;
      if (column.kind !== 'given') return calculated(column.name);
      const to = { sheet: place.sheet, table: part.id, column: column.id };
      return succeed(setCells(to, row, [cellFromText(text, column)]));
    }
  }
}

const nowhere = { from: 0, to: 0 };

function calculated(name: string): Outcome<never> {
  return fail(problem('set-calculated', nowhere, { name }));
}

function symbol(name: string, text: string): Outcome<never> {
  return fail(problem('symbol-among-cells', nowhere, { name, text: text.trim() }));
}

const optionalText = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim());

function rowEdit(place: CellPlace, { row }: Extract<Found, { kind: 'row' }>, text: string): Outcome<Edit> {
  const at = { sheet: place.sheet, part: place.part, row: row.id };
  const set = (field: RowField, value: string | undefined, what: string): Outcome<Edit> =>
    succeed({ ...setRowField(at, field, value), label: `change the ${what} of ${row.name}` });
  switch (place.field) {
    case 'reference':
      return set('reference', optionalText(text), 'reference');
    case 'label':
      return set('label', optionalText(text), 'description');
    case 'name':
      return symbol(row.name, text);
    case 'unit':
      return set('unit', text.trim(), 'unit');
    default:
      if ('formula' in row) return set('formula', withoutEquals(text), 'formula');
      return set('entry', text.trim(), 'value');
  }
}

function columnEdit(
  place: CellPlace,
  { column, part }: Extract<Found, { kind: 'column' }>,
  text: string,
): Outcome<Edit> {
  const at = { sheet: place.sheet, table: part.id, column: column.id };
  const labelled = (edit: Edit, what: string): Outcome<Edit> =>
    succeed({ ...edit, label: `change the ${what} of ${part.name}.${column.name}` });
  const field = place.item === 'head' ? (column.kind === 'given' ? 'label' : 'value') : place.field;
  switch (field) {
    case 'reference':
      return labelled(setColumnField(at, 'reference', optionalText(text)), 'reference');
    case 'label':
      return labelled(setColumnField(at, 'label', optionalText(text)), 'heading');
    case 'name':
      return symbol(column.name, text);
    case 'unit':
      return labelled(setColumnField(at, 'unit', text.trim()), 'unit');
    default:
      if (column.kind === 'given') return calculated(column.name);
      return labelled(setColumnField(at, 'formula', withoutEquals(text)), 'formula');
  }
}

/** A formula as the book keeps it; people used to spreadsheets begin one with an equals sign. */
export function withoutEquals(text: string): string {
  return text.trim().replace(/^=\s*/, '');
}
