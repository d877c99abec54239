import { fail, type JsonValue, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import { hashBook } from '../hash/hasher.ts';
import { describeJson } from '../json/describe-json.ts';
import { readJson } from '../json/read-json.ts';
import { bookProblems } from '../rules/book-rules.ts';
import { type Book, bookSchema, FORMAT, FORMAT_VERSION } from '../schema/book.ts';
import { schemaProblems } from '../schema/problems.ts';
import { migrate } from './migrations/migrate.ts';
import type { JsonObject } from './migrations/migration.ts';
import { damaged, findBlock, isPage, isWhole } from './record-block.ts';

/** The most UTF-16 units of a book's text. */
export const BOOK_LENGTH_LIMIT = 100_000_000;

/** The most bytes of a book's file: UTF-8 has at most three for a UTF-16 unit. What is larger need not be read. */
export const BOOK_BYTE_LIMIT = 3 * BOOK_LENGTH_LIMIT;

/** The most levels of lists and objects inside one another; a book has nine. */
const BOOK_DEPTH_LIMIT = 32;

/** The most problems that one refusal lists. */
const PROBLEM_LIMIT = 20;

/** A book as it was opened; `migrated` when its text was of an older version. */
export interface Opened {
  readonly book: Book;
  readonly migrated: boolean;
}

/**
 * Reads the text of a book, or of a record that carries one, whoever wrote it. A text that is not a sound book of a version up to this one is refused
 * with the path and what is wrong, the first problem foremost. Never throws.
 */
export function openBook(text: string): Outcome<Opened> {
  if (isPage(text)) return openRecord(text);
  const read = readJson(text, { length: BOOK_LENGTH_LIMIT, depth: BOOK_DEPTH_LIMIT });
  return read.ok ? bookFromJson(read.value) : read;
}

/** The book of a record, if it is still the one that the record was written of. */
function openRecord(page: string): Outcome<Opened> {
  const block = findBlock(page);
  if (!block.ok) return block;
  const read = readJson(block.value.json, { length: BOOK_LENGTH_LIMIT, depth: BOOK_DEPTH_LIMIT });
  if (!read.ok || !isWhole(read.value, block.value)) return damaged();
  const opened = bookFromJson(read.value);
  // The pages say of which content they are; what was brought up to another version may have another hash.
  const isOther = opened.ok && !opened.value.migrated && !page.includes(hashBook(opened.value.book));
  return isOther ? damaged() : opened;
}

/** The book that a JSON value is; the value must come from the reader that refuses hostile texts. */
function bookFromJson(value: JsonValue): Outcome<Opened> {
  if (!isObject(value) || value.format !== FORMAT) {
    const format = isObject(value) ? value.format : undefined;
    return fail(problem('book-format-wrong', { from: 0, to: 0 }, { found: describeJson(format) }));
  }
  const { version } = value;
  if (typeof version !== 'number' || !Number.isSafeInteger(version) || version < 0) {
    return fail(problem('book-version-wrong', { from: 0, to: 0 }, { found: describeJson(version) }));
  }
  if (version > FORMAT_VERSION) {
    return fail(problem('book-newer', { from: 0, to: 0 }, { version, known: FORMAT_VERSION }));
  }
  const current = version === FORMAT_VERSION ? value : migrate(value, version);
  const checked = bookSchema.safeParse(current);
  const problems = checked.success
    ? bookProblems(current as unknown as Book)
    : schemaProblems(checked.error, bookSchema, current);
  const [first, ...others] = problems;
  if (first !== undefined) return fail(first, ...others.slice(0, PROBLEM_LIMIT - 1));
  return succeed({ book: current as unknown as Book, migrated: version !== FORMAT_VERSION });
}

function isObject(value: JsonValue): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
