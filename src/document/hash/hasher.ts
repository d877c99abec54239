import type { JsonValue } from '../../diagnostics/index.ts';
import { canonicalJson } from '../json/canonical.ts';
import type { Book } from '../schema/book.ts';
import type { Chunk } from '../schema/columns.ts';
import type { Part } from '../schema/parts.ts';
import { sha256 } from './sha256.ts';
import { utf8Bytes } from './utf8.ts';

/**
 * Content hashes of a book's parts, as 64 hexadecimal digits. A hasher remembers by identity what it has hashed, so
 * after an edit only the parts and chunks that changed are read again.
 *
 * - `chunk`: SHA-256 of the chunk's canonical JSON;
 * - `part`: SHA-256 of the part's canonical JSON with every chunk replaced by its hash;
 * - `book`: SHA-256 of the book's canonical JSON with every part replaced by its hash, without its review, which speaks of
 *   that content, and without the version of the format it is written in.
 */
export interface Hasher {
  readonly chunk: (chunk: Chunk) => string;
  readonly part: (part: Part) => string;
  readonly book: (book: Book) => string;
}

/** A hasher that remembers nothing yet. What it remembers lives as long as the hasher and the hashed values. */
export function createHasher(): Hasher {
  const known = new WeakMap<object, string>();
  const remembered = <T extends object>(value: T, content: (value: T) => JsonValue): string => {
    const found = known.get(value);
    if (found !== undefined) return found;
    const hash = sha256(utf8Bytes(canonicalJson(content(value))));
    known.set(value, hash);
    return hash;
  };
  const chunk = (value: Chunk): string => remembered(value, (cells) => cells);
  const part = (value: Part): string => remembered(value, (whole) => partContent(whole, chunk));
  const book = (value: Book): string => remembered(value, (whole) => bookContent(whole, part));
  return { chunk, part, book };
}

/** The content hash of a book. With a hasher kept from an earlier call, only what changed since is hashed. */
export function hashBook(book: Book, hasher: Hasher = createHasher()): string {
  return hasher.book(book);
}

function partContent(part: Part, hash: (chunk: Chunk) => string): JsonValue {
  if (part.kind !== 'table') return part;
  const columns = part.columns.map((column) =>
    column.kind === 'given' ? { ...column, chunks: column.chunks.map(hash) } : column,
  );
  return { ...part, columns };
}

function bookContent(book: Book, hash: (part: Part) => string): JsonValue {
  const { format: _format, version: _version, review: _review, sheets, ...rest } = book;
  const hashed = sheets.map(({ start, parts, ...sheet }) => ({
    ...sheet,
    parts: parts.map(hash),
    ...(start && { start: { ...start, parts: start.parts.map(hash) } }),
  }));
  return { ...rest, sheets: hashed };
}
