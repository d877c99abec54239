import { tryEntry } from '../../../notebook/index.ts';
import { barePercent } from '../../../units/index.ts';
import { entryFromScreen } from '../../editing/cells/carry-unit.ts';
import { reasonEdit } from '../../editing/cells/state-value.ts';
import type { Session } from '../../session/session.ts';
import type { EditInHand, Typing } from '../../view-model/edit-in-hand.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { withKindOffer } from '../notes/kind-offer.ts';
import { type Note, problemNote } from '../notes/note.ts';
import { typeWords, valueWords } from '../notes/quantity-words.ts';
import { reasonNote, statementNote } from '../notes/statement-note.ts';
import { itemOfPlace } from './place-item.ts';
import type { Reader } from './reader.ts';

/** Reads entries of a line or column: what is wrong, or the value where it is not plain from the digits; of a stated one what it stands for. */
export function entryReader(session: Session, place: CellPlace, how: Typing = { kind: 'entry' }): Reader {
  return {
    note: (draft) => {
      const { kind, side, typedOver = false } = how;
      const typed = { kind, ...(side && { side }), typedOver, place, draft, units: session.units };
      const note = statementNote(session, typed) ?? entryNote(session, place, draft);
      return withKindOffer(session, typed, note);
    },
  };
}

/** Reads the reason for a stated value: nothing can be wrong with it but that it is a number. */
export function reasonReader(session: Session, hand: EditInHand): Reader {
  return {
    note: (draft) => {
      const edit = reasonEdit(session.notebook, { ...hand, draft });
      const [wrong] = edit.ok ? [] : edit.problems;
      return wrong ? problemNote(wrong) : reasonNote(session, { ...hand, draft });
    },
  };
}

function entryNote(session: Session, place: CellPlace, text: string): Note | undefined {
  const item = itemOfPlace(session.notebook, place);
  if (!item || (item.kind !== 'input' && item.kind !== 'input column')) return undefined;
  const meant = entryFromScreen(session.notebook, place, session.units, text);
  const { value, problems } = tryEntry(session.notebook, item.id, meant);
  // Where the unit came with the entry before, the screen puts it behind a bare number, and the doubt is the same.
  const [first] =
    value?.kind === 'number'
      ? [barePercent(text, value.si, value.unit), ...problems].filter((one) => one !== undefined)
      : problems;
  if (first) return problemNote(first);
  if (value?.kind !== 'number' || /^\s*[-+]?[\d.]+\s*$/.test(meant)) return undefined;
  // Where the line has a unit its kind is known; where it has none, the entry decides it.
  const { dimension, angle } = value.unit;
  const words = item.unit ? '' : typeWords({ ...item.type, kind: 'number', dimension, angle }, session);
  return { kind: 'result', text: `= ${valueWords(value, session)}${words === '' ? '' : `, ${words}`}` };
}
