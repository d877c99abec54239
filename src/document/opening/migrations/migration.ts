import type { JsonValue } from '../../../diagnostics/index.ts';

/** A JSON object as it was read, of any version of the format. */
export type JsonObject = Readonly<Record<string, JsonValue>>;

/**
 * Turns a book of one version into a book of the next, `version` excepted, which the caller raises. It is pure and
 * never fails: what it does not understand it leaves for the schema of the newest version to refuse.
 */
export type Migration = (book: JsonObject) => JsonObject;
