import type { Book } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import type { CellPlace } from '../session/place.ts';
import { cellContent } from './cell-content.ts';
import { cellValueText } from './cell-value-text.ts';
import { findPlace } from './find-place.ts';

/** The unit in which a place reads a number that is written without one; undefined where it reads none so. */
export function unitOfBareNumbers(book: Book, place: CellPlace): string | undefined {
  const found = findPlace(book, place);
  if (found?.kind === 'row') {
    const { row } = found;
    return row.kind === 'given' && place.field === 'value' ? row.unit : undefined;
  }
  if (found?.kind !== 'cell') return undefined;
  const { column } = found;
  return column.kind === 'given' && (column.type ?? 'number') === 'number' ? column.unit : undefined;
}

/** What is carried from a place: what is written there, of a calculated cell of a table its value, and its unit. */
export function carriedFrom(
  notebook: Notebook,
  place: CellPlace,
): { readonly text: string; readonly unit: string | undefined } {
  const { book } = notebook;
  const { kind, text } = cellContent(book, place);
  const found = findPlace(book, place);
  if (kind !== undefined || found?.kind !== 'cell') return { text, unit: unitOfBareNumbers(book, place) };
  const unit = notebook.unitOf(`${place.sheet}.${found.part.name}.${found.column.name}`);
  return { text: cellValueText(notebook, place), unit: unit?.text };
}

/** A text that is carried to a place with another unit: a number alone takes its unit along. */
export function carried(text: string, from: string | undefined, to: string | undefined): string {
  const hasUnit = from !== undefined && from !== '' && from !== '-';
  return hasUnit && from !== to && bareNumber.test(text) ? `${text.trim()} ${from}` : text;
}

const bareNumber = /^\s*[-−+]?(?:\d[\d,\u202f ]*)?\.?\d+(?:[eE][-+]?\d+)?\s*$/;
