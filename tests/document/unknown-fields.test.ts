import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openBook } from '../../src/document/index.ts';
import { textBeside } from './read-book.ts';

const seed = 20_260_730;
const book = textBeside('books/every-part.quaybook.json');
type Anything = { [key: string]: unknown } | unknown[];

/** The places of all objects in a book, each as the path that leads there. */
function objectsIn(
  value: unknown,
  path: readonly (string | number)[] = [],
): readonly (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [];
  const below = Object.entries(value).flatMap(([key, one]) =>
    objectsIn(one, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return Array.isArray(value) ? below : [path, ...below];
}

// The roles of a figure are known to the figures alone, which the document does not know.
const places = objectsIn(JSON.parse(book)).filter((path) => path.at(-1) !== 'cells');

test(`what a file has that no book knows is named where it stands, and nothing is opened without it (seed ${seed})`, () => {
  expect(places.length).toBeGreaterThan(40);
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.nat({ max: places.length - 1 }), { minLength: 1, maxLength: 5 }),
      fc.constantFrom('colour', 'macro', 'hidden', 'x-note', 'données'),
      (chosen, field) => {
        const changed = JSON.parse(book) as Anything;
        for (const at of chosen) {
          let target: unknown = changed;
          for (const step of places[at] ?? []) target = (target as Record<string | number, unknown>)[step];
          (target as Record<string, unknown>)[field] = 'anything';
        }
        const opened = openBook(JSON.stringify(changed));
        expect(opened.ok).toBe(false);
        const found = opened.ok ? [] : opened.problems;
        const named = found.filter(
          ({ code }) => code === 'book-field-unknown' || code === 'book-value-wrong',
        );
        // Each of them, and nothing else.
        expect(named).toHaveLength(found.length);
        expect(named.filter(({ message }) => message.includes(field)).length).toBe(chosen.length);
      },
    ),
    { seed, numRuns: 150 },
  );
});
