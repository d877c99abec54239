import { fail, type Outcome, problem, succeed } from '../../../diagnostics/index.ts';
import {
  type Book,
  type Calc,
  type CalcColumn,
  type CalcPlace,
  type Edit,
  type Method,
  type MethodField,
  type RowField,
  setCells,
  setColumnField,
  setMethodField,
  setPartField,
  setRowField,
} from '../../../document/index.ts';
import { methodWords } from '../../../notebook/index.ts';
import { isBareNumber, readEntry, standardUnits } from '../../../units/index.ts';
import { type CellPlace, methodFieldOf } from '../../view-model/place.ts';
import { type Found, findPlace } from '../find-place.ts';
import { methodAtPlace } from '../methods/method-place.ts';
import { cellFromText } from './cell-content.ts';
import { statementEdit, targetsAt } from './state-target.ts';

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
      return (
        statedText(book, place, text) ?? rowEdit(place, found, text, methodAtPlace(book, place, found.row))
      );
    case 'column':
      return columnEdit(
        place,
        found,
        text,
        found.column.kind === 'given' ? undefined : methodAtPlace(book, place, found.column),
      );
    case 'cell': {
      const { column, row, part } = found;
      if (column.kind !== 'given') return statedText(book, place, text) ?? calculated(column.name);
      const to = { sheet: place.sheet, table: part.id, column: column.id };
      return succeed(setCells(to, row, [cellFromText(text, column)]));
    }
  }
}

/**
 * The edit that puts a text in place of a stated entry: a blank gives the computed value back, and on a line a text behind
 * an equals sign is its formula, beside which the stated value goes on standing. Undefined where no entry is stated.
 */
function statedText(book: Book, place: CellPlace, text: string): Outcome<Edit> | undefined {
  const [target] = targetsAt(book, place);
  if (target?.statement === undefined || target.kind === 'side') return undefined;
  const written = text.trim();
  if (written === '') return succeed(statementEdit(target, undefined));
  if (written.startsWith('='))
    return target.kind === 'line'
      ? enterFormula(book, place, text)
      : fail(problem('stated-cell-formula', nowhere, { written }));
  return succeed(statementEdit(target, { ...target.statement, entry: written }));
}

/** The edit that puts a formula where one is computed by, into the method in force where there are several, whatever is stated there. */
export function enterFormula(book: Book, place: CellPlace, text: string): Outcome<Edit> {
  const found = findPlace(book, place);
  return found?.kind === 'row'
    ? rowEdit(place, found, text, methodAtPlace(book, place, found.row))
    : enterText(book, place, text);
}

const nowhere = { from: 0, to: 0 };

function calculated(name: string): Outcome<never> {
  return fail(problem('set-calculated', nowhere, { name }));
}

function symbol(name: string, text: string): Outcome<never> {
  return fail(problem('symbol-among-cells', nowhere, { name, text: text.trim() }));
}

/** The refusal of a value where a unit belongs; undefined for all else. One over something, such as 1/s, is a unit. */
export function valueAsUnit(name: string, text: string): Outcome<never> | undefined {
  const written = text.trim();
  const isValue = isBareNumber(written) || /^[+\-−]?\s*\d[\d.,]*\s*(?![\d.,\s/])\S/.test(written);
  return isValue ? fail(problem('unit-is-value', nowhere, { name, text: written })) : undefined;
}

/** That a value was typed where a column has its heading; undefined for words. */
function valueAsHeading(name: string, text: string): Outcome<never> | undefined {
  const written = text.trim();
  const read = readEntry(written, standardUnits);
  if (!read.ok || read.value.kind !== 'number') return undefined;
  return fail(problem('heading-is-value', nowhere, { name, text: written }));
}

const optionalText = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim());

