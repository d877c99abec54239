import * as z from 'zod/mini';
import { bookSchema } from './book.ts';
import type { Immutable } from './immutable.ts';
import { partSchema } from './parts.ts';
import { rowSchema } from './rows.ts';
import { nameText, noteText, unitText } from './text-schemas.ts';

/** The longest text of one copied cell: that of a text part. */
const CELL_LIMIT = 50_000;

/** Cells that travel between pages of Quaybook; what they are not is refused as a whole. */
export const copiedSchema = z.strictObject({
  cells: z
    .array(z.array(z.string().check(z.maxLength(CELL_LIMIT))).check(z.minLength(1)))
    .check(z.minLength(1)),
  units: z.exactOptional(z.array(z.array(z.nullable(unitText)))),
  calculated: z.exactOptional(z.array(z.int())),
  stated: z.exactOptional(z.array(z.array(z.nullable(noteText)))),
  headed: z.exactOptional(z.literal(true)),
  table: z.exactOptional(z.literal(true)),
  lines: z.exactOptional(z.array(rowSchema).check(z.minLength(1))),
  partly: z.exactOptional(z.literal(true)),
  parts: z.exactOptional(z.array(partSchema).check(z.minLength(1))),
  brought: z.exactOptional(bookSchema),
  from: z.exactOptional(z.strictObject({ book: z.string(), sheet: nameText, cut: z.boolean() })),
});

/**
 * Cells on the clipboard, row by row, as a person types them. `units`: beside each cell the unit of a number that stands
 * there without one, null for none. `calculated`: the positions of columns whose cells were calculated. `stated`: beside each cell the
 * reason of a value that is stated there, null for none. `headed`: the first row are the headings of the columns. `table`: they are from a table. `lines`: the lines themselves, where
 * whole lines were taken, or of several lines all from the description to the value (`partly`): these are cells in their own book. `parts`: the parts, where lines, words, tables or pictures were. `brought`: a book of one sheet with these and all
 * that they take from elsewhere, for other books. `from`: where they were, and whether they were cut there.
 */
export type Copied = Immutable<z.infer<typeof copiedSchema>>;
