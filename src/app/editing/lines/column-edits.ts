import {
  type Book,
  type Column,
  chunksOfCells,
  freshFor,
  insertColumn,
  joinEdits,
  moveColumn,
  removeColumn,
} from '../../../document/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';
import type { Change } from './line-edits.ts';

/** Puts a column into a table to the right of the one at a place. */
export function insertColumnBeside(book: Book, place: CellPlace, kind: 'given' | 'calc'): Change | undefined {
  const found = findPlace(book, place);
  if (found?.kind !== 'column') return undefined;
  const { sheet, part, column } = found;
  const fresh = freshFor(book, sheet);
  const id = fresh.id('k');
  const chunks = chunksOfCells(new Array<null>(part.length ?? 0).fill(null));
  const added: Column =
    kind === 'given'
      ? { id, kind, name: fresh.name('column_1'), label: 'column', unit: '-', optional: true, chunks }
      : { id, kind, name: fresh.name('column_1'), label: 'column', formula: '', unit: '' };
  const index = part.columns.indexOf(column) + 1;
  const edit = insertColumn({ sheet: place.sheet, table: part.id }, index, added);
  return { edit, place: { ...place, item: 'head', field: id } };
}

/** Moves the column at a place by one to the left or right; undefined at the edge of its table. */
export function moveColumnBy(book: Book, place: CellPlace, by: -1 | 1): Change | undefined {
  const found = findPlace(book, place);
  if (found?.kind !== 'column') return undefined;
  const { part, column } = found;
  const to = part.columns.indexOf(column) + by;
  if (to < 0 || to >= part.columns.length) return undefined;
  return { edit: moveColumn({ sheet: place.sheet, table: part.id, column: column.id }, to), place };
}

/** Takes the column at a place out of its table, and leaves the person on its neighbour. */
export function removeColumnAt(book: Book, place: CellPlace): Change | undefined {
  const found = findPlace(book, place);
  if (found?.kind !== 'column') return undefined;
  const { part, column } = found;
  const at = part.columns.indexOf(column);
  const neighbour = part.columns[at + 1] ?? part.columns[at - 1];
  const edit = joinEdits(`delete column ${part.name}.${column.name}`, [
    removeColumn({ sheet: place.sheet, table: part.id, column: column.id }),
  ]);
  return neighbour ? { edit, place: { ...place, item: 'head', field: neighbour.id } } : { edit };
}
