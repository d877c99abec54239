import { computedInWords, differenceWords, wordsOfValue } from '../../../record/index.ts';
import { statedDraft } from '../../editing/cells/enter-draft.ts';
import { targetAt } from '../../editing/cells/state-target.ts';
import type { Session } from '../../session/session.ts';
import type { EditInHand } from '../../view-model/edit-in-hand.ts';
import { type Note, problemNote } from './note.ts';

/** What is typed over a computed value, and where. */
type Typed = Pick<EditInHand, 'place' | 'kind' | 'side' | 'draft' | 'typedOver' | 'units'>;

/**
 * The line below a value typed over a computed one: what it is stated in place of, and by how much it differs; undefined
 * where what is typed states nothing.
 */
export function statementNote({ notebook, units }: Session, typed: Typed): Note | undefined {
  const stated = statedDraft(notebook, typed);
  if (!stated) return undefined;
  if (!stated.ok) {
    const [first] = stated.problems;
    return first && problemNote(first);
  }
  const { target, trial } = stated.value;
  const { value, computed, difference } = trial;
  const side = target.kind === 'side' ? ` as the ${target.side}` : '';
  const by = difference && `, difference ${differenceWords(notebook, difference, computed, units)}`;
  const shown = value ? wordsOfValue(notebook, value, units) : stated.value.entry;
  return {
    kind: 'result',
    text: `states ${shown}${side} in place of the computed ${computedInWords(notebook, computed, units)}${by ?? ''}`,
  };
}

/** The line below the reason for a stated value. */
export function reasonNote({ notebook }: Session, { place, side, draft }: Typed): Note | undefined {
  const stated = targetAt(notebook.book, place, side);
  if (!stated?.statement) return undefined;
  const { entry, reason, reasonFor } = stated.statement;
  const isAsItWas = reasonFor !== undefined && draft.trim() === reason.trim();
  const hint =
    draft.trim() === ''
      ? 'Enter leaves it open'
      : isAsItWas
        ? `this was given for ${reasonFor}: Enter confirms it, Escape leaves it to be confirmed`
        : undefined;
  return {
    kind: 'remark',
    text: `why ${entry} is stated for ${stated.called}`,
    ...(hint !== undefined && { hint }),
  };
}
