import * as z from 'zod/mini';
import type { Immutable } from './immutable.ts';
import { formulaText, idText, lineText, noteText } from './text-schemas.ts';

/**
 * A changed formula that gives what the right one gives, whatever is entered, and why. `of` is the result, with what its
 * method is for where it has methods; `is` is the formula as it was changed.
 */
const equivalentSchema = z.strictObject({ of: lineText, is: formulaText, reason: noteText });

/** The changed formulas of one template that no input can tell from the right ones. */
export const equivalentsSchema = z.strictObject({
  template: idText,
  equivalents: z.array(equivalentSchema),
});

/** A changed formula that gives what the right one gives. */
export type Equivalent = Immutable<z.infer<typeof equivalentSchema>>;
/** Those of one template. */
export type Equivalents = Immutable<z.infer<typeof equivalentsSchema>>;
