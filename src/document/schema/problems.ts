import type * as z from 'zod/mini';
import { inCell, nearest, type Problem, problem } from '../../diagnostics/index.ts';
import { describeJson } from '../json/describe-json.ts';
import { type Path, pathText } from '../json/path.ts';
import { ID_PATTERN, NAME_PATTERN } from './text-schemas.ts';
import { fieldNames, type Schema, schemaBelow } from './walk.ts';

type Issue = z.core.$ZodIssue;

const NOWHERE = { from: 0, to: 0 };

/**
 * What the schema has against a value, as problems told by path.
 *
 * @param above where the value stands: the steps in front of every path
 */
export function schemaProblems(
  error: z.core.$ZodError,
  schema: Schema,
  value: unknown,
  above: Path = [],
): Problem[] {
  return error.issues.flatMap((issue) => {
    const at = issue.path as (string | number)[];
    const cell = cellName(value, at);
    const found = issueProblems(issue, schema, value, at, above);
    return cell === undefined ? found : found.map((one) => inCell(one, cell));
  });
}

function issueProblems(issue: Issue, schema: Schema, value: unknown, at: Path, above: Path): Problem[] {
  const path = pathText([...above, ...at]);
  const found = valueAt(value, at);
  const field = at[at.length - 1];
  if (found === undefined && typeof field === 'string') {
    const parent = pathText([...above, ...at.slice(0, -1)]);
    return [problem('book-field-missing', NOWHERE, { path: parent, field })];
  }
  if (issue.code === 'unrecognized_keys') {
    const known = fieldNames(schemaAt(schema, value, at) ?? schema, found);
    return issue.keys.map((key) =>
      problem('book-field-unknown', NOWHERE, { path, field: key, nearest: nearest(key, known, 1) }),
    );
  }
  if (
    issue.code === 'too_big' &&
    Number(issue.maximum) > 0 &&
    (typeof found === 'string' || Array.isArray(found))
  ) {
    const of = typeof found === 'string' ? 'character' : 'item';
    const facts = { path, length: found.length, limit: Number(issue.maximum), of };
    return [problem('book-too-long', NOWHERE, facts)];
  }
  if (issue.code === 'invalid_format' && typeof found === 'string') {
    if (issue.pattern === String(NAME_PATTERN)) {
      return [problem('book-name-spelling', NOWHERE, { path, name: found })];
    }
    if (issue.pattern === String(ID_PATTERN)) {
      return [problem('book-id-spelling', NOWHERE, { path, id: found })];
    }
  }
  return [
    problem('book-value-wrong', NOWHERE, { path, found: describeJson(found), expected: expectedBy(issue) }),
  ];
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  record: 'an object',
  null: 'null',
  never: 'absent',
};

function expectedBy(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPE_WORDS[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return issue.values.map((value) => describeJson(value)).join(' or ');
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? issue.options.map((value) => describeJson(value)).join(' or ')
        : [...new Set(issue.errors.flat().map(expectedBy))].join(' or ');
    case 'too_big':
      return issue.origin === 'array' ? 'an empty list' : `at most ${issue.maximum}`;
    case 'too_small':
      return issue.origin === 'array' ? `a list of at least ${issue.minimum}` : `at least ${issue.minimum}`;
    case 'invalid_format':
      return 'a currency code of three capital letters';
    case 'invalid_key':
      return 'an object whose keys are ids';
    default:
      return 'another value';
  }
}

function valueAt(value: unknown, at: Path): unknown {
  let found = value;
  for (const step of at) {
    if (typeof found !== 'object' || found === null || !Object.hasOwn(found, step)) return undefined;
    found = (found as Readonly<Record<string | number, unknown>>)[step];
  }
  return found;
}

function schemaAt(schema: Schema, value: unknown, at: Path): Schema | undefined {
  let found: Schema | undefined = schema;
  for (const [i, step] of at.entries()) {
    if (found === undefined) return undefined;
    found = schemaBelow(found, valueAt(value, at.slice(0, i)), step);
  }
  return found;
}

/** "sheet.name" of the row or table a path into a book leads into or through, where both names are readable. */
function cellName(value: unknown, at: Path): string | undefined {
  if (at[0] !== 'sheets' || at[2] !== 'parts') return undefined;
  const key = valueAt(value, [...at.slice(0, 2), 'key']);
  const row = at[4] === 'rows' ? valueAt(value, [...at.slice(0, 6), 'name']) : undefined;
  const name = row ?? valueAt(value, [...at.slice(0, 4), 'name']);
  return typeof key === 'string' && typeof name === 'string' ? `${key}.${name}` : undefined;
}
