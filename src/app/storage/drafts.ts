import type { EditInHand } from '../view-model/edit-in-hand.ts';

/** Holds what is being typed beside the book, so that it is there again after a reload, a close or a crash. */
export interface Drafts {
  /** What was being typed in a book when its page went away. */
  readonly read: (book: string) => EditInHand | undefined;
  /** Notes what is being typed, or that nothing is; false where it cannot be noted. */
  readonly write: (book: string, draft: EditInHand | undefined) => boolean;
}

/** Drafts that live as long as the page. */
export const noDrafts: Drafts = { read: () => undefined, write: () => false };
