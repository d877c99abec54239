import { fail, type Outcome, type Problem, problem, succeed } from '../../diagnostics/index.ts';
import { type Book, type Edit, setTitle } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { readEntry, readUnit } from '../../units/index.ts';
import type { EditInHand } from '../session/edit-in-hand.ts';
import { type CellPlace, titleFieldOf } from '../session/place.ts';
import type { UnitsView } from '../session/units-view.ts';
import { typedOnScreen, writtenOnScreen } from './carried-unit.ts';
import { type CellContent, cellContent, writtenAt } from './cell-content.ts';
import { enterText } from './cell-edits.ts';
import { isNumberOnScreen } from './number-on-screen.ts';
import { otherKind, otherKindEdit } from './other-kind.ts';
import { putText } from './put-text.ts';

/** What a place holds as a person edits it while the page shows these units; a calculated cell holds its column’s formula. */
export function contentInHand(notebook: Notebook, place: CellPlace, view: UnitsView): CellContent {
  const { book } = notebook;
  const title = titleFieldOf(place);
  if (title) return { kind: 'text', text: book.title[title] };
  const source = writtenAt(book, place);
  const { kind, text } = cellContent(book, source);
  return { kind, text: kind === 'entry' ? writtenOnScreen(notebook, source, view, text) : text };
}

/**
 * The edit that puts a draft into the book; undefined where it means what is there. Refused where it cannot stand there.
 * `offered`: the person takes the offer to make the line one of the other kind with it.
 */
export function draftEdit(notebook: Notebook, hand: EditInHand, offered = false): Outcome<Edit | undefined> {
  const { place, kind, held, draft, typedOver, units } = hand;
  const other = kind === 'entry' || kind === 'formula' ? otherKind(notebook, hand) : undefined;
  if (other && (offered || other.decided)) return succeed(otherKindEdit(place, other));
  const { book } = notebook;
  const title = titleFieldOf(place);
  if (title) return succeed(setTitle(title, draft));
  if (kind === 'name') return putText(notebook, place, draft);
  if (kind === 'unit') {
    const unit = readUnit(draft.trim(), notebook.model.registry);
    return unit.ok ? enterText(book, place, draft) : unit;
  }
  const source = writtenAt(book, place);
  if (kind === 'formula' && typedOver && held.trim() !== '' && isValue(draft, notebook))
    return fail(valueOverFormula(draft.trim(), held.trim()));
  if (kind !== 'entry') return ifNew(book, source, draft);
  if (isNumberOnScreen(notebook, source, units, draft)) return succeed(undefined);
  return enterText(book, source, typedOnScreen(notebook, source, units, draft));
}

/** Whether a text is a number or a date alone, as people type values. */
function isValue(text: string, { model }: Notebook): boolean {
  const read = readEntry(text, model.registry);
  return read.ok && (read.value.kind === 'number' || read.value.kind === 'point');
}

function valueOverFormula(written: string, formula: string): Problem {
  const shown = formula.length > 60 ? `${formula.slice(0, 59)}…` : formula;
  return problem('value-over-formula', { from: 0, to: written.length }, { written, formula: shown });
}

/** White space at the ends of a formula is none of its own. */
function ifNew(book: Book, place: CellPlace, draft: string): Outcome<Edit | undefined> {
  const { kind, text } = cellContent(book, place);
  if (kind === 'formula' && oneLine(draft).trim() === oneLine(text).trim()) return succeed(undefined);
  return enterText(book, place, draft);
}

/** A formula has one line, whatever is pasted. */
export function oneLine(text: string): string {
  return text.replace(/\s*[\r\n]+\s*/g, ' ');
}
