import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readCells, writeCells } from '../../../../src/app/editing/clipboard/clipboard-text.ts';

test.each([
  ['12', [['12']]],
  ['12\n', [['12']]],
  [
    '1\t2\r\n3\t4\r\n',
    [
      ['1', '2'],
      ['3', '4'],
    ],
  ],
  [
    'a\t\n\tb',
    [
      ['a', ''],
      ['', 'b'],
    ],
  ],
  ['"two\nlines"\tx', [['two\nlines', 'x']]],
  [`"12'-6"" deep"`, [[`12'-6" deep`]]],
  [`12'-6 1/2"\t3`, [[`12'-6 1/2"`, '3']]],
  ['"left open\t3', [['"left open', '3']]],
])('%j', (text, cells) => {
  expect(readCells(text)).toEqual(cells);
});

test('what is written is read back', () => {
  const cell = fc.stringMatching(/^[a-z0-9 "'\t\r\n]{0,6}$/);
  const row = fc.array(cell, { minLength: 1, maxLength: 4 });
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 4 }), (rows) => {
      // A last row of one blank cell is a last line end, as in every spreadsheet.
      const last = rows.at(-1);
      fc.pre(!(rows.length > 1 && last?.length === 1 && last[0] === ''));
      expect(readCells(writeCells(rows))).toEqual(rows);
    }),
    { seed: 11, numRuns: 400 },
  );
});
