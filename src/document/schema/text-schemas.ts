import * as z from 'zod/mini';

// The page's content-security policy forbids generated code, so zod must never try to compile its checks.
z.config({ jitless: true });

/** The longest text of each kind, in UTF-16 units. A longer one is refused, never cut. */
const TEXT_LIMITS = {
  name: 60,
  id: 60,
  unit: 100,
  entry: 1_000,
  line: 500,
  note: 4_000,
  formula: 8_000,
  prose: 50_000,
} as const;

/**
 * The spelling of a name: a letter (Greek too), then letters, digits, `_` and `'`. The micro, ohm, kelvin and
 * angstrom signs look like letters and are none: a stored name has the letters themselves, so that two names that
 * look the same are the same.
 */
export const NAME_PATTERN = /^(?!.*[\u00b5\u2126\u212a\u212b])\p{L}[\p{L}\p{Nd}_']*$/u;

/** The spelling of an id: letters, digits, `_`, `-`, `.` and `:` of ASCII. */
export const ID_PATTERN = /^[A-Za-z0-9][A-Za-z0-9_.:-]*$/;

/** The most options one choice lists. */
export const OPTION_LIMIT = 500;

/** The most UTF-16 units a name has. */
export const NAME_LENGTH_LIMIT = TEXT_LIMITS.name;

/** The most characters of an entry. */
export const ENTRY_LENGTH_LIMIT = TEXT_LIMITS.entry;

/** A name that formulas use, or a sheet's key. */
export const nameText = z.string().check(z.maxLength(TEXT_LIMITS.name), z.regex(NAME_PATTERN));

/** What identifies a part, row or column for as long as it lives; unique in the book. */
export const idText = z.string().check(z.maxLength(TEXT_LIMITS.id), z.regex(ID_PATTERN));

/** What a sketch calls one of the values it shows: an id, but none of the keys that reading a book refuses. */
export const roleText = idText.check(z.regex(/^(?!(?:constructor|prototype)$)/));

/** A unit as written, `''` for none stated. */
export const unitText = z.string().check(z.maxLength(TEXT_LIMITS.unit));

/** What a person typed as a value, kept as typed; `''` is missing. */
export const entryText = z.string().check(z.maxLength(TEXT_LIMITS.entry));

/** One line of words: a label, a title, a reference. */
export const lineText = z.string().check(z.maxLength(TEXT_LIMITS.line));

/** A remark of a few sentences. */
export const noteText = z.string().check(z.maxLength(TEXT_LIMITS.note));

/** A formula as written. */
export const formulaText = z.string().check(z.maxLength(TEXT_LIMITS.formula));

/** Running text of a prose part. */
export const proseText = z.string().check(z.maxLength(TEXT_LIMITS.prose));

/** A content hash: SHA-256 in hexadecimal digits. */
export const hashText = z.string().check(z.regex(/^[0-9a-f]{64}$/));
