import {
  type Book,
  type Column,
  findSheet,
  type Part,
  type Prose,
  type Row,
  type Rows,
  type Sheet,
  type Table,
} from '../../document/index.ts';
import type { CellPlace } from '../view-model/place.ts';

/** What stands at a place of the book. */
export type Found =
  | {
      readonly kind: 'row';
      readonly sheet: Sheet;
      readonly part: Rows;
      readonly row: Row;
      readonly index: number;
    }
  | { readonly kind: 'column'; readonly sheet: Sheet; readonly part: Table; readonly column: Column }
  | {
      readonly kind: 'cell';
      readonly sheet: Sheet;
      readonly part: Table;
      readonly column: Column;
      readonly row: number;
    }
  | { readonly kind: 'prose'; readonly sheet: Sheet; readonly part: Prose }
  | { readonly kind: 'title'; readonly sheet: Sheet; readonly part: Exclude<Part, Prose> };

/** The part, line, column or table cell at a place; undefined if the book has none there. */
export function findPlace(book: Book, place: CellPlace): Found | undefined {
  const sheet = findSheet(book, place.sheet);
  const part = sheet?.parts.find(({ id }) => id === place.part);
  if (!sheet || !part) return undefined;
  if (part.kind === 'prose') return { kind: 'prose', sheet, part };
  if (place.item === '') return { kind: 'title', sheet, part };
  if (part.kind === 'rows') {
    const index = part.rows.findIndex(({ id }) => id === place.item);
    const row = part.rows[index];
    return row && { kind: 'row', sheet, part, row, index };
  }
  return part.kind === 'table' ? inTable(sheet, part, place) : undefined;
}

function inTable(sheet: Sheet, part: Table, { item, field }: CellPlace): Found | undefined {
  const explained = part.columns.find(({ id }) => id === item);
  if (explained) return { kind: 'column', sheet, part, column: explained };
  const column = part.columns.find(({ id }) => id === field);
  if (!column) return undefined;
  if (item === 'head') return { kind: 'column', sheet, part, column };
  const row = /^r(\d+)$/.exec(item);
  return row ? { kind: 'cell', sheet, part, column, row: Number(row[1]) } : undefined;
}
