import { type Type, typeOfUnit } from '../../../language/index.ts';
import type { Item, Notebook } from '../../../notebook/index.ts';
import { readEntry, readUnit } from '../../../units/index.ts';
import type { Session } from '../../session/session.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { matching } from '../completion/matching.ts';
import { fits, unitSuggestions } from '../completion/suggest-units.ts';
import { MOST_SUGGESTIONS, type Suggestion } from '../completion/suggestion.ts';
import { formulaNote } from '../formula/formula-note.ts';
import { type Note, problemNote } from '../notes/note.ts';
import { valueWords } from '../notes/quantity-words.ts';
import { itemOfPlace } from './place-item.ts';
import type { Reader } from './reader.ts';

/**
 * Reads units of a line or column: what is no unit is refused; else the result in that unit. Offers the units of the
 * dimension, preferred ones first, and all of them as soon as something else is typed.
 */
export function unitReader(session: Session, place: CellPlace): Reader {
  const { notebook } = session;
  const item = itemOfPlace(notebook, place);
  const wanted = item && typeOf(item, notebook);
  const all = unitSuggestions(notebook.model.registry, wanted, notebook.book.settings.system);
  const fitting = wanted ? all.filter(({ rank }) => rank >= fits) : all;
  return {
    note: (text) => unitNote(session, item, text),
    suggest: (typed) => offered(typed, fitting, all),
  };
}

function offered(
  typed: string | undefined,
  fitting: readonly Suggestion[],
  all: readonly Suggestion[],
): readonly Suggestion[] {
  const written = typed?.trim() ?? '';
  if (written === '') return fitting.slice(0, MOST_SUGGESTIONS);
  const found = matching(written, fitting);
  const rest = found.length > 0 ? found : matching(written, all);
  return rest.length === 1 && rest[0]?.text === written ? [] : rest.slice(0, MOST_SUGGESTIONS);
}

/** What a line holds, whatever its unit column says. */
function typeOf(item: Item, notebook: Notebook): Type | undefined {
  const known = (type: Type): Type | undefined => (type.kind === 'unknown' ? undefined : type);
  if (item.kind === 'formula' && item.row.kind === 'check') {
    const { syntax } = item.checked;
    if (syntax.kind !== 'comparison') return undefined;
    const { from, to } = syntax.left;
    return known(notebook.typeInPlace(item.id, item.checked.text.slice(from, to)));
  }
  if (item.kind === 'formula' || item.kind === 'formula column') {
    const { formula } = item;
    return known(notebook.typeInPlace(item.id, formula));
  }
  if (item.unit) return typeOfUnit(item.unit);
  if (item.kind !== 'input' || item.row.kind !== 'given') return undefined;
  const entry = readEntry(item.row.entry, notebook.model.registry);
  const unit = entry.ok && 'unit' in entry.value ? entry.value.unit : undefined;
  return unit && unit.text !== '' ? typeOfUnit(unit) : undefined;
}

function unitNote(session: Session, item: Item | undefined, text: string): Note | undefined {
  const { notebook } = session;
  const written = text.trim();
  const read = readUnit(written, notebook.model.registry);
  if (!read.ok) {
    const [first] = read.problems;
    return first && problemNote(first, 'refused');
  }
  if (item?.kind === 'formula' || item?.kind === 'formula column') {
    const { formula } = item;
    if (formula.trim() === '') return undefined;
    const trial = notebook.tryFormula(item.id, formula, { unit: written });
    return formulaNote(
      { ...trial, problems: trial.problems.map((found) => ({ ...found, fixes: [] })) },
      session,
    );
  }
  if (item?.kind !== 'input' || item.row.kind !== 'given' || written === '') return undefined;
  const entry = readEntry(item.row.entry, notebook.model.registry, read.value);
  if (!entry.ok) return entry.problems[0] && { ...problemNote(entry.problems[0]), fixes: [] };
  if (entry.value.kind !== 'number' && entry.value.kind !== 'point') return undefined;
  if (entry.value.unit.text === read.value.text) return undefined;
  const value = valueWords({ kind: 'number', si: entry.value.si, unit: read.value }, session);
  return { kind: 'result', text: `${item.row.entry} is ${value}` };
}
