import type { Side } from '../../notebook/index.ts';
import type { UnitsView } from '../../record/index.ts';
import type { CellPlace } from './place.ts';

/** What kind of text a cell holds; `reason` is that of a value stated there. */
export type ContentKind = 'formula' | 'entry' | 'unit' | 'name' | 'text' | 'choice' | 'prose' | 'reason';

/** The part of a text that is selected; where the caret stands if both ends are one. */
export interface SelectedText {
  readonly from: number;
  readonly to: number;
}

/** What a person is typing: where, the text the place held when they began, and what they have made of it so far. */
export interface EditInHand {
  readonly place: CellPlace;
  readonly kind: ContentKind;
  /** Of a check, the side that a value is stated for, or whose reason is given. */
  readonly side?: Side;
  /** The text that the place holds, as it was shown. */
  readonly held: string;
  readonly draft: string;
  readonly selected?: SelectedText;
  /** What was typed to choose an option, until one is found by it. */
  readonly letters?: string;
  /** Whether the first character replaced what was held, as in a spreadsheet: arrow keys then lead on. */
  readonly typedOver: boolean;
  /** Whether an input method still composes the draft: it is shown in the cell, and has no field until that is done. */
  readonly composing?: boolean;
  /** The units that the page shows, and numbers are meant in. */
  readonly units: UnitsView;
  /** Sentences that the person is to read beside the draft: why it cannot be entered, what happened to its place. */
  readonly remarks?: readonly string[];
}

/** How something is typed, where that decides what it means: over what was held, for one side of a check. */
export type Typing = Pick<EditInHand, 'kind'> & Partial<Pick<EditInHand, 'side' | 'typedOver'>>;
