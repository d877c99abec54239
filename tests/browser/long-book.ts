import { type Book, blankBook, chunksOfCells } from '../../src/document/index.ts';

/** The rows of its table. */
export const ROWS = 20_000;
/** A book with a column in which every row looks at every row: some seconds of work, done in slices. */
export const longBook: Book = {
  ...blankBook(),
  sheets: [
    {
      key: 'j',
      title: 'Job',
      parts: [
        {
          id: 'p',
          kind: 'rows',
          rows: [
            { id: 'a', kind: 'given', name: 'a', label: 'first number', entry: '1' },
            { id: 'b', kind: 'calc', name: 'b', label: 'one more', formula: 'a + 1' },
            { id: 'f', kind: 'given', name: 'f', label: 'factor on the rows', entry: '2' },
            { id: 's', kind: 'calc', name: 's', label: 'sum of the rows', formula: 'SUM(t.n) / 100' },
          ],
        },
        { id: 'c', kind: 'chart', form: 'line', title: 'Way to go', table: 't', x: 'k', y: ['n'] },
        {
          id: 't',
          kind: 'table',
          name: 't',
          length: ROWS,
          columns: [
            {
              id: 'k',
              kind: 'given',
              name: 'k',
              label: 'row',
              chunks: chunksOfCells(Array.from({ length: ROWS }, (_, row) => row)),
            },
            // Every row looks at every row, and no sorting helps: MAX(t.k) - k, times the factor.
            { id: 'n', kind: 'calc', name: 'n', label: 'way to go', formula: 'f * MAX(t.k - k)' },
          ],
        },
      ],
    },
    {
      key: 'q',
      title: 'Questions',
      parts: [
        {
          id: 'r',
          kind: 'rows',
          rows: [{ id: 'h', kind: 'check', name: 'h', label: 'rows are few', formula: 'j.s <= 1000' }],
        },
      ],
    },
  ],
};
