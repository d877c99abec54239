import { type Fix, type Outcome, succeed } from '../../../diagnostics/index.ts';
import type { Edit } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { itemAt } from '../../view-model/places.ts';
import { cellContent } from './cell-content.ts';
import { enterText } from './cell-edits.ts';
import { type OtherKind, otherKind, otherKindEdit } from './other-kind.ts';

/** The edit that applies a remedy of a line, or of the formula of a column, to what is written there. */
export function mendAt({ book }: Pick<Notebook, 'book'>, place: CellPlace, fix: Fix): Outcome<Edit> {
  const { text } = cellContent(book, place);
  return enterText(book, place, text.slice(0, fix.from) + fix.insert + text.slice(fix.to));
}

/** The edit that applies the first remedy offered for the line at a place; undefined where none is. */
export function firstRemedy(notebook: Notebook, place: CellPlace): Outcome<Edit> | undefined {
  const item = itemAt(notebook, place);
  // Remedies are meant for a text as it is written: that of a line's value, or of a column's formula.
  const written =
    item === undefined || item.kind === 'input column'
      ? undefined
      : writtenPlace(place, item.kind === 'formula column');
  const [fix] = notebook
    .problems()
    .filter(({ cell }) => cell === item?.id)
    .flatMap(({ fixes }) => fixes);
  if (!written || fix) return written && fix && mendAt(notebook, written, fix);
  const other = formulaOnGiven(notebook, written);
  return other && succeed(otherKindEdit(written, other));
}

/** The calculated line that a given would be whose entry is a formula, which it cannot read. */
function formulaOnGiven(notebook: Notebook, place: CellPlace): OtherKind | undefined {
  const { kind, text } = cellContent(notebook.book, place);
  // As written, whatever units are shown.
  return kind === 'entry' ? otherKind(notebook, { place, draft: text, units: 'written' }) : undefined;
}

function writtenPlace(place: CellPlace, inColumn: boolean): CellPlace | undefined {
  if (!inColumn) return { ...place, field: 'value' };
  // Of a cell of the table nothing is written that could be mended; its column's formula is, at its head and below.
  if (/^r\d+$/.test(place.item)) return undefined;
  return place.item === 'head' ? place : { ...place, field: 'value' };
}
