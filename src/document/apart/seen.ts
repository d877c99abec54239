import type { JsonValue } from '../../diagnostics/index.ts';
import type { Patch } from '../edits/patch.ts';
import { positionIn } from '../edits/places.ts';
import { sha256 } from '../hash/sha256.ts';
import { utf8Bytes } from '../hash/utf8.ts';
import { canonicalJson } from '../json/canonical.ts';
import type { Path } from '../json/path.ts';
import type { IdRun } from '../row-ids.ts';
import type { Book } from '../schema/book.ts';

/** What an author saw at a place of the book: the value there, absent where there was none; of a large one its hash. */
export interface Sight {
  readonly at: Path;
  readonly value?: JsonValue;
  readonly hash?: string;
}

/** One change with what its author saw of the thing changed. Rows of tables are named by their identities. */
export interface SeenPatch {
  readonly patch: Patch;
  readonly saw: readonly Sight[];
  /** Of `cells` and `splice`: the rows overwritten or taken out, in the order they stood. */
  readonly rows?: readonly IdRun[];
  /** Of `splice`: the row in front of those put in, 0 for none. */
  readonly behind?: number;
  /** Of `cells` and `splice`: what stood in those rows. */
  readonly stood?: string;
  /** Of `insert` and `move`: the item in front of the new place, `null` for none. */
  readonly front?: string | null;
}

/** An edit as it can be applied to a book that others have changed since; plain JSON data. */
export interface SeenEdit {
  readonly label: string;
  readonly patches: readonly SeenPatch[];
}

/** The value at a place of a book; undefined where there is none. */
export function valueAt(book: Book, at: Path): JsonValue | undefined {
  let value: unknown = book;
  for (const [depth, step] of at.entries()) {
    if (typeof value !== 'object' || value === null) return undefined;
    if (Array.isArray(value)) value = value[positionIn(value, at[depth - 1], step)];
    else value = Object.hasOwn(value, step) ? (value as Readonly<Record<string, unknown>>)[step] : undefined;
  }
  return value as JsonValue | undefined;
}

/** So long a text may a value have that is carried along as it is. */
const CARRIED = 400;

/** What there is to see at a place. */
export function sightOf(book: Book, at: Path): Sight {
  const value = valueAt(book, at);
  if (value === undefined) return { at };
  const text = canonicalJson(value);
  return text.length <= CARRIED ? { at, value } : { at, hash: hashOf(text) };
}

/** Whether a place is as it was seen. */
export function isAsSeen(book: Book, { at, value, hash }: Sight): boolean {
  const now = valueAt(book, at);
  if (now === undefined) return value === undefined && hash === undefined;
  const text = canonicalJson(now);
  return hash === undefined ? value !== undefined && canonicalJson(value) === text : hashOf(text) === hash;
}

/** A short name for a text that no other text has. */
export function hashOf(text: string): string {
  return sha256(utf8Bytes(text));
}
