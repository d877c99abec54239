import { type Book, type Cell, CHUNK_CELLS, type GivenColumn } from '../../document/index.ts';
import type { CellPlace } from '../session/place.ts';
import { type Found, findPlace } from './find-place.ts';

/** What kind of text a cell holds. */
export type ContentKind = 'formula' | 'entry' | 'unit' | 'name' | 'text' | 'choice' | 'prose';

/** The text of a cell as a person would type it; `kind` is undefined where nothing can be typed. */
export interface CellContent {
  readonly kind: ContentKind | undefined;
  readonly text: string;
}

/** What the cell at a place holds. */
export function cellContent(book: Book, place: CellPlace): CellContent {
  const found = findPlace(book, place);
  return found ? contentOf(found, place.field, place.item) : { kind: undefined, text: '' };
}

/** Where what a cell holds is written: a calculated cell of a table has it from its column’s heading. */
export function writtenAt(book: Book, place: CellPlace): CellPlace {
  const found = findPlace(book, place);
  const calculated = found?.kind === 'cell' && found.column.kind !== 'given';
  return calculated ? { ...place, item: 'head' } : place;
}

function contentOf(found: Found, field: string, item: string): CellContent {
  switch (found.kind) {
    case 'prose':
      return { kind: 'prose', text: found.part.text };
    case 'title':
      return { kind: 'text', text: found.part.title ?? '' };
    case 'row':
      return rowContent(found.row, field);
    case 'column': {
      const { column } = found;
      if (item !== 'head') return rowContent(column, field);
      return column.kind === 'given'
        ? { kind: 'text', text: column.label ?? column.name }
        : { kind: 'formula', text: column.formula };
    }
    case 'cell': {
      const { column, row } = found;
      if (column.kind !== 'given') return { kind: undefined, text: '' };
      return { kind: column.options ? 'choice' : 'entry', text: cellText(cellOf(column, row)) };
    }
  }
}

type Line = Extract<Found, { kind: 'row' }>['row'] | Extract<Found, { kind: 'column' }>['column'];

function rowContent(row: Line, field: string): CellContent {
  switch (field) {
    case 'reference':
      return { kind: 'text', text: row.reference ?? '' };
    case 'name':
      return { kind: 'name', text: row.name };
    case 'label':
      return { kind: 'text', text: row.label ?? '' };
    case 'unit':
      return 'unit' in row || row.kind !== 'choice'
        ? { kind: 'unit', text: ('unit' in row && row.unit) || '' }
        : { kind: undefined, text: '' };
    default:
      if ('formula' in row) return { kind: 'formula', text: row.formula };
      if ('entry' in row) return { kind: row.kind === 'choice' ? 'choice' : 'entry', text: row.entry };
      return { kind: undefined, text: '' };
  }
}

/** One cell of a given column. */
export function cellOf(column: GivenColumn, row: number): Cell {
  return column.chunks[Math.floor(row / CHUNK_CELLS)]?.[row % CHUNK_CELLS] ?? null;
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
