import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Delimiter, readTable, type TableColumn, writeTable } from '../../src/tables/index.ts';

const SEED = 23;

const words = fc
  .tuple(fc.constantFrom('', '=', '+', '-', '@', "'", "'=", "''-"), fc.stringMatching(/^[a-z,;"\t\n]{0,6}$/))
  .map(([start, rest]) => `${start}w${rest}w`);
const number = fc.oneof(fc.integer({ min: -9999, max: 9999 }), fc.constantFrom(0.5, 12.25, 4548.5));
const row = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ item: fc.option(words), load: fc.option(number), n: fc.option(number) }),
  },
  { weight: 1, arbitrary: fc.constant({ item: null, load: null, n: null }) },
);
const delimiter = fc.constantFrom<Delimiter>(',', ';', '\t');
const columns: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'load', kind: 'given', unit: 'kip' },
  { name: 'n', kind: 'given' },
];

test('a table that is written reads back as it was, blank rows and words like formulas too', () => {
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 12 }), delimiter, (rows, parts) => {
      const text = writeTable(
        [
          { name: 'item', words: true, cells: rows.map(({ item }) => item) },
          { name: 'load', unit: 'kip', cells: rows.map(({ load }) => load) },
          { name: 'n', cells: rows.map(({ n }) => n) },
        ],
        parts,
      );
      const read = readTable(text, columns, {
        delimiter: parts,
        totals: 'in',
        sums: 'in',
        notes: 'in',
        unnamed: 'in',
      });
      if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('; '));
      const { length, cells } = read.value;
      expect(length).toBe(rows.length);
      expect(cells.item).toEqual(rows.map(({ item }) => item?.trim() ?? null));
      const load = rows.map(({ load: kip }) => kip);
      const stated = load.some((one) => one !== null);
      expect(cells.load).toEqual(load.map((one) => (one === null || !stated ? null : `${one} kip`)));
      expect(cells.n).toEqual(rows.map(({ n }) => n));
    }),
    { seed: SEED, numRuns: 600 },
  );
});

test('a table of one column keeps its blank rows, the last ones too', () => {
  const only = [{ name: 'item', kind: 'given', type: 'text' }] as const;
  fc.assert(
    fc.property(fc.array(fc.option(words), { minLength: 1, maxLength: 8 }), (cells) => {
      const read = readTable(writeTable([{ name: 'item', words: true, cells }]), only, {
        delimiter: ',',
        notes: 'in',
        totals: 'in',
        sums: 'in',
      });
      expect(read.ok && read.value.cells.item).toEqual(cells.map((cell) => cell?.trim() ?? null));
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test('no spreadsheet finds a formula among words', () => {
  const text = writeTable([{ name: 'item', words: true, cells: ['=1+1', '+x', '-x', '@x', "'=x", 'a=b'] }]);
  expect(text.split('\r\n').slice(1, 7)).toEqual(["'=1+1", "'+x", "'-x", "'@x", "''=x", 'a=b']);
});
