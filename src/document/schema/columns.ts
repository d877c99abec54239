import * as z from 'zod/mini';
import { named, remarks, toBeLinked } from './fields.ts';
import type { Immutable } from './immutable.ts';
import { computing } from './methods.ts';
import { rangeSchema, statementSchema } from './rows.ts';
import {
  ENTRY_LENGTH_LIMIT,
  entryText,
  formulaText,
  idText,
  OPTION_LIMIT,
  unitText,
} from './text-schemas.ts';

/** Cells in one chunk of a given column; only the last chunk is shorter. */
export const CHUNK_CELLS = 1024;

/** The most cells of one calculated column that are stated. */
const STATED_LIMIT = 10_000;

/** The most rows of one table. */
export const TABLE_ROW_LIMIT = 1_000_000;

/**
 * One cell of a given column: a number in the column's unit, an entry as typed, or `null` where it is blank.
 */
export const cellSchema = z.union([z.number(), entryText, z.null()]);

/** Whether a value is surely a {@link cellSchema | cell}, told without a schema, for columns of a hundred thousand. */
export function isSurelyCell(value: unknown): boolean {
  if (typeof value === 'string') return value.length <= ENTRY_LENGTH_LIMIT;
  return value === null || (typeof value === 'number' && Number.isFinite(value));
}

/** Up to {@link CHUNK_CELLS} cells of a given column, in row order. */
const chunkSchema = z.array(cellSchema).check(z.minLength(1), z.maxLength(CHUNK_CELLS));

/** A column whose cells a person types or pastes. */
const givenColumnSchema = z.strictObject({
  id: idText,
  kind: z.literal('given'),
  ...named,
  type: z.exactOptional(z.enum(['number', 'text', 'truth', 'date'])),
  unit: z.exactOptional(unitText),
  options: z.exactOptional(z.array(entryText).check(z.minLength(1), z.maxLength(OPTION_LIMIT))),
  range: z.exactOptional(rangeSchema),
  optional: z.exactOptional(z.boolean()),
  default: z.exactOptional(z.union([z.number(), entryText])),
  ...toBeLinked,
  ...remarks,
  chunks: z.array(chunkSchema).check(z.maxLength(Math.ceil(TABLE_ROW_LIMIT / CHUNK_CELLS))),
});

/** A value that stands in place of a computed cell, with the identity of its row. */
const statedCellSchema = z.strictObject({ row: z.int().check(z.minimum(1)), ...statementSchema.def.shape });

/** A column computed row by row; `stated` stands in place of single cells, in the order of the identities. */
const calcColumnSchema = z.strictObject({
  id: idText,
  kind: z.literal('calc'),
  ...named,
  ...computing,
  unit: z.exactOptional(unitText),
  range: z.exactOptional(rangeSchema),
  stated: z.exactOptional(z.array(statedCellSchema).check(z.minLength(1), z.maxLength(STATED_LIMIT))),
  ...remarks,
});

/** A column whose formula, a SERIES, decides how many rows its table has. */
const seriesColumnSchema = z.strictObject({
  id: idText,
  kind: z.literal('series'),
  ...named,
  formula: formulaText,
  unit: z.exactOptional(unitText),
  ...remarks,
});

/** The schema of each kind of column. */
export const COLUMN_SCHEMAS = {
  given: givenColumnSchema,
  calc: calcColumnSchema,
  series: seriesColumnSchema,
} as const;

/** A column of any kind. */
export const columnSchema = z.discriminatedUnion('kind', [
  givenColumnSchema,
  calcColumnSchema,
  seriesColumnSchema,
]);

/** One cell of a given column; see {@link cellSchema}. */
export type Cell = z.infer<typeof cellSchema>;
/** Up to 1024 cells of a given column, in row order. */
export type Chunk = Immutable<z.infer<typeof chunkSchema>>;
/** A column whose cells a person types or pastes; `type` absent means number. */
export type GivenColumn = Immutable<z.infer<typeof givenColumnSchema>>;
/** A value stated in place of a computed cell. */
export type StatedCell = Immutable<z.infer<typeof statedCellSchema>>;
/** A column computed row by row; either `formula` or both `by` and `methods` are present. */
export type CalcColumn = Immutable<z.infer<typeof calcColumnSchema>>;
/** A column whose formula decides how many rows its table has. */
export type SeriesColumn = Immutable<z.infer<typeof seriesColumnSchema>>;
/** A column of any kind. */
export type Column = GivenColumn | CalcColumn | SeriesColumn;
/** What the cells of a given column hold. */
export type ColumnType = NonNullable<GivenColumn['type']>;
