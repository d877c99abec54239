import type { Book } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { isBareNumber, readUnit } from '../../units/index.ts';
import type { CellPlace } from '../session/place.ts';
import type { UnitsView } from '../session/session.ts';
import { unitShown } from '../session/shown.ts';
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

/** The unit in which the page shows the bare numbers of a place, and a person means what they type there. */
export function unitOnScreen(notebook: Notebook, place: CellPlace, view: UnitsView): string | undefined {
  const own = unitOfBareNumbers(notebook.book, place);
  const unit = own === undefined ? undefined : readUnit(own, notebook.model.registry);
  return unit?.ok ? unitShown(unit.value, view, notebook.model.registry).text : own;
}

/** What a person typed while the page shows these units, as it is written down. */
export function typedOnScreen(notebook: Notebook, place: CellPlace, view: UnitsView, text: string): string {
  return carried(text, unitOnScreen(notebook, place, view), unitOfBareNumbers(notebook.book, place));
}

/** What is written down, as it is typed while the page shows these units. */
export function writtenOnScreen(notebook: Notebook, place: CellPlace, view: UnitsView, text: string): string {
  return carried(text, unitOfBareNumbers(notebook.book, place), unitOnScreen(notebook, place, view));
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
  return hasUnit && from !== to && isBareNumber(text) ? `${text.trim()} ${from.replace(/^El\. /, '')}` : text;
}
