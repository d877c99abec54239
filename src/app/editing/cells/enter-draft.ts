import { fail, type Outcome, problem, succeed } from '../../../diagnostics/index.ts';
import { type Book, type Edit, setTitle } from '../../../document/index.ts';
import type { Notebook, Side } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { readUnit } from '../../../units/index.ts';
import type { ContentKind, EditInHand } from '../../view-model/edit-in-hand.ts';
import { type CellPlace, titleFieldOf } from '../../view-model/place.ts';
import { choiceOptions, optionCalled, unknownOption } from '../choices/choice-options.ts';
import { findPlace } from '../find-place.ts';
import { entryForScreen, entryFromScreen } from './carry-unit.ts';
import { type CellContent, cellContent, computedContent, formulaAt, writtenAt } from './cell-content.ts';
import { enterFormula, enterText } from './cell-edits.ts';
import { isNumberOnScreen } from './number-on-screen.ts';
import { otherKind, otherKindEdit } from './other-kind.ts';
import { putText } from './put-text.ts';
import { statementAt, statementEdit, targetAt } from './state-target.ts';
import {
  reasonEdit,
  sideSaid,
  stateEntry,
  type TypedStatement,
  takesWords,
  typedStatement,
} from './state-value.ts';

/**
 * What a place holds as a person edits it while the page shows these units. A calculated cell holds its column’s formula.
 * `as` asks for one of what a calculated place may hold: the value stated there, which may be none yet, the reason for it,
 * or the formula beside it; of a check for one `side`.
 */
export function contentInHand(
  notebook: Notebook,
  place: CellPlace,
  view: UnitsView,
  as?: ContentKind,
  side?: Side,
): CellContent {
  const { book } = notebook;
  const title = titleFieldOf(place);
  if (title) return { kind: 'text', text: book.title[title] };
  if (as === 'reason') {
    const statement = statementAt(book, place, side);
    return statement ? { kind: 'reason', text: statement.reason } : NOTHING;
  }
  if (as === 'formula') return computedContent(book, formulaAt(book, place));
  if (as === 'entry') {
    const target = targetAt(book, place, side);
    if (target && (side || !target.statement)) return { kind: 'entry', text: target.statement?.entry ?? '' };
  }
  const source = writtenAt(book, place);
  const { kind, text } = cellContent(book, source);
  return { kind, text: kind === 'entry' ? entryForScreen(notebook, source, view, text) : text };
}

/**
 * What is typed over a calculated place where it is a value: over a cell of a table always, for the formula of its column
 * has its own place; over a line that comes to a text unless it begins as a formula. Undefined where that is still open.
 */
export function typedOverAs(notebook: Notebook, place: CellPlace, typed: string): 'entry' | undefined {
  if (findPlace(notebook.book, place)?.kind === 'cell') return 'entry';
  return !typed.trim().startsWith('=') && takesWords(notebook, place) ? 'entry' : undefined;
}

const NOTHING: CellContent = { kind: undefined, text: '' };

/**
 * The edit that puts a draft into the book; undefined where it means what is there. Refused where it cannot stand there.
 * `offered`: the person takes the offer to make the line one of the other kind with it.
 */
export function draftEdit(notebook: Notebook, hand: EditInHand, offered = false): Outcome<Edit | undefined> {
  const { place, kind, draft } = hand;
  const other = kind === 'entry' || kind === 'formula' ? otherKind(notebook, hand) : undefined;
  if (other && (offered || other.decided)) return succeed(otherKindEdit(place, other));
  const { book } = notebook;
  const title = titleFieldOf(place);
  if (title) return succeed(setTitle(title, draft));
  if (kind === 'name') return putText(notebook, place, draft);
  if (kind === 'reason') return reasonEdit(notebook, hand);
  if (kind === 'unit') {
    const unit = readUnit(draft.trim(), notebook.model.registry);
    return unit.ok ? enterText(book, place, draft) : unit;
  }
  const stated = statedDraft(notebook, hand);
  if (stated) return stated.ok ? succeed(stateEntry(stated.value)) : stated;
  if (kind === 'formula') return formulaDraft(book, place, draft);
  if (kind === 'choice') return choiceDraft(notebook, place, draft);
  if (kind !== 'entry') return enterText(book, writtenAt(book, place), draft);
  return entryDraft(notebook, hand);
}

/**
 * What a draft states in place of what is computed: a value typed over a formula, or one typed where a value is stated.
 * Undefined where it is anything else; a formula that is opened and becomes a value is still a formula.
 */
export function statedDraft(
  notebook: Notebook,
  {
    place,
    kind,
    side,
    draft,
    typedOver,
    units,
  }: Pick<EditInHand, 'place' | 'kind' | 'side' | 'draft' | 'typedOver' | 'units'>,
): Outcome<TypedStatement> | undefined {
  if (kind !== 'entry' && !(kind === 'formula' && (typedOver || sideSaid(draft)))) return undefined;
  // A field that was opened for a value, where none is stated yet, is for nothing else.
  const isAsked = kind === 'entry' && !typedOver && targetAt(notebook.book, place)?.kind === 'line';
  const isFresh = isAsked && statementAt(notebook.book, place) === undefined;
  return typedStatement(notebook, place, units, draft, side ?? (isFresh ? 'value' : undefined));
}

function formulaDraft(book: Book, place: CellPlace, draft: string): Outcome<Edit | undefined> {
  const source = formulaAt(book, place);
  const { text } = computedContent(book, source);
  // White space at the ends of a formula is none of its own.
  if (oneLine(draft).trim() === oneLine(text).trim()) return succeed(undefined);
  return enterFormula(book, source, draft);
}

/** An option by its value or its words; what names none is refused, so that a slip stays to be corrected. */
function choiceDraft(notebook: Notebook, place: CellPlace, draft: string): Outcome<Edit> {
  const options = choiceOptions(notebook, place);
  const blank = draft.trim() === '' ? options.find(({ value }) => value === '') : undefined;
  const found = blank ?? optionCalled(options, draft);
  return found ? enterText(notebook.book, place, found.value) : fail(unknownOption(options, draft));
}

function entryDraft(
  notebook: Notebook,
  { place, side, units, draft }: EditInHand,
): Outcome<Edit | undefined> {
  const { book } = notebook;
  const target = targetAt(book, place, side);
  // Nothing is stated by a blank, and the computed value comes back.
  if (target && draft.trim() === '') return succeed(target.statement && statementEdit(target, undefined));
  if (target?.kind === 'cell' && draft.trim() !== '')
    return fail(problem('stated-cell-formula', { from: 0, to: draft.length }, { written: draft.trim() }));
  if (isNumberOnScreen(notebook, place, units, draft)) return succeed(undefined);
  return enterText(book, place, entryFromScreen(notebook, place, units, draft));
}

/** A formula has one line, whatever is pasted. */
export function oneLine(text: string): string {
  return text.replace(/\s*[\r\n]+\s*/g, ' ');
}
