import type { Book, Edit } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { contentInHand } from '../editing/cells/enter-draft.ts';
import type { EditInHand } from '../view-model/edit-in-hand.ts';
import { titleFieldOf } from '../view-model/place.ts';
import { placeAfter } from './follow-place.ts';
import { isChanged } from './way-out.ts';

/** What was typed for a place that the book has no more. */
export interface Strayed {
  readonly draft: string;
}

/** What is in hand now, or what lost its place; nothing where nothing had been typed. */
export type Followed = EditInHand | { readonly strayed: Strayed } | undefined;

/**
 * What is in hand after somebody else's edit: it follows its place, says where that holds another text by now, and
 * strays where the place went. `notebook` has the edit already.
 */
export function followEdit(hand: EditInHand, edit: Edit, before: Book, notebook: Notebook): Followed {
  if (titleFieldOf(hand.place)) return onNewContent(hand, notebook);
  const place = placeAfter(hand.place, edit, before, notebook.book);
  if (!place) return stray(hand);
  const { sheet, part, item } = hand.place;
  const stands = place.sheet === sheet && place.part === part && place.item === item;
  return onNewContent(stands ? hand : { ...hand, place }, notebook);
}

/** What was noted of an earlier page, in the book as it is now. */
export function reopenEdit(noted: EditInHand, notebook: Notebook): Followed {
  return onNewContent({ ...noted, composing: false }, notebook);
}

function onNewContent(hand: EditInHand, notebook: Notebook): Followed {
  const { kind, text } = contentInHand(notebook, hand.place, hand.units, hand.kind, hand.side);
  if (kind !== hand.kind) return stray(hand);
  if (text === hand.held) return hand;
  // Whoever has typed nothing yet goes on from what is there now.
  if (!isChanged(hand)) return { ...hand, held: text, draft: text };
  const holds = text === '' ? 'is blank' : `says “${text}”`;
  return {
    ...hand,
    held: text,
    remarks: [
      `this place was changed meanwhile and ${holds}; Enter puts what you typed in its place, Escape leaves it`,
    ],
  };
}

function stray(hand: EditInHand): Followed {
  return isChanged(hand) ? { strayed: { draft: hand.draft } } : undefined;
}
