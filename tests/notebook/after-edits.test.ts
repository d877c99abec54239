import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Book, openBook, setEntry } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { type Dice, dice, stepByChance } from '../document/random-edits.ts';

const SEED = 20_261_128;
console.log(`notebook: random edits start from seed ${SEED}`);

function shipped(id: string): Book {
  const path = new URL(`../../templates/${id}/book.quaybook.json`, import.meta.url);
  const opened = openBook(readFileSync(path, 'utf8'));
  if (!opened.ok) throw new Error(`the template ${id} does not open`);
  return opened.value.book;
}

/** Entries that make lines fail, wait and come back. */
const entries = ['', '0', '12 ft', '3 m', 'nonsense', '-4', '250 kN', '15 %'];

/** An entry put into a line of the book, most of the time; else any edit at all. */
function step(book: Book, toss: Dice, any: number) {
  if (any === 0) return stepByChance(book, [toss]);
  const lines = book.sheets.flatMap((sheet) =>
    sheet.parts.flatMap((part) =>
      part.kind === 'rows'
        ? part.rows
            .filter(({ kind }) => kind === 'given')
            .map((row) => ({ sheet: sheet.key, part: part.id, row: row.id }))
        : [],
    ),
  );
  const line = lines[toss.where[0] % Math.max(1, lines.length)];
  return line && setEntry(line, entries[toss.where[1] % entries.length] as string);
}

describe.each(['debris-haul', 'pile-bearing', 'fender-energy', 'bollard-pull'])('%s', (id) => {
  const book = shipped(id);
  test('after any edits the problems told are those of the book opened anew', { timeout: 120_000 }, () => {
    let edits = 0;
    fc.assert(
      fc.property(fc.array(fc.tuple(dice, fc.nat(3)), { minLength: 1, maxLength: 5 }), (tosses) => {
        const notebook = openNotebook(book);
        notebook.problems();
        for (const [toss, any] of tosses) {
          const edit = step(notebook.book, toss, any);
          if (!edit || !notebook.apply(edit).ok) continue;
          edits += 1;
          expect(notebook.problems()).toEqual(openNotebook(notebook.book).problems());
        }
      }),
      { seed: SEED, numRuns: 4 },
    );
    expect(edits).toBeGreaterThan(8);
  });
});
