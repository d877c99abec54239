import type { SelectedText } from '../view-model/edit-in-hand.ts';

/** Where a person goes on after entering what they typed. */
export type CommitMove = 'down' | 'up' | 'right' | 'left' | 'stay';

/** What an editor says with each change of what is typed. */
export interface Typed {
  readonly text: string;
  readonly selected?: SelectedText;
}

/** What an editor says when the person is done. */
export interface Commit {
  readonly move: CommitMove;
  /** Whether the offer is taken that stands below the field. */
  readonly offered?: true;
}
