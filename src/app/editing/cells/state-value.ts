import { fail, type Outcome, type Problem, problem, succeed } from '../../../diagnostics/index.ts';
import type { Edit, Statement } from '../../../document/index.ts';
import { type Notebook, SIDES, type Side, type StatedTrial, tryStated } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { displayUnit } from '../../../record/index.ts';
import { readEntry } from '../../../units/index.ts';
import type { EditInHand } from '../../view-model/edit-in-hand.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { COPIED_FROM, carryStatement, confirmReason, stateAnew } from './carry-reason.ts';
import { carryUnit, entryFromUnit } from './carry-unit.ts';
import { type StateTarget, statedPlaceOf, statementEdit, targetAt, targetsAt } from './state-target.ts';

/** A value that a person typed to stand in place of a computed one. */
export interface TypedStatement {
  readonly target: StateTarget;
  /** The entry as it is written down: a bare number is one in the unit shown. */
  readonly entry: string;
  /** What it is understood as, beside what it stands in place of. */
  readonly trial: StatedTrial;
}

/**
 * What a text typed or pasted over a calculated line, a check or a calculated cell states; undefined where it is no value
 * but a formula. A value on a check has to say which side it is unless one is `asked` for: both readings are offered.
 * Where a value of a line was asked for by that word, whatever is typed is one.
 */
export function typedStatement(
  notebook: Notebook,
  place: CellPlace,
  view: UnitsView,
  text: string,
  asked?: Side | 'value',
): Outcome<TypedStatement> | undefined {
  const [first, second] = targetsAt(notebook.book, place);
  const own = asked && targetAt(notebook.book, place, asked === 'value' ? undefined : asked);
  if (own) return text.trim() === '' ? undefined : stating(notebook, own, view, text);
  if (!first || text.trim() === '') return undefined;
  // The formula of a line that has none yet is still to be written.
  if (first.kind !== 'cell' && !first.statement && first.row.formula?.trim() === '') return undefined;
  if (first.kind !== 'side')
    return isValueFor(notebook, first, text) ? stating(notebook, first, view, text) : undefined;
  const side = sideSaid(text);
  const value = text.replace(SIDE, '');
  const target = side === 'demand' ? first : second;
  if (side && target && isValueFor(notebook, target, value)) return stating(notebook, target, view, value);
  return isValueFor(notebook, first, text) ? fail(whichSide(text)) : undefined;
}

function whichSide(text: string): Problem {
  const written = text.trim();
  const span = { from: 0, to: text.length };
  const fixes = SIDES.map((side) => ({ label: `state the ${side}`, ...span, insert: `${side} ${written}` }));
  return problem('stated-which-side', span, { written }, fixes);
}

function stating(
  notebook: Notebook,
  target: StateTarget,
  view: UnitsView,
  text: string,
): Outcome<TypedStatement> {
  const plain = isText(notebook, target) ? withoutQuotes(notebook, text) : succeed(text);
  if (!plain.ok) return plain;
  const entry = statedEntry(notebook, target, view, plain.value);
  const trial = tryStated(notebook, statedPlaceOf(target), entry);
  const [wrong, ...others] = trial.problems.filter(({ severity }) => severity === 'error');
  return wrong ? fail(wrong, ...others) : succeed({ target, entry, trial });
}

/** The edit that states what was typed, or what was copied with its reason; one of a fresh statement is open. */
export function stateEntry({ target, entry }: TypedStatement, copiedReason?: string): Edit {
  return statementEdit(target, statementOf(target, entry, copiedReason));
}

/** What is stated by an entry at a place: with the reason it was copied with, else with the one that stands there. */
export function statementOf({ statement }: StateTarget, entry: string, copiedReason?: string): Statement {
  return copiedReason === undefined
    ? stateAnew(statement, entry)
    : carryStatement(statement, { entry, reason: copiedReason }, COPIED_FROM);
}

/**
 * The edit that puts a reason to the one value stated at a place, or confirms the one that stands there. A number alone was
 * meant for another cell.
 */
