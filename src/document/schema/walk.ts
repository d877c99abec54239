import * as z from 'zod/mini';
import { COLUMN_SCHEMAS, columnSchema } from './columns.ts';
import { PART_SCHEMAS, partSchema } from './parts.ts';
import { LINK_SCHEMAS, linkSchema, ROW_SCHEMAS, rowSchema } from './rows.ts';

/** Any schema of the format. */
export type Schema = z.core.$ZodType;

const KINDS = new Map<Schema, Readonly<Record<string, Schema>>>([
  [rowSchema, ROW_SCHEMAS],
  [columnSchema, COLUMN_SCHEMAS],
  [partSchema, PART_SCHEMAS],
  [linkSchema, LINK_SCHEMAS],
]);

/** The schema one step (a field, or an item of a list) below `schema`, for `value` that stands there. */
export function schemaBelow(schema: Schema, value: unknown, step: string | number): Schema | undefined {
  const { def } = settled(schema, value)?._zod ?? {};
  if (isObjectDef(def)) return Object.hasOwn(def.shape, step) ? def.shape[step] : undefined;
  if (isListDef(def)) return def.element;
  if (isRecordDef(def)) return z.safeParse(def.keyType, step).success ? def.valueType : undefined;
  return undefined;
}

/** The names of the fields that `value` may have under `schema`; empty where it is not an object of fixed fields. */
export function fieldNames(schema: Schema, value: unknown): readonly string[] {
  const { def } = settled(schema, value)?._zod ?? {};
  return isObjectDef(def) ? Object.keys(def.shape) : [];
}

/** Whether a field with this schema may be absent. */
export function isOptional(schema: Schema): boolean {
  return schema._zod.def.type === 'optional';
}

/** The schema of the items of a list and how many it may have, or nothing where the schema is not a list's. */
export function listBelow(
  schema: Schema,
): { readonly item: Schema; readonly least: number; readonly most: number } | undefined {
  const { def } = settled(schema, undefined)?._zod ?? {};
  if (!isListDef(def)) return undefined;
  const limits: LengthLimits = Object.assign({}, ...(def.checks ?? []).map((check) => check._zod.def));
  return { item: def.element, least: limits.minimum ?? 0, most: limits.maximum ?? Number.POSITIVE_INFINITY };
}

/** What the checks of a list, minLength and maxLength, hold together. */
interface LengthLimits {
  readonly minimum?: number;
  readonly maximum?: number;
}

/** The schema itself, out of its wrapping: of an optional field the field's, of a union of kinds that of the kind. */
function settled(schema: Schema, value: unknown): Schema | undefined {
  const { def } = schema._zod;
  const open = isOptionalDef(def) ? def.innerType : schema;
  const kinds = KINDS.get(open);
  if (kinds === undefined) return open;
  const kind = typeof value === 'object' && value !== null && 'kind' in value ? value.kind : undefined;
  return typeof kind === 'string' && Object.hasOwn(kinds, kind) ? kinds[kind] : undefined;
}

type Def = z.core.$ZodTypeDef | undefined;

function isObjectDef(def: Def): def is z.core.$ZodObjectDef<Record<string, Schema>> {
  return def?.type === 'object';
}

function isListDef(def: Def): def is z.core.$ZodArrayDef {
  return def?.type === 'array';
}

function isRecordDef(def: Def): def is z.core.$ZodRecordDef {
  return def?.type === 'record';
}

function isOptionalDef(def: Def): def is z.core.$ZodOptionalDef {
  return def?.type === 'optional';
}
