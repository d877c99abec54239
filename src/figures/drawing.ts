import type { Markup } from '../markup/index.ts';

/** In what units a drawing is labelled: those of the book's lines, or the usual ones of a system. */
export type FigureView = 'written' | 'SI' | 'US';

/** A table of what a drawing shows, for those who do not see it. */
export interface DrawingTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * A drawing. `svg` carries its own name and text alternative, has no style of its own (the page includes
 * `figureCss`), and its ids begin with the id of its part.
 */
export interface Drawing {
  readonly svg: Markup;
  readonly title: string;
  /** What the drawing shows, in words. */
  readonly description: string;
  readonly table?: DrawingTable;
}
