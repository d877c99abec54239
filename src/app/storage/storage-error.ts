/** The stored book is not there any more. */
export class BookRemoved extends Error {
  override readonly name = 'BookRemoved';
}

/** The stored book has edits that were not made here. */
export class BookChanged extends Error {
  override readonly name = 'BookChanged';
}

const notAllowed = 'this browser does not allow it';

const reasons: ReadonlyMap<string, string> = new Map([
  ['QuotaExceededError', 'the storage of this browser is full'],
  ['SecurityError', notAllowed],
  ['InvalidStateError', notAllowed],
  [
    'VersionError',
    'a newer version of Quaybook has the storage; save a file and open it there, or close its tabs and load this page anew (where that brings this older version again, only the file helps)',
  ],
  ['BookRemoved', 'this book was removed from this browser'],
  ['BookChanged', 'this book was changed in another tab'],
]);

/** Why the storage of this browser would not keep something, as the end of a sentence. */
export function reasonOf(error: unknown): string {
  if (!(error instanceof Error) && !(error instanceof DOMException)) return String(error);
  return reasons.get(error.name) ?? (error.message || error.name);
}
