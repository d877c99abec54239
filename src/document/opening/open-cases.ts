import type * as z from 'zod/mini';
import { fail, type Outcome, succeed } from '../../diagnostics/index.ts';
import { readJson } from '../json/read-json.ts';
import { type Cases, casesSchema } from '../schema/cases.ts';
import { type Equivalents, equivalentsSchema } from '../schema/equivalents.ts';
import { schemaProblems } from '../schema/problems.ts';

/** Reads the cases of a template; a text that is not sound is refused with the path and what is wrong. */
export function openCases(text: string): Outcome<Cases> {
  return open<Cases>(text, casesSchema);
}

/** Reads the changed formulas of a template that are as good as the right ones; refuses as `openCases` does. */
export function openEquivalents(text: string): Outcome<Equivalents> {
  return open<Equivalents>(text, equivalentsSchema);
}

function open<Read>(text: string, schema: z.core.$ZodType & z.ZodMiniType): Outcome<Read> {
  const read = readJson(text, { length: 20_000_000, depth: 12 });
  if (!read.ok) return read;
  const checked = schema.safeParse(read.value);
  if (checked.success) return succeed(read.value as Read);
  const [first, ...others] = schemaProblems(checked.error, schema, read.value);
  if (!first) throw new Error('a refusal without a problem');
  return fail(first, ...others);
}
