import type { PastedOver } from '../editing/clipboard/block.ts';
import type { CellPlace } from '../view-model/place.ts';

/** What the page asks the app for: a dialog with more of the thing at a place, with the lines that it can be linked to or with rows for its table, its table as CSV, or the methods of its line in the panel. */
export type RequestKind = 'details' | 'link' | 'rows' | 'csv' | 'methods';

/** What is asked for with the place, and what was pasted from there on. */
export interface AppRequest {
  readonly about: RequestKind;
  readonly place: CellPlace;
  readonly pasted?: PastedOver;
}
