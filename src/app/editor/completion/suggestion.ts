/** How many suggestions are offered at once: twice what a list shows. */
export const MOST_SUGGESTIONS = 60;

/** One thing that may be written at a place of a formula. */
export interface Suggestion {
  readonly kind: 'name' | 'function' | 'unit' | 'text';
  /** As the list shows it, and as what is typed is matched with it. */
  readonly text: string;
  /** What is written, if it is not the text itself. */
  readonly insert?: string;
  /** How many characters before the end of what is written the caret then stands. */
  readonly back?: number;
  /** What it is, in a few words. */
  readonly detail: string;
  /** Its value with unit, found when the list is drawn. */
  readonly value?: () => string;
  /** What more there is to know of it. */
  readonly help?: string;
  /** How a function is called. */
  readonly signature?: string;
  /** How many characters at the beginning of the text are the key of another sheet and its point. */
  readonly sheet?: number;
  /** Among equally good matches the greater comes first. */
  readonly rank: number;
}
