import { type Book, type Cell, cellOf, type GivenColumn, type Method } from '../../../document/index.ts';
import type { ContentKind } from '../../view-model/edit-in-hand.ts';
import { type CellPlace, methodFieldOf } from '../../view-model/place.ts';
import { type Found, findPlace } from '../find-place.ts';
import { methodAtPlace } from '../methods/method-place.ts';
import { targetsAt } from './state-target.ts';

/** The text of a cell as a person would type it; `kind` is undefined where nothing can be typed. */
export interface CellContent {
  readonly kind: ContentKind | undefined;
  readonly text: string;
}

/** What the cell at a place holds: where a value is stated in place of what is computed, that value. */
export function cellContent(book: Book, place: CellPlace): CellContent {
  const entry = statedEntryAt(book, place);
  if (entry !== undefined) return { kind: 'entry', text: entry };
  return computedContent(book, place);
}

/** What the cell at a place holds beside a value that is stated there: its formula. */
export function computedContent(book: Book, place: CellPlace): CellContent {
  const found = findPlace(book, place);
  return found ? contentOf(found, place, book) : { kind: undefined, text: '' };
}

/** The entry that is stated in place of what a line or a cell of a column comes to; a check goes on showing its sides. */
function statedEntryAt(book: Book, place: CellPlace): string | undefined {
  const [target] = targetsAt(book, place);
  return target?.kind === 'side' ? undefined : target?.statement?.entry;
}

/** Where what a cell holds is written: a calculated cell of a table that is not stated has it from its column’s heading. */
export function writtenAt(book: Book, place: CellPlace): CellPlace {
  const found = findPlace(book, place);
  if (found?.kind !== 'cell' || found.column.kind === 'given') return place;
  return statedEntryAt(book, place) === undefined ? { ...place, item: 'head' } : place;
}

/** Where the formula of a calculated place is written. */
export function formulaAt(book: Book, place: CellPlace): CellPlace {
  const found = findPlace(book, place);
  return found?.kind === 'cell' && found.column.kind !== 'given' ? { ...place, item: 'head' } : place;
}

function contentOf(found: Found, place: CellPlace, book: Book): CellContent {
  switch (found.kind) {
    case 'prose':
      return { kind: 'prose', text: found.part.text };
    case 'title':
      return { kind: 'text', text: found.part.title ?? '' };
    case 'row': {
      const method = methodAtPlace(book, place, found.row);
      return methodContent(place, method) ?? rowContent(found.row, place.field, method);
    }
    case 'column': {
      const { column } = found;
      const method = column.kind === 'given' ? undefined : methodAtPlace(book, place, column);
      if (place.item !== 'head')
        return methodContent(place, method) ?? rowContent(column, place.field, method);
      return column.kind === 'given'
        ? { kind: 'text', text: column.label ?? column.name }
        : formulaContent(column, method);
    }
    case 'cell': {
      const { column, row } = found;
      if (column.kind !== 'given') return { kind: undefined, text: '' };
      return { kind: column.options ? 'choice' : 'entry', text: cellText(cellOf(column, row)) };
    }
  }
}

type Line = Extract<Found, { kind: 'row' }>['row'] | Extract<Found, { kind: 'column' }>['column'];

/** The formula of a line, of one with methods that of the method in force; nothing can be typed where none is. */
function formulaContent({ formula }: { readonly formula?: string }, method: Method | undefined): CellContent {
  const text = method ? method.formula : formula;
  return text === undefined ? { kind: undefined, text: '' } : { kind: 'formula', text };
}

/** What is written of a method where the place is one of the list of methods; nothing can be typed once it is gone. */
function methodContent(place: CellPlace, method: Method | undefined): CellContent | undefined {
  const field = methodFieldOf(place);
  if (field === undefined) return undefined;
  if (!method) return { kind: undefined, text: '' };
  if (field === 'formula') return { kind: 'formula', text: method.formula };
  return { kind: field === 'note' ? 'prose' : 'text', text: method[field] ?? '' };
}

function rowContent(row: Line, field: string, method: Method | undefined): CellContent {
  switch (field) {
    case 'reference':
      return { kind: 'text', text: (method ? method.reference : row.reference) ?? '' };
    case 'name':
      return { kind: 'name', text: row.name };
    case 'label':
      return { kind: 'text', text: row.label ?? '' };
    case 'unit':
      return 'unit' in row || row.kind !== 'choice'
        ? { kind: 'unit', text: ('unit' in row && row.unit) || '' }
        : { kind: undefined, text: '' };
    default:
      if (row.kind === 'calc' || row.kind === 'check' || row.kind === 'series')
        return formulaContent(row, method);
      if ('entry' in row) return { kind: row.kind === 'choice' ? 'choice' : 'entry', text: row.entry };
      return { kind: undefined, text: '' };
  }
}

/** A cell of a table as a person types it. */
function cellText(cell: Cell): string {
  return cell === null ? '' : `${cell}`;
}

/** What a person typed, as a cell of a table keeps it: plain numbers as numbers, all else as typed. */
export function cellFromText(text: string, column: GivenColumn): Cell {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if ((column.type ?? 'number') !== 'number') return trimmed;
  const number = Number(trimmed);
  return Number.isFinite(number) && String(number) === trimmed ? number : trimmed;
}
