import * as z from 'zod/mini';
import { remarks } from './fields.ts';
import type { Immutable } from './immutable.ts';
import { entryText, formulaText, idText, lineText, OPTION_LIMIT } from './text-schemas.ts';

/** The most methods one line has. */
const METHOD_LIMIT = 100;

/**
 * One way to compute a line, for the values `for` of what chooses between them; without `for` it is the last one, for
 * all other values. Its id is its own within the line.
 */
const methodSchema = z.strictObject({
  id: idText,
  for: z.exactOptional(
    z.array(entryText.check(z.minLength(1))).check(z.minLength(1), z.maxLength(OPTION_LIMIT)),
  ),
  formula: formulaText,
  ...remarks,
});

/**
 * How a calculated line or column says what it is: by one `formula`, or by `methods`, of which the value of `by` (the
 * name of a choice, of a line that is a text, or of a text column of the same table) chooses one.
 */
export const computing = {
  formula: z.exactOptional(formulaText),
  by: z.exactOptional(lineText),
  methods: z.exactOptional(z.array(methodSchema).check(z.minLength(1), z.maxLength(METHOD_LIMIT))),
};

/** One way to compute a line; see {@link methodSchema}. */
export type Method = Immutable<z.infer<typeof methodSchema>>;
