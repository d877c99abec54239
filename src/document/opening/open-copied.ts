import { fail, type Outcome, succeed } from '../../diagnostics/index.ts';
import { readJson } from '../json/read-json.ts';
import { bookProblems } from '../rules/book-rules.ts';
import { type Copied, copiedSchema } from '../schema/copied.ts';
import { schemaProblems } from '../schema/problems.ts';

/** Reads copied cells, whoever wrote them; a text that is not sound is refused with the path and what is wrong. */
export function openCopied(text: string): Outcome<Copied> {
  const read = readJson(text, { length: 100_000_000, depth: 14 });
  if (!read.ok) return read;
  const checked = copiedSchema.safeParse(read.value);
  const copied = read.value as unknown as Copied;
  const problems = checked.success
    ? copied.brought
      ? bookProblems(copied.brought)
      : []
    : schemaProblems(checked.error, copiedSchema, read.value);
  if (checked.success && problems.length === 0) return succeed(copied);
  const [first, ...others] = problems;
  if (!first) throw new Error('a refusal without a problem');
  return fail(first, ...others);
}
