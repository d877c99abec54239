import * as z from 'zod/mini';
import { lineText, nameText, noteText } from './words.ts';

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