export function reasonEdit(
  { book, model }: Notebook,
  { place, side, draft }: Pick<EditInHand, 'place' | 'side' | 'draft'>,
): Outcome<Edit | undefined> {
  const target = targetAt(book, place, side);
  const statement = target?.statement;
  if (!statement) {
    const facts = { path: place.item, expected: 'a stated value' };
    return fail(problem('edit-place-unfit', { from: 0, to: 0 }, facts));
  }
  const reason = draft.trim();
  if (reason === statement.reason && statement.reasonFor === undefined) return succeed(undefined);
  const read = readEntry(reason, model.registry);
  if (reason !== '' && read.ok && read.value.kind === 'number')
    return fail(problem('reason-is-a-value', { from: 0, to: draft.length }, { written: reason }));
  const label = `give the reason for ${target.called}`;
  return succeed({ ...statementEdit(target, confirmReason({ ...statement, reason })), label });
}

/**
 * Whether a text is a value rather than a formula: a number or a date alone, on a line of truths also one of these; on a
 * line of words all that no equals sign marks as a formula.
 */
function isValueFor(notebook: Notebook, target: StateTarget, text: string): boolean {
  if (text.trim().startsWith('=')) return false;
  // The formula of a column is written at its head; what is typed into one of its cells is a value, or wrong.
  if (target.kind === 'cell' || (target.kind === 'line' && target.statement)) return true;
  if (isValue(notebook, text) || isText(notebook, target)) return true;
  const read = readEntry(text, notebook.model.registry);
  const kind = target.kind === 'line' ? notebook.model.items.get(target.id)?.type.kind : undefined;
  return kind === 'truth' && read.ok && read.value.kind === 'truth';
}

/** Whether what is typed at a place of a calculated line that comes to a text, without an equals sign, is a value for it. */
export function takesWords(notebook: Notebook, place: CellPlace): boolean {
  const [target] = targetsAt(notebook.book, place);
  return target?.kind === 'line' && isText(notebook, target);
}

function isText({ model }: Notebook, target: StateTarget): boolean {
  return target.kind !== 'side' && model.items.get(target.id)?.type.kind === 'text';
}

/** A text as it is stated; the quotation marks that a formula would need around it are none of its own. */
function withoutQuotes({ model }: Notebook, text: string): Outcome<string> {
  if (!text.trim().startsWith('"')) return succeed(text);
  const read = readEntry(text, model.registry);
  if (!read.ok) return read;
  return succeed(read.value.kind === 'text' ? read.value.text : text);
}

/** Whether a text is a number or a date alone, with the side of a check in front of it or without. */
export function isValue({ model }: Notebook, text: string): boolean {
  const read = readEntry(text.replace(SIDE, ''), model.registry);
  return read.ok && (read.value.kind === 'number' || read.value.kind === 'point');
}

/** The side of a check that a text says a value for; undefined where it names none. */
export function sideSaid(text: string): Side | undefined {
  const said = SIDE.exec(text)?.[1]?.toLowerCase();
  return SIDES.find((side) => side === said);
}

/** How the side of a check is written in front of a value that is stated for it; no formula begins so. */
const SIDE = /^\s*(demand|capacity)\s+(?=\S)/i;

/** A text typed for a target, as it is written down: a number alone takes the unit along that the page shows beside it. */
function statedEntry(notebook: Notebook, target: StateTarget, view: UnitsView, text: string): string {
  const written = text.trim();
  const own = target.kind === 'cell' ? target.column.unit : target.row.unit;
  if (own !== undefined && own.trim() !== '') return entryFromUnit(notebook, own, view, written);
  const unit =
    target.kind === 'side' ? notebook.verdict(target.id)?.[target.side]?.unit : notebook.unitOf(target.id);
  if (!unit || unit.point === 'date') return written;
  return carryUnit(written, displayUnit(unit, view, notebook.model.registry).text, undefined);
}
