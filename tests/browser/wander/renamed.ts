import { type Book, type Place, textAt, withText } from './book.ts';
import { differences } from './differences.ts';

const word = /[\p{L}][\p{L}\p{N}_']*/gu;

/**
 * The book in which the name at a place is another: the page's book, if it says the new name just where the old one
 * stood and nowhere leaves the old one on its own sheet; else only the name itself is changed, which shows what is wrong.
 */
export function renamed(book: Book, place: Place, name: string, seen: Book): Book {
  const old = textAt(book, place) ?? '';
  const plain = withText(book, place, name);
  if (old === name) return book;
  const back = JSON.parse(
    JSON.stringify(seen).replace(word, (found) => (found === name ? old : found)),
  ) as Book;
  if (differences(book, back, 1).length > 0 || textAt(seen, place) !== name) return plain;
  const sheet = seen.sheets.find(({ key }) => key === place.sheet);
  const said = sheet?.parts.flatMap(({ rows = [] }) => rows.map(({ formula = '' }) => formula)) ?? [];
  return said.some((formula) => saysName(formula, old)) ? plain : seen;
}

/** Whether a formula says a name by itself: not behind a dot, and not as the unit of a number. */
function saysName(formula: string, name: string): boolean {
  for (const found of formula.replace(/"[^"]*"/g, '""').matchAll(word)) {
    const before = formula.slice(0, found.index);
    const inUnit = /\d\s*(\([^()]*)?$/.test(before);
    if (
      found[0] === name &&
      !before.endsWith('.') &&
      !formula.slice(found.index + name.length).startsWith('.') &&
      !inUnit
    )
      return true;
  }
  return false;
}
