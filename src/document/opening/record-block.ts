import { fail, type JsonValue, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import { sha256 } from '../hash/sha256.ts';
import { utf8Bytes } from '../hash/utf8.ts';
import { canonicalJson } from '../json/canonical.ts';
import type { Book } from '../schema/book.ts';

/** The id of the element of a record that holds the book. */
const BLOCK = 'quaybook-book';

/** The book as a record carries it: text of JSON, and the hash by which a damaged one is known. */
export interface RecordBlock {
  readonly id: string;
  readonly json: string;
  readonly attributes: { readonly 'data-sha256': string };
}

/** The block of a book for its record. */
export function recordBlock(book: Book): RecordBlock {
  const json = canonicalJson(book);
  return { id: BLOCK, json, attributes: { 'data-sha256': sha256(utf8Bytes(json)) } };
}

/** The text of a block, and the hash it was written with. */
export interface FoundBlock {
  readonly json: string;
  readonly sha256: string;
}

/** Whether a text is a page of HTML or XML, which a book never is. */
export function isPage(text: string): boolean {
  return /^[\ufeff\s]*</.test(text);
}

/** The block of a record. All else in a record is escaped, so that nothing but the block can look like one. */
export function findBlock(page: string): Outcome<FoundBlock> {
  const [first, ...others] = [...page.matchAll(/<script\b[^>]*\bid="([^"]*)"[^>]*>/gi)].filter(
    ([, id]) => id === BLOCK,
  );
  if (!first) return fail(problem('page-without-book', { from: 0, to: 0 }, {}));
  const from = first.index + first[0].length;
  const length = page.slice(from).search(/<\/script/i);
  const hash = /\bdata-sha256="([0-9a-f]{64})"/i.exec(first[0])?.[1];
  if (others.length > 0 || length < 0 || hash === undefined) return damaged();
  return succeed({ json: page.slice(from, from + length), sha256: hash.toLowerCase() });
}

/** Whether a value is what its block was written with; a copy may lay it out otherwise. */
export function isWhole(value: JsonValue, { sha256: written }: FoundBlock): boolean {
  return sha256(utf8Bytes(canonicalJson(value))) === written;
}

/** The refusal of a record whose book is not the one it was written with. */
export function damaged(): Outcome<never> {
  return fail(problem('record-damaged', { from: 0, to: 0 }, {}));
}
