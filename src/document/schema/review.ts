import * as z from 'zod/mini';
import type { Immutable } from './immutable.ts';
import { entryText, hashText, idText, lineText, noteText } from './text-schemas.ts';

/** The most things of one kind that a review holds. */
const REVIEW_LIMIT = 20_000;

/**
 * What is looked at: a line by its id, or a cell by the id of its column and the identity of its row (in a table that a
 * series makes, the number of its row from 1). Ids are never given twice, so it stays the same through names and places.
 */
const subjectSchema = z.strictObject({
  item: idText,
  row: z.exactOptional(z.int().check(z.minimum(1))),
});

/** What the line or cell was called then, for the day it is gone. */
const called = { called: z.exactOptional(lineText) };

/** Who says it, by initials or name, and when, as the person writes dates. */
const said = { by: lineText.check(z.minLength(1)), date: z.exactOptional(lineText) };

/** What the checker came to by hand for a result, with the basis it was compared on. */
const handValueSchema = z.strictObject({
  id: idText,
  of: subjectSchema,
  ...called,
  entry: entryText.check(z.minLength(1)),
  /** How far the two may be apart: a share (`1 %`) or a quantity; without it the tolerance of the review. */
  tolerance: z.exactOptional(entryText),
  ...said,
  note: z.exactOptional(noteText),
  basis: idText,
});

/** An entry that the checker has seen at its source, with the basis it was seen on. */
const seenMarkSchema = z.strictObject({
  id: idText,
  of: subjectSchema,
  ...called,
  ...said,
  note: z.exactOptional(noteText),
  /** The reference beside it then; another one now, and it is to be seen again. */
  source: z.exactOptional(lineText),
  basis: idText,
});

const remarkSchema = z.strictObject({ ...said, text: noteText.check(z.minLength(1)) });

/** A question or objection, of one line or of the whole book; what was answered; and who closed it. */
const commentSchema = z.strictObject({
  id: idText,
  of: z.exactOptional(subjectSchema),
  ...called,
  ...remarkSchema.def.shape,
  answers: z.array(remarkSchema).check(z.maxLength(200)),
  closed: z.exactOptional(z.strictObject(said)),
});

/** Whose name stands under the book. */
export const SIGNING_ROLES = ['prepared', 'checked', 'approved'] as const;

/**
 * A name under one content of the book. `despite` is what was open then, and why it was signed all the same; `withdrawn` who has
 * taken it back: it stays to be seen.
 */
const signOffSchema = z.strictObject({
  id: idText,
  role: z.enum(SIGNING_ROLES),
  ...said,
  content: hashText,
  basis: idText,
  despite: z.exactOptional(
    z.strictObject({
      reason: noteText.check(z.minLength(1)),
      open: z.array(noteText).check(z.maxLength(500)),
    }),
  ),
  withdrawn: z.exactOptional(z.strictObject(said)),
});

/** An issue of the book with its whole content, a book in the format of its time, as text. */
const revisionSchema = z.strictObject({
  id: idText,
  label: lineText.check(z.minLength(1)),
  ...said,
  note: z.exactOptional(noteText),
  content: hashText,
  book: z.string(),
});

/**
 * How one line, column or cell stood: what it is computed from or what was entered there; without `is` it was gone. `si` is the
 * number that an entry comes to, by which `36 in` and `3 ft` are the same.
 */
const standingSchema = z.strictObject({
  ...subjectSchema.def.shape,
  is: z.exactOptional(z.string().check(z.maxLength(200_000))),
  si: z.exactOptional(z.number()),
});

/** How the book stood when something was checked: what differs from an earlier basis, or all of it. */
const basisSchema = z.strictObject({
  id: idText,
  since: z.exactOptional(idText),
  /** The book's own units, datums and currency. */
  units: z.exactOptional(z.string().check(z.maxLength(50_000))),
  lines: z.array(standingSchema).check(z.maxLength(1_000_000)),
});

const listOf = <Item extends z.core.$ZodType>(item: Item) => z.array(item).check(z.maxLength(REVIEW_LIMIT));

/** The checker's part of the book; it is no part of its content hash. */
export const reviewSchema = z.strictObject({
  /** How far a hand value may be apart where it does not say so itself; without it 1 %. */
  tolerance: z.exactOptional(entryText),
  handValues: listOf(handValueSchema),
  seen: listOf(seenMarkSchema),
  comments: listOf(commentSchema),
  signOffs: listOf(signOffSchema),
  revisions: listOf(revisionSchema),
  bases: listOf(basisSchema),
});

/** What is looked at; see {@link subjectSchema}. */
export type Subject = Immutable<z.infer<typeof subjectSchema>>;
/** What the checker came to by hand. */
export type HandValue = Immutable<z.infer<typeof handValueSchema>>;
/** An entry that was seen at its source. */
export type SeenMark = Immutable<z.infer<typeof seenMarkSchema>>;
/** A question or objection, with its answers. */
export type Comment = Immutable<z.infer<typeof commentSchema>>;
/** Whose name stands under the book. */
export type SigningRole = (typeof SIGNING_ROLES)[number];
/** A name under one content of the book. */
export type SignOff = Immutable<z.infer<typeof signOffSchema>>;
/** An issue of the book with its whole content. */
export type Revision = Immutable<z.infer<typeof revisionSchema>>;
/** How the book stood when something was checked. */
export type Basis = Immutable<z.infer<typeof basisSchema>>;
/** The checker's part of the book. */
export type Review = Immutable<z.infer<typeof reviewSchema>>;
