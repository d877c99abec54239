import { expect, test } from 'vitest';
import { enterText } from '../../../../src/app/editing/cells/cell-edits.ts';
import { type Book, blankBook } from '../../../../src/document/index.ts';

const book: Book = {
  ...blankBook(),
  sheets: [
    {
      key: 's',
      title: 'Soil',
      parts: [
        {
          id: 't',
          kind: 'table',
          name: 'layers',
          length: 1,
          columns: [{ id: 'h', kind: 'given', name: 'h', unit: 'm', chunks: [[1]] }],
        },
      ],
    },
  ],
};
const heading = (text: string) => enterText(book, { sheet: 's', part: 't', item: 'head', field: 'h' }, text);

test.each(['22', '0.3', '30 kPa', ' -4 m ', '5 %', '12\' 6"', '1e3'])(
  '“%s” is no heading of a column',
  (text) => {
    const edit = heading(text);
    expect(edit.ok ? [] : edit.problems.map(({ code }) => code)).toEqual(['heading-is-value']);
  },
);

test.each(['thickness', 'h 22', '1st boring', '30 kPa and above', '2 sides', 'N60', ''])(
  '“%s” is one',
  (text) => {
    expect(heading(text).ok).toBe(true);
  },
);
