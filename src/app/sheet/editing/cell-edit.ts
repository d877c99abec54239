import type { CellPlace } from '../../session/place.ts';

/** What a cell holds, for its editor. */
export type CellKind = 'formula' | 'entry' | 'unit' | 'name' | 'text' | 'choice' | 'prose';

/** A cell being edited: the text it held, and the character that began the edit by typing over. */
export interface CellEdit {
  readonly place: CellPlace;
  readonly kind: CellKind;
  readonly value: string;
  readonly seed?: string;
}

/** Where a person goes on after committing. */
export type CommitMove = 'down' | 'up' | 'right' | 'left' | 'stay';

/** What an editor says when the person is done. */
export interface Commit {
  readonly value: string;
  readonly move: CommitMove;
}
