import type { JsonObject, Migration } from './migration.ts';

/** Version 2 had a review whose lists were empty; two more belong to it now. */
export const from2: Migration = (book) => ({
  ...book,
  review: isObject(book.review) ? { ...book.review, seen: [], bases: [] } : (book.review ?? null),
});

function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
