import type { Book } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { displayUnit } from '../../../record/index.ts';
import { isBareNumber, readUnit, type Unit } from '../../../units/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';
import { cellContent } from './cell-content.ts';
import { cellValueText } from './cell-value-text.ts';
import { statementAt } from './state-target.ts';

/** The unit in which a place reads a number that is written without one; undefined where it reads none so. */
export function unitOfBareNumbers(book: Book, place: CellPlace): string | undefined {
  const found = findPlace(book, place);
  if (found?.kind === 'row') {
    const { row } = found;
    const isEntry = row.kind === 'given' || (row.kind === 'calc' && row.stated !== undefined);
    return isEntry && place.field === 'value' ? row.unit : undefined;
  }
  if (found?.kind !== 'cell') return undefined;
  const { column } = found;
  if (column.kind === 'calc' && statementAt(book, place)) return column.unit;
  return column.kind === 'given' && (column.type ?? 'number') === 'number' ? column.unit : undefined;
}

/**
 * The unit that the page shows beside what a place holds, in which a person means the bare numbers they type there: that
 * of the line or column, of a line without one that of its entry, in the system that is switched on.
 */
export function displayedUnit(notebook: Notebook, place: CellPlace, view: UnitsView): string | undefined {
  const { registry } = notebook.model;
  const own = unitOfBareNumbers(notebook.book, place);
  const unit = ownUnit(notebook, own) ?? unitOfEntry(notebook, place);
  return unit ? displayUnit(unit, view, registry).text : own;
}

/**
 * The unit in which the limits of a given line or column are meant where they have none of their own: as written in the
 * book, whatever system is switched on. Undefined where a limit needs a unit, or none exists.
 */
export function unitOfLimits(notebook: Notebook, place: CellPlace): string | undefined {
  const found = findPlace(notebook.book, place);
  const line = found?.kind === 'row' ? found.row : found?.kind === 'column' ? found.column : undefined;
  if (line?.kind !== 'given') return undefined;
  const unit =
    ownUnit(notebook, line.unit) ??
    (found?.kind === 'row' ? unitOfEntry(notebook, { ...place, field: 'value' }) : undefined);
  return unit === undefined || unit.text === '-' ? undefined : unit.text;
}

function ownUnit({ model }: Notebook, own: string | undefined): Unit | undefined {
  const unit = own === undefined || own.trim() === '' ? undefined : readUnit(own, model.registry);
  return unit?.ok ? unit.value : undefined;
}

/** The unit that came with the entry of a line that has none of its own. */
function unitOfEntry(notebook: Notebook, place: CellPlace): Unit | undefined {
  const found = findPlace(notebook.book, place);
  if (found?.kind !== 'row' || found.row.kind !== 'given' || place.field !== 'value') return undefined;
  const result = notebook.result(`${place.sheet}.${found.row.name}`);
  if (result.status !== 'ok' || result.value.kind !== 'number') return undefined;
  const { unit } = result.value;
  return unit.point === 'date' ? undefined : unit;
}

/** What a person typed while the page shows these units, as it is written down. */
export function entryFromScreen(notebook: Notebook, place: CellPlace, view: UnitsView, text: string): string {
  return carryUnit(text, displayedUnit(notebook, place, view), unitWritten(notebook, place));
}

/** The same for a line of a unit, whatever kind of line it is. */
export function entryFromUnit(
  notebook: Notebook,
  own: string | undefined,
  view: UnitsView,
  text: string,
): string {
  const unit = ownUnit(notebook, own);
  return carryUnit(text, unit && displayUnit(unit, view, notebook.model.registry).text, unit?.text);
}

/** What is written down, as it is typed while the page shows these units. */
export function entryForScreen(notebook: Notebook, place: CellPlace, view: UnitsView, text: string): string {
  return carryUnit(text, unitWritten(notebook, place), displayedUnit(notebook, place, view));
}

/** The unit of bare numbers, spelled as units on the screen are. */
function unitWritten(notebook: Notebook, place: CellPlace): string | undefined {
  const own = unitOfBareNumbers(notebook.book, place);
  return ownUnit(notebook, own)?.text ?? own;
}

/** What is carried from a place: what is written there, of a calculated cell of a table its value, and its unit. */
export function readCarried(
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
export function carryUnit(text: string, from: string | undefined, to: string | undefined): string {
  const hasUnit = from !== undefined && from !== '' && from !== '-';
  return hasUnit && from !== to && isBareNumber(text) ? `${text.trim()} ${from.replace(/^El\. /, '')}` : text;
}
