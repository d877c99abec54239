import * as z from 'zod/mini';
import type { Immutable } from './immutable.ts';
import { partSchema } from './parts.ts';
import { reviewSchema } from './review.ts';
import { hashText, idText, lineText, nameText, noteText, unitText } from './text-schemas.ts';

/** What the `format` field of every book says. */
export const FORMAT = 'quaybook';

/** The version of the book format this program writes, and the newest it reads. */
export const FORMAT_VERSION = 3;

/** The title block. */
const titleSchema = z.strictObject({
  project: lineText,
  subject: lineText,
  job: lineText,
  client: lineText,
  prepared: lineText,
  checked: lineText,
  date: lineText,
  revision: lineText,
});

/**
 * A unit the book defines: `definition` is a quantity such as `10 h`, or `base` for a dimension of its own; `system` is
 * the one that has it, where not both do.
 */
const bookUnitSchema = z.strictObject({
  symbol: unitText,
  definition: unitText,
  system: z.exactOptional(z.enum(['SI', 'US'])),
  note: z.exactOptional(noteText),
});

/** What holds for the whole book: preferred units, the currency of `$`, its own units, its elevation datums. */
const settingsSchema = z.strictObject({
  system: z.enum(['SI', 'US']),
  currency: z.string().check(z.regex(/^[A-Z]{3}$/)),
  units: z.array(bookUnitSchema).check(z.maxLength(200)),
  datums: z.array(unitText).check(z.maxLength(50)),
  /** Whether paper has all rows of long calculated tables; without it those that matter. */
  printedTables: z.exactOptional(z.enum(['short', 'whole'])),
});

const remarkList = z.array(noteText).check(z.maxLength(100));

/** What the book is for and how far it may be trusted; templates carry it. */
const aboutSchema = z.strictObject({
  id: z.exactOptional(idText),
  /** What the book answers, in the words of who comes with it. */
  question: z.exactOptional(lineText),
  purpose: noteText,
  standard: noteText,
  scope: noteText,
  limits: remarkList,
  cautions: remarkList,
  assumptions: remarkList,
});

/** A book that sheets were brought from: what it is called, and what it says of itself. */
const originSchema = z.strictObject({
  id: idText,
  title: lineText,
  about: z.exactOptional(aboutSchema),
});

/**
 * What a sheet was when it came into its book. `template`: the id of the shipped template it is from, or a book called `title`;
 * of which `version` (of the program that ships it, or the book's revision) and content; `key`: what it was called there.
 * `parts` are its lines and tables as they were, without what is entered, so that they can still be shown once that template
 * has changed. `held`: what lines and columns of the sheet, by their ids, stand for that did not come along.
 */
const startSchema = z.strictObject({
  template: z.exactOptional(idText),
  title: lineText,
  version: lineText,
  content: hashText,
  key: nameText,
  parts: z.array(partSchema).check(z.maxLength(1_000)),
  held: z.exactOptional(z.record(idText, lineText)),
});

/**
 * One sheet: `key` is the name other sheets use for it; `origin` the book it was brought from, whose `about` it goes by in
 * place of the book's own; `start` what it was when it came.
 */
const sheetSchema = z.strictObject({
  key: nameText,
  title: lineText,
  group: z.exactOptional(lineText),
  origin: z.exactOptional(idText),
  start: z.exactOptional(startSchema),
  parts: z.array(partSchema).check(z.maxLength(1_000)),
});

/**
 * A case of a template whose inputs stand on the sheets in place of the book's own: which one, and the lines and tables that
 * stood there before, under their ids.
 */
const exampleSchema = z.strictObject({
  template: idText,
  case: idText,
  title: lineText,
  before: z.array(partSchema).check(z.maxLength(10_000)),
});

/** A whole book of the newest version. */
export const bookSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(FORMAT_VERSION),
  title: titleSchema,
  settings: settingsSchema,
  about: z.exactOptional(aboutSchema),
  origins: z.exactOptional(z.array(originSchema).check(z.minLength(1), z.maxLength(200))),
  example: z.exactOptional(exampleSchema),
  sheets: z.array(sheetSchema).check(z.maxLength(200)),
  review: reviewSchema,
});

/** The title block. */
export type Title = Immutable<z.infer<typeof titleSchema>>;
/** A unit the book defines. */
export type BookUnit = Immutable<z.infer<typeof bookUnitSchema>>;
/** What holds for the whole book. */
export type Settings = Immutable<z.infer<typeof settingsSchema>>;
/** What the book is for and how far it may be trusted. */
export type About = Immutable<z.infer<typeof aboutSchema>>;
/** A book that sheets were brought from; see {@link originSchema}. */
export type Origin = Immutable<z.infer<typeof originSchema>>;
/** What a sheet was when it came into its book; see {@link startSchema}. */
export type Start = Immutable<z.infer<typeof startSchema>>;
/** A case of a template whose inputs stand on the sheets; see {@link exampleSchema}. */
export type Example = Immutable<z.infer<typeof exampleSchema>>;
/** One sheet. */
export type Sheet = Immutable<z.infer<typeof sheetSchema>>;
/** A whole book of the newest version. */
export type Book = Immutable<z.infer<typeof bookSchema>>;