function rowEdit(
  place: CellPlace,
  { row }: Extract<Found, { kind: 'row' }>,
  text: string,
  method: Method | undefined,
): Outcome<Edit> {
  const at = { sheet: place.sheet, part: place.part, row: row.id };
  const set = (field: RowField, value: string | undefined, what: string): Outcome<Edit> =>
    succeed({ ...setRowField(at, field, value), label: `change the ${what} of ${row.name}` });
  const listed = listedMethod(place, at, method, text, row.name);
  if (listed) return listed;
  switch (place.field) {
    case 'reference':
      if (method) return ofMethod(at, method, 'reference', optionalText(text), row.name);
      return set('reference', optionalText(text), 'reference');
    case 'label':
      return set('label', optionalText(text), 'description');
    case 'name':
      return symbol(row.name, text);
    case 'unit':
      return valueAsUnit(row.name, text) ?? set('unit', text.trim(), 'unit');
    default:
      if (method) return ofMethod(at, method, 'formula', withoutEquals(text), row.name);
      if (row.kind === 'calc' && row.methods) return undecided(row);
      if (row.kind === 'calc' || row.kind === 'check') return set('formula', withoutEquals(text), 'formula');
      return set('entry', text.trim(), 'value');
  }
}

function columnEdit(
  place: CellPlace,
  { column, part }: Extract<Found, { kind: 'column' }>,
  text: string,
  method: Method | undefined,
): Outcome<Edit> {
  const at = { sheet: place.sheet, table: part.id, column: column.id };
  const labelled = (edit: Edit, what: string): Outcome<Edit> =>
    succeed({ ...edit, label: `change the ${what} of ${part.name}.${column.name}` });
  const name = `${part.name}.${column.name}`;
  const listed = listedMethod(place, at, method, text, name);
  if (listed) return listed;
  const field = place.item === 'head' ? (column.kind === 'given' ? 'label' : 'value') : place.field;
  switch (field) {
    case 'reference':
      if (method) return ofMethod(at, method, 'reference', optionalText(text), name);
      return labelled(setColumnField(at, 'reference', optionalText(text)), 'reference');
    case 'label':
      return (
        valueAsHeading(column.name, text) ??
        labelled(setColumnField(at, 'label', optionalText(text)), 'heading')
      );
    case 'name':
      return symbol(column.name, text);
    case 'unit':
      return valueAsUnit(column.name, text) ?? labelled(setColumnField(at, 'unit', text.trim()), 'unit');
    default:
      if (column.kind === 'given') return calculated(column.name);
      if (method) return ofMethod(at, method, 'formula', withoutEquals(text), name);
      if (column.kind === 'calc' && column.methods) return undecided(column);
      return labelled(setColumnField(at, 'formula', withoutEquals(text)), 'formula');
  }
}

/** The edit of what a place of the list of methods is about; undefined for a cell of a sheet. */
function listedMethod(
  place: CellPlace,
  at: CalcPlace,
  method: Method | undefined,
  text: string,
  name: string,
): Outcome<Edit> | undefined {
  const field = methodFieldOf(place);
  if (field === undefined) return undefined;
  if (!method) return fail(problem('edit-place-missing', nowhere, { path: `method ${place.method}` }));
  const value = field === 'formula' ? withoutEquals(text) : optionalText(text);
  return ofMethod(at, method, field, value, name);
}

/** The edit of a method of a line, named by what it is for. */
function ofMethod(
  at: CalcPlace,
  method: Method,
  field: MethodField,
  value: string | undefined,
  name: string,
): Outcome<Edit> {
  const label = `change the ${field} of ${name} ${methodWords(method)}`;
  return succeed({ ...setMethodField(at, method.id, field, value), label });
}

function undecided({ name, by = '' }: Calc | CalcColumn): Outcome<never> {
  return fail(problem('method-undecided', nowhere, { name, by }));
}

/** A formula as the book keeps it; people used to spreadsheets begin one with an equals sign. */
export function withoutEquals(text: string): string {
  return text.trim().replace(/^=\s*/, '');
}
