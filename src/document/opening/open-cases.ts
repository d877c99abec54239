import { fail, type Outcome, succeed } from '../../diagnostics/index.ts';
import { readJson } from '../json/read-json.ts';
import { type Cases, casesSchema } from '../schema/cases.ts';
import { schemaProblems } from '../schema/problems.ts';

/** Reads the cases of a template; a text that is not sound is refused with the path and what is wrong. */
export function openCases(text: string): Outcome<Cases> {
  const read = readJson(text, { length: 20_000_000, depth: 12 });
  if (!read.ok) return read;
  const checked = casesSchema.safeParse(read.value);
  if (checked.success) return succeed(read.value as unknown as Cases);
  const [first, ...others] = schemaProblems(checked.error, casesSchema, read.value);
  if (!first) throw new Error('a refusal without a problem');
  return fail(first, ...others);
}
