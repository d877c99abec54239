import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Book, setEntry } from '../../src/document/index.ts';
import type { Allowance } from '../../src/engine/index.ts';
import { type Notebook, openNotebook } from '../../src/notebook/index.ts';
import { type Dice, dice, stepByChance } from '../document/random-edits.ts';
import { randomFrom } from '../recheck/random.ts';
import { randomBook } from '../recheck/random-book.ts';

const SEED = 20_261_129;
console.log(`notebook: books computed in slices start from seed ${SEED}`);

/** Time that is over at the so-manieth look at the clock, with work of so many steps being long. */
interface Slice {
  readonly looks: number;
  readonly long: number;
}

const slice: fc.Arbitrary<Slice> = fc.record({ looks: fc.nat(4), long: fc.integer({ min: 1, max: 60 }) });

function allowanceOf({ looks, long }: Slice): Allowance {
  let left = looks;
  return { isOver: () => left-- <= 0, long };
}

/** What happens to a book: an edit, with what it may compute at once, then slices; without any, computing is stopped. */
const happening = fc.record({
  toss: dice,
  any: fc.nat(3),
  atOnce: slice,
  slices: fc.array(slice, { maxLength: 3 }),
});

const entries = ['', '0', '12 ft', '3', '-4', '250 kN', '15 %', 'TRUE', 'clay', '2026-11-20'];

/** An entry of a line most of the time, else any edit of the book at all. */
function editOf(book: Book, toss: Dice, any: number) {
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

/** Everything a notebook says of a book, by id; a column row by row. */
function readAll(notebook: Notebook): ReadonlyMap<string, unknown> {
  const said = new Map<string, unknown>();
  for (const [id, { kind }] of notebook.model.items) {
    if (kind === 'input' || kind === 'formula') {
      said.set(id, notebook.result(id));
      said.set(`verdict of ${id}`, notebook.verdict(id));
      continue;
    }
    const column = notebook.column(id);
    if (column.status !== 'ok') said.set(id, column);
    else {
      const { reading } = column;
      said.set(`rows of ${id}`, reading.length);
      for (let row = 0; row < reading.length; row += 1) said.set(`${id} ${row}`, reading.at(row));
    }
  }
  return said;
}

/** What stands there as a value. */
const isValue = (said: unknown): boolean =>
  typeof said === 'object' && said !== null && 'status' in said && said.status === 'ok';

test('a book computed in slices, edited and stopped in between, shows no other value, and ends the same', () => {
  let [looks, pending, shownMeanwhile] = [0, 0, 0];
  fc.assert(
    fc.property(
      fc.nat(1000),
      slice,
      fc.array(happening, { minLength: 1, maxLength: 6 }),
      (seed, opening, all) => {
        const book = randomBook(randomFrom(SEED + seed));
        let now = opening;
        const sliced = openNotebook(book, () => allowanceOf(now));
        const whole = openNotebook(book);
        /** Whatever has a value must have it of the book as it stands: nothing is left over from before an edit. */
        const look = (): void => {
          looks += 1;
          if (sliced.pending) pending += 1;
          const expected = readAll(whole);
          for (const [id, said] of readAll(sliced)) {
            if (!isValue(said)) continue;
            if (sliced.pending) shownMeanwhile += 1;
            expect(said, id).toEqual(expected.get(id));
          }
        };
        look();
        for (const { toss, any, atOnce, slices } of all) {
          const edit = editOf(sliced.book, toss, any);
          now = atOnce;
          if (edit) expect(sliced.apply(edit).ok).toBe(whole.apply(edit).ok);
          look();
          for (const one of slices) {
            sliced.proceed(allowanceOf(one));
            look();
          }
        }
        sliced.proceed();
        expect(sliced.pending).toBeUndefined();
        expect(readAll(sliced)).toEqual(readAll(whole));
        expect(sliced.problems()).toEqual(whole.problems());
      },
    ),
    { seed: SEED, numRuns: 40 },
  );
  // The books were not computed at once, and not hidden as long as something was pending.
  expect(pending).toBeGreaterThan(looks / 10);
  expect(shownMeanwhile).toBeGreaterThan(looks);
});
