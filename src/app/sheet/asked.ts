import type { CellPlace } from '../session/place.ts';

/** What the page asks the app to show in a dialog: more of the thing at a place, or rows for its table. */
export interface Asked {
  readonly about: 'details' | 'rows';
  readonly place: CellPlace;
}
