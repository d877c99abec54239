/** What spreadsheets would take for a formula (CSV or formula injection), maybe behind apostrophes. */
const FORMULA_START = /^'*[=+\-@]/;

/** A text that no spreadsheet takes for a formula: an apostrophe stands in front of what begins like one. */
export function guardText(text: string): string {
  return FORMULA_START.test(text) ? `'${text}` : text;
}

/** The text that {@link guardText} was given. */
export function unguardText(text: string): string {
  return text.startsWith("'") && FORMULA_START.test(text) ? text.slice(1) : text;
}
