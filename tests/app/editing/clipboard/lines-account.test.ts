import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pasteForeign } from '../../../../src/app/editing/clipboard/paste-foreign.ts';
import { describeInsertion } from '../../../../src/app/editing/lines/describe-insertion.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { at, smallBook } from '../../small-book.ts';
import { after, done } from '../applied.ts';

const notebook = openNotebook(smallBook());
const seed = 20_260_728;

interface Line {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
}

/** Words of a description, which no quantity is written with. */
const words = fc.constantFrom('pile spacing', 'bents', 'deck load', 'fetch', 'Länge der Kaje', 'no. of rows');
const quantity = fc.constantFrom(
  { value: '12', unit: 'ft' },
  { value: '31', unit: '' },
  { value: '1.5', unit: 'kip/ft' },
  { value: '0.25', unit: 'm' },
);
/** What stands in a cell and is no value: it makes the whole refused. */
const odd = fc.constantFrom('12 13', '#REF!', '1 2 3 m', '~5', '(12', '< 4 m');
const line = fc.record({ label: words, of: quantity, oddity: fc.option(odd, { freq: 8, nil: undefined }) });
const shape = fc.record({
  lines: fc.array(line, { minLength: 2, maxLength: 8 }),
  headed: fc.boolean(),
  ownColumn: fc.boolean(),
  blankEvery: fc.integer({ min: 2, max: 9 }),
});

test(`of lines pasted every cell is a heading, taken, or refused with the whole (seed ${seed})`, () => {
  let refused = 0;
  fc.assert(
    fc.property(shape, ({ lines, headed, ownColumn, blankEvery }) => {
      const told: Line[] = lines.map(({ label, of, oddity }) =>
        oddity === undefined ? { label, ...of } : { label, value: oddity, unit: '' },
      );
      const rows = told.map(({ label, value, unit }) =>
        ownColumn ? [label, value, unit] : [label, unit === '' ? value : `${value} ${unit}`],
      );
      const head = headed ? [ownColumn ? ['Item', 'Value', 'Unit'] : ['Item', 'Value']] : [];
      const spaced = rows.flatMap((row, i) =>
        i > 0 && i % blankEvery === 0 ? [row.map(() => ''), row] : [row],
      );
      const text = [...head, ...spaced].map((row) => row.join('\t')).join('\n');
      const pasted = pasteForeign(notebook, 'beam', [[at('p2', 'r1', 'value')]], 'written', text);
      if (lines.some(({ oddity }) => oddity !== undefined)) {
        refused += 1;
        expect(pasted.ok ? 'taken' : pasted.problems[0]?.code).toMatch(/^paste-/);
        return;
      }
      const { edit } = done(pasted);
      const cells = rows.flat().filter((cell) => cell !== '').length;
      const headings = head.flat().length;
      const parts = headed ? `${headings} headings, ${cells} taken` : `${cells} taken`;
      expect(describeInsertion(edit)).toBe(
        `${lines.length} lines pasted; ${cells + headings} cells: ${parts}`,
      );
      const block = after(smallBook(), edit).sheets[0]?.parts.find(({ id }) => id === 'p2');
      const made = block?.kind === 'rows' ? block.rows.filter(({ name }) => name.startsWith('x_')) : [];
      expect(made.map((row) => [row.label, 'entry' in row ? row.entry : ''])).toEqual(
        told.map(({ label, value, unit }) => [label, unit === '' ? value : `${value} ${unit}`]),
      );
    }),
    { seed, numRuns: 200 },
  );
  expect(refused).toBeGreaterThan(20);
});

test.each(['12 13', '#N/A', '~5 m', '12,5 x', '$ 5 each'])(
  'a first line whose value is %j is no heading, so that it is not left out',
  (value) => {
    const pasted = pasteForeign(
      notebook,
      'beam',
      [[at('p2', 'r1', 'value')]],
      'written',
      `pile spacing\t${value}\nbents\t31`,
    );
    expect(pasted.ok ? 'taken' : pasted.problems[0]?.code).toMatch(/^paste-/);
  },
);
