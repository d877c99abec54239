import { type Edit, type Row, replaceRow } from '../../../document/index.ts';
import { type Notebook, type Trial, tryEntry } from '../../../notebook/index.ts';
import { readEntry, readUnit } from '../../../units/index.ts';
import type { EditInHand } from '../../view-model/edit-in-hand.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';
import { entryFromScreen, entryFromUnit } from './carry-unit.ts';
import { withoutEquals } from './cell-edits.ts';

/** A text typed for the value of a line, and where. */
export type TypedValue = Pick<EditInHand, 'place' | 'draft' | 'units'>;

/** The line of the other kind that a text would make: of a given a calculated line, and the reverse. */
export interface OtherKind {
  readonly row: Extract<Row, { kind: 'calc' | 'given' }>;
  /** Whether the text alone decides: nothing stands there yet, and only the other kind can take it. */
  readonly decided: boolean;
  /** What the formula comes to, of a calculated line. */
  readonly trial?: Trial;
}

/**
 * What a text would make of the given or calculated line it is typed on, where it is meant for the other kind; undefined
 * where it is not. Id, name, description, unit, source and note of the line stay.
 */
export function otherKind(notebook: Notebook, typed: TypedValue): OtherKind | undefined {
  const found = findPlace(notebook.book, typed.place);
  if (found?.kind !== 'row' || typed.place.field !== 'value' || typed.draft.trim() === '') return undefined;
  const { row } = found;
  if (row.kind === 'given') return asCalculated(notebook, typed, row);
  return row.kind === 'calc' ? asGiven(notebook, typed, row) : undefined;
}

/** The edit that puts a line of the other kind where one is. */
export function otherKindEdit({ sheet, part, item }: CellPlace, { row }: OtherKind): Edit {
  const words = row.kind === 'calc' ? 'a calculated line' : 'a given value';
  return { ...replaceRow({ sheet, part, row: item }, row), label: `make ${row.name} ${words}` };
}

function asCalculated(
  notebook: Notebook,
  { place, draft, units }: TypedValue,
  row: Extract<Row, { kind: 'given' }>,
): OtherKind | undefined {
  const formula = withoutEquals(draft);
  const isMarked = formula !== draft.trim();
  if (formula === '') return undefined;
  const id = `${place.sheet}.${row.name}`;
  const read = tryEntry(notebook, id, entryFromScreen(notebook, place, units, draft));
  const isRefused = read.problems.some(({ severity }) => severity === 'error');
  if (!isRefused && read.value?.kind !== 'text') return undefined;
  const trial = notebook.tryFormula(id, formula);
  if (!isMarked && !isFormula(trial)) return undefined;
  const { kind: _, entry, optional, toLink: __, ...kept } = row;
  const isBlank = entry.trim() === '' && optional === undefined;
  return {
    row: { ...kept, kind: 'calc', formula },
    decided: isBlank && (isMarked || isRefused),
    trial,
  };
}

/** Whether a text says what lines of the book say: words and slips of the finger seldom do. */
function isFormula({ checked, problems }: Trial): boolean {
  return checked.whole && checked.references.size > 0 && !problems.some(({ code }) => /-unknown$/.test(code));
}

function asGiven(
  notebook: Notebook,
  { draft, units }: TypedValue,
  row: Extract<Row, { kind: 'calc' }>,
): OtherKind | undefined {
  // A given has no room for what is stated in place of the formula.
  if (row.stated !== undefined) return undefined;
  const { registry } = notebook.model;
  const written = withoutEquals(draft);
  const entry = entryFromUnit(notebook, row.unit, units, written);
  const unit = (row.unit ?? '').trim() === '' ? undefined : readUnit(row.unit ?? '', registry);
  if (unit?.ok === false) return undefined;
  const read = readEntry(entry, registry, unit?.value);
  if (!read.ok || (read.value.kind !== 'number' && read.value.kind !== 'point')) return undefined;
  // The value that is typed takes the place of them all.
  const { kind: _, formula, by: __, methods, link, ...kept } = row;
  const { range, optional } = link?.kind === 'given' ? link : {};
  const limits = { ...(range && { range }), ...(optional !== undefined && { optional }) };
  return {
    row: { ...kept, ...limits, kind: 'given', entry },
    decided: formula?.trim() === '' && !methods && written === draft.trim(),
  };
}
