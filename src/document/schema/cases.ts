import * as z from 'zod/mini';
import type { Immutable } from './immutable.ts';
import { entryText, idText, lineText, noteText, unitText } from './text-schemas.ts';

/** How near a result must come: half a unit of the last printed digit, or a part of the value with its reason. */
const toleranceSchema = z.union([
  z.strictObject({ digits: z.number().check(z.positive()) }),
  z.strictObject({ relative: z.number().check(z.positive(), z.maximum(0.01)), reason: lineText }),
]);

/**
 * One result a case expects. `row` counts from 1 in a column. `reproduces: false` marks a value the source prints
 * and the method does not give, with the reason: the result must then differ. `by` is the independent route.
 */
const expectationSchema = z.strictObject({
  name: lineText,
  row: z.exactOptional(z.int().check(z.positive())),
  value: z.exactOptional(z.number()),
  unit: z.exactOptional(unitText),
  text: z.exactOptional(lineText),
  truth: z.exactOptional(z.boolean()),
  verdict: z.exactOptional(z.enum(['passes', 'fails', 'does not apply', 'no value'])),
  tolerance: z.exactOptional(toleranceSchema),
  reproduces: z.exactOptional(z.boolean()),
  reason: z.exactOptional(noteText),
  by: z.exactOptional(z.string().check(z.maxLength(20_000))),
});

/** One worked example: what is entered, and what must come out. */
const caseSchema = z.strictObject({
  id: idText,
  title: lineText,
  kind: z.enum(['published', 'memory', 'independent']),
  source: noteText,
  note: z.exactOptional(noteText),
  set: z.exactOptional(z.record(lineText, entryText)),
  tables: z.exactOptional(
    z.record(lineText, z.array(z.record(lineText, z.union([z.number(), entryText, z.null()])))),
  ),
  expect: z.array(expectationSchema).check(z.minLength(1)),
});

/** The cases of one template. */
export const casesSchema = z.strictObject({
  template: idText,
  cases: z.array(caseSchema).check(z.minLength(1)),
});

/** How near a result must come. */
export type Tolerance = Immutable<z.infer<typeof toleranceSchema>>;
/** One result a case expects. */
export type Expectation = Immutable<z.infer<typeof expectationSchema>>;
/** One worked example. */
export type Case = Immutable<z.infer<typeof caseSchema>>;
/** The cases of one template. */
export type Cases = Immutable<z.infer<typeof casesSchema>>;
