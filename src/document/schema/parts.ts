import * as z from 'zod/mini';
import { columnSchema, TABLE_ROW_LIMIT } from './columns.ts';
import type { Immutable } from './immutable.ts';
import { rowSchema } from './rows.ts';
import { idText, lineText, nameText, proseText, roleText } from './text-schemas.ts';

/** Words between the lines of a sheet; `role` says how the record lists them. */
const proseSchema = z.strictObject({
  id: idText,
  kind: z.literal('prose'),
  role: z.enum(['text', 'heading', 'caution', 'assumption', 'open item', 'source']),
  text: proseText,
});

/** A block of rows under one title. */
const rowsSchema = z.strictObject({
  id: idText,
  kind: z.literal('rows'),
  title: z.exactOptional(lineText),
  rows: z.array(rowSchema).check(z.maxLength(10_000)),
});

const rowId = z.int().check(z.minimum(1), z.maximum(Number.MAX_SAFE_INTEGER));

/**
 * Which row is which, for what is said of a row to follow it: runs of consecutive identities in the order of the rows,
 * each as its first and how many, and the next one never given yet.
 */
const rowIdsSchema = z.strictObject({
  runs: z.array(
    z.strictObject({ first: rowId, count: z.int().check(z.minimum(1), z.maximum(TABLE_ROW_LIMIT)) }),
  ),
  next: rowId,
});

/** A named table. `length` is the number of its rows, absent where a series column decides it; without `ids` they are 1, 2, 3 … */
const tableSchema = z.strictObject({
  id: idText,
  kind: z.literal('table'),
  name: nameText,
  title: z.exactOptional(lineText),
  length: z.exactOptional(z.int().check(z.minimum(0), z.maximum(TABLE_ROW_LIMIT))),
  ids: z.exactOptional(rowIdsSchema),
  columns: z.array(columnSchema).check(z.maxLength(200)),
});

/** A sketch drawn from the values of its sheet: `cells` maps the sketch's own roles to names on the sheet. */
const figureSchema = z.strictObject({
  id: idText,
  kind: z.literal('figure'),
  figure: idText,
  title: z.exactOptional(lineText),
  cells: z.record(roleText, lineText),
});

/** A chart of columns of one table of its sheet. */
const chartSchema = z.strictObject({
  id: idText,
  kind: z.literal('chart'),
  form: z.enum(['line', 'bar', 'histogram']),
  title: z.exactOptional(lineText),
  table: nameText,
  x: nameText,
  y: z.array(nameText).check(z.maxLength(20)),
});

/** The schema of each kind of part. */
export const PART_SCHEMAS = {
  prose: proseSchema,
  rows: rowsSchema,
  table: tableSchema,
  figure: figureSchema,
  chart: chartSchema,
} as const;

/** A part of any kind. */
export const partSchema = z.discriminatedUnion('kind', [
  proseSchema,
  rowsSchema,
  tableSchema,
  figureSchema,
  chartSchema,
]);

/** Words between the lines of a sheet. */
export type Prose = Immutable<z.infer<typeof proseSchema>>;
/** A block of rows under one title. */
export type Rows = Immutable<z.infer<typeof rowsSchema>>;
/** Which row of a table is which; see {@link rowIdsSchema}. */
export type RowIds = Immutable<z.infer<typeof rowIdsSchema>>;
/** A named table; see {@link tableSchema}. */
export type Table = Immutable<z.infer<typeof tableSchema>>;
/** A sketch drawn from the values of its sheet. */
export type Figure = Immutable<z.infer<typeof figureSchema>>;
/** A chart of columns of one table of its sheet. */
export type Chart = Immutable<z.infer<typeof chartSchema>>;
/** A part of any kind. */
export type Part = Prose | Rows | Table | Figure | Chart;
