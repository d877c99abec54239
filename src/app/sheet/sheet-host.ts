import type { Commit } from '../editor/cell-edit.ts';

/** What the parts of a page ask of the sheet they stand on. */
export interface SheetHost {
  /** Takes in what was entered into the cell being edited. */
  readonly commit: (done: Commit) => void;
  /** Ends editing without a change. */
  readonly cancel: () => void;
}
