import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pasteText } from '../../../../src/app/editing/clipboard/paste-text.ts';
import { describeInsertion } from '../../../../src/app/editing/lines/describe-insertion.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { at, smallBook } from '../../small-book.ts';
import { after, done, spans } from '../applied.ts';

const notebook = openNotebook(smallBook());
const seed = 20_260_729;

/** A column of the text: what stands above it, and whether the table has a column of that name to put it in. */
const header = fc.constantFrom(
  { words: 'mark', goes: 0 },
  { words: 'length', goes: 1 },
  { words: 'length (m)', goes: 1 },
  { words: 'colour', goes: undefined },
  { words: '', goes: undefined },
);
const shape = fc.record({
  headers: fc.uniqueArray(header, {
    minLength: 1,
    maxLength: 3,
    selector: ({ goes, words }) => goes ?? words,
  }),
  rows: fc.integer({ min: 1, max: 6 }),
  onto: fc.constantFrom('r0', 'r1', 'head'),
});

test(`headings pasted name columns, or the whole is asked or refused; none is left out (seed ${seed})`, () => {
  let taken = 0;
  let others = 0;
  fc.assert(
    fc.property(shape, ({ headers, rows, onto }) => {
      const values = Array.from({ length: rows }, (_, row) =>
        headers.map(({ goes }) => (goes === 0 ? `m${row}` : goes === 1 ? `${row + 2}.5` : 'red')),
      );
      const text = [headers.map(({ words }) => words), ...values].map((row) => row.join('\t')).join('\n');
      const pasted = pasteText(notebook, at('p3', onto, 'k1'), 'written', text);
      const isNamed = headers.every(({ goes }) => goes !== undefined);
      if (!isNamed) {
        others += 1;
        // One column of words goes below its place as it stands; all else is asked or refused, never put in without a word.
        if (!pasted.ok || pasted.value.kind !== 'edit') return;
        expect(headers).toHaveLength(1);
        const filled = rows + (headers[0]?.words === '' ? 0 : 1);
        const words = describeInsertion(pasted.value.edit) ?? '';
        expect(words === '' ? 1 : Number(/(\d+) taken/.exec(words)?.[1])).toBe(filled);
        return;
      }
      const found = done(pasted);
      const first = onto === 'r1' ? 1 : 0;
      // Other names over rows whose lengths stay: whether these are of the new ones nobody knows.
      const renames = headers.length === 1 && headers[0]?.goes === 0;
      const there = spans(smallBook()).slice(first, first + rows);
      const isAsked = renames && there.some(([mark, length], row) => length !== '' && mark !== `m${row}`);
      expect(found.kind).toBe(isAsked ? 'ask' : 'edit');
      if (found.kind !== 'edit') return;
      taken += 1;
      const cells = headers.length * rows;
      const heads = headers.length === 1 ? '1 heading' : `${headers.length} headings`;
      expect(describeInsertion(found.edit)).toContain(
        `${cells + headers.length} cells: ${heads}, ${cells} taken`,
      );
      const now = spans(after(smallBook(), found.edit)).slice(first, first + rows);
      for (const [at, { goes }] of headers.entries())
        if (goes !== undefined)
          expect(now.map((row) => `${row[goes]}`.replace(/ m$/, ''))).toEqual(values.map((row) => row[at]));
    }),
    { seed, numRuns: 200 },
  );
  expect(Math.min(taken, others)).toBeGreaterThan(30);
});
