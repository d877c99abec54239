import * as z from 'zod/mini';
import { lineText, nameText, noteText } from './text-schemas.ts';

/** What every line and every column is called. */
export const named = {
  name: nameText,
  label: z.exactOptional(lineText),
};

/** What is said of a line, a column or a method beside it. */
export const remarks = {
  reference: z.exactOptional(lineText),
  note: z.exactOptional(noteText),
};

/**
 * What a line or column stood for in the book it was brought from without it, as `basis.H of Wharf 3`: it holds the value
 * that had there, and is to be linked to its like in this book.
 */
export const toBeLinked = { toLink: z.exactOptional(lineText) };
