import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Delimiter, readTable, type TableColumn, writeTable } from '../../src/tables/index.ts';

test('a table is written with the unit of its numbers, entries as typed', () => {
  const text = writeTable([
    { name: 'soil', cells: ['clay, "fat"', 'sand', null] },
    { name: 'thickness', unit: 'ft', cells: ['12 ft', 20, null] },
    { name: 's_u', unit: 'kPa', cells: ['30 kPa', null, null] },
    { name: 'n', cells: [1, 2, 3] },
  ]);
  expect(text).toBe('soil,thickness (ft),s_u,n\r\n"clay, ""fat""",12 ft,30 kPa,1\r\nsand,20,,2\r\n,,,3\r\n');
});

test.each<Delimiter>([',', ';', '\t'])(
  'one number of three decimals is read back unasked, parted by “%s”',
  (delimiter) => {
    const text = writeTable(
      [
        { name: 'n', cells: [1.125, -12.375] },
        { name: 'load', cells: [1, 2] },
      ],
      delimiter,
    );
    expect(text).toBe(`n${delimiter}load\r\n1.1250${delimiter}1\r\n-12.3750${delimiter}2\r\n`);
    const read = readTable(text, columns, { delimiter });
    expect(read.ok && read.value.cells).toMatchObject({ n: ['1.1250', '-12.3750'] });
    const told = writeTable([{ name: 'n', cells: [1.125, 0.5] }], delimiter);
    expect(told).toBe('n\r\n1.125\r\n0.5\r\n');
  },
);

const columns: readonly TableColumn[] = [
  { name: 'soil', kind: 'given', type: 'text' },
  { name: 'load', kind: 'given' },
  { name: 'n', kind: 'given' },
];

test('what is written reads back with the same values, whatever the delimiter', () => {
  const word = fc
    .string({
      minLength: 1,
      maxLength: 9,
      unit: fc.constantFrom('a', 'é', '"', ',', ';', '\t', ' ', '\n', "'"),
    })
    .map((text) => `w${text}w`);
  const row = fc.record({
    soil: fc.option(word),
    load: fc.oneof(fc.constant(null), fc.integer(), fc.constantFrom('12 ft', '12\'-6"', '3 m')),
    n: fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => x + 0),
  });
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1, maxLength: 20 }),
      fc.constantFrom<Delimiter>(',', ';', '\t'),
      (rows, delimiter) => {
        // One number that decides how decimals are written, as the text has semicolons.
        const cells = [...rows, { soil: 'w', load: 0, n: 0.5 }];
        const text = writeTable(
          [
            { name: 'soil', cells: cells.map(({ soil }) => soil) },
            { name: 'load', unit: 'ft', cells: cells.map(({ load }) => load) },
            { name: 'n', cells: cells.map(({ n }) => n) },
          ],
          delimiter,
        );
        // Rows made at random may look like totals of those above, or lack words.
        const read = readTable(text, columns, { totals: 'in', sums: 'in', notes: 'in', unnamed: 'in' });
        expect(read.ok ? read.value.problems : read.problems).toEqual([]);
        expect(read.ok && read.value.cells).toEqual({
          soil: cells.map(({ soil }) => soil),
          load: cells.map(({ load }) => (typeof load === 'number' ? `${load} ft` : load)),
          n: cells.map(({ n }) => n),
        });
      },
    ),
    { seed: 4180, numRuns: 500 },
  );
});
