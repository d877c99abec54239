import * as z from 'zod/mini';
import { named, remarks, toBeLinked } from './fields.ts';
import type { Immutable } from './immutable.ts';
import { computing } from './methods.ts';
import {
  entryText,
  formulaText,
  idText,
  lineText,
  noteText,
  OPTION_LIMIT,
  unitText,
} from './text-schemas.ts';

/** The permitted values of a line or column, entered, computed or stated; both ends included, as entries. */
export const rangeSchema = z.strictObject({
  min: z.exactOptional(entryText),
  max: z.exactOptional(entryText),
});

/** What may be entered on a given. */
const limits = {
  range: z.exactOptional(rangeSchema),
  optional: z.exactOptional(z.boolean()),
};

/** A row whose value a person types. */
const givenSchema = z.strictObject({
  id: idText,
  kind: z.literal('given'),
  ...named,
  entry: entryText,
  unit: z.exactOptional(unitText),
  ...limits,
  ...toBeLinked,
  ...remarks,
});

/** One option of a choice: the value formulas see and the words a person reads. */
const optionSchema = z.strictObject({ value: entryText, label: z.exactOptional(lineText) });

/** What is chosen on a choice, and from what. */
const chosenValue = {
  entry: entryText,
  options: z.exactOptional(z.array(optionSchema).check(z.minLength(1), z.maxLength(OPTION_LIMIT))),
  from: z.exactOptional(lineText),
  optional: z.exactOptional(z.boolean()),
};

/** A row whose value is one of a list (`options`) or of a table's text column (`from`, as `fenders.name`). */
const choiceSchema = z.strictObject({
  id: idText,
  kind: z.literal('choice'),
  ...named,
  ...chosenValue,
  ...toBeLinked,
  ...remarks,
});

/** What a linked line is without its link: the given or the choice it is again once the link is taken off. */
export const LINK_SCHEMAS = {
  given: z.strictObject({ kind: z.literal('given'), entry: entryText, ...limits }),
  choice: z.strictObject({ kind: z.literal('choice'), ...chosenValue }),
} as const;

/** The link of a line of either kind. */
export const linkSchema = z.discriminatedUnion('kind', [LINK_SCHEMAS.given, LINK_SCHEMAS.choice]);

/**
 * A value that stands in place of a computed one: an entry as typed, and why (`''` while that is open). `reasonFor` says what
 * the reason was given for where that was another value or another place; it is taken away once the reason is confirmed.
 */
export const statementSchema = z.strictObject({
  entry: entryText,
  reason: noteText,
  reasonFor: z.exactOptional(entryText.check(z.minLength(1))),
});

/**
 * A row whose value is computed; `stated` stands in its place wherever the row is used. With `link` it is a given or a
 * choice that takes its value from the line its formula names.
 */
const calcSchema = z.strictObject({
  id: idText,
  kind: z.literal('calc'),
  ...named,
  ...computing,
  unit: z.exactOptional(unitText),
  range: z.exactOptional(rangeSchema),
  link: z.exactOptional(linkSchema),
  stated: z.exactOptional(statementSchema),
  ...remarks,
});

/** The sides of a check that are stated. */
const statedSidesSchema = z.strictObject({
  demand: z.exactOptional(statementSchema),
  capacity: z.exactOptional(statementSchema),
});

/**
 * A comparison of a demand with a capacity, either of which may be stated. `applies`: the condition under which there is
 * anything to compare; where it is false the check neither holds nor fails.
 */
const checkSchema = z.strictObject({
  id: idText,
  kind: z.literal('check'),
  ...named,
  formula: formulaText,
  applies: z.exactOptional(formulaText.check(z.minLength(1))),
  unit: z.exactOptional(unitText),
  stated: z.exactOptional(statedSidesSchema),
  ...remarks,
});

/** The schema of each kind of row. */
export const ROW_SCHEMAS = {
  given: givenSchema,
  choice: choiceSchema,
  calc: calcSchema,
  check: checkSchema,
} as const;

/** A row of any kind. */
export const rowSchema = z.discriminatedUnion('kind', [givenSchema, choiceSchema, calcSchema, checkSchema]);

/** The permitted values of a line or column; see {@link rangeSchema}. */
export type Range = Immutable<z.infer<typeof rangeSchema>>;
/** A value stated in place of a computed one; see {@link statementSchema}. */
export type Statement = Immutable<z.infer<typeof statementSchema>>;
/** One option of a choice; see {@link optionSchema}. */
export type Option = Immutable<z.infer<typeof optionSchema>>;
/** A row whose value a person types. */
export type Given = Immutable<z.infer<typeof givenSchema>>;
/** A row whose value is one of a list; exactly one of `options` and `from` is present. */
export type Choice = Immutable<z.infer<typeof choiceSchema>>;
/** What a linked line is without its link; see {@link LINK_SCHEMAS}. */
export type Link = Immutable<z.infer<typeof linkSchema>>;
/** A row whose value is computed; either `formula` or both `by` and `methods` are present. */
export type Calc = Immutable<z.infer<typeof calcSchema>>;
/** A comparison of a demand with a capacity. */
export type Check = Immutable<z.infer<typeof checkSchema>>;
/** A row of any kind. */
export type Row = Given | Choice | Calc | Check;
