import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  blankBook,
  type Edit,
  idOfRow,
  insertTableRows,
  removeTableRows,
  rowIdsOf,
  rowWithId,
  type Table,
} from '../../src/document/index.ts';

const place = { sheet: 's', table: 't' };

function bookOf(length: number): Book {
  const table: Table = { id: 't', kind: 'table', name: 't', length, columns: [] };
  return { ...blankBook(), sheets: [{ key: 's', title: 'S', parts: [table] }] };
}

function tableOf(book: Book): Table {
  const part = book.sheets[0]?.parts[0];
  if (part?.kind !== 'table') throw new Error('the table is gone');
  return part;
}

function after(book: Book, edit: Edit): { readonly book: Book; readonly inverse: Edit } {
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  return applied.value;
}

/** The identities as a list, a row each. */
const listed = (book: Book): readonly (number | undefined)[] => {
  const table = tableOf(book);
  return Array.from({ length: table.length ?? 0 }, (_, row) => idOfRow(rowIdsOf(table), row));
};

test('a table that says nothing has its rows numbered, also after rows at its end', () => {
  const start = bookOf(3);
  expect(listed(start)).toEqual([1, 2, 3]);
  const longer = after(start, insertTableRows(place, tableOf(start), 3, { length: 2, cells: {} }));
  expect(listed(longer.book)).toEqual([1, 2, 3, 4, 5]);
  expect(tableOf(longer.book).ids).toBeUndefined();
});

test('an identity that went is never given again, and comes back with its row', () => {
  const start = bookOf(3);
  const gone = after(start, removeTableRows(place, 2, 1));
  const added = after(gone.book, insertTableRows(place, tableOf(gone.book), 2, { length: 1, cells: {} }));
  expect(listed(added.book)).toEqual([1, 2, 4]);
  const back = after(gone.book, gone.inverse);
  expect(back.book).toEqual(start);
});

test('rows and identities do as a plain list of numbers does, and undo gives all back', () => {
  const splice = fc.record({ from: fc.nat(30), remove: fc.nat(4), insert: fc.nat(5) });
  fc.assert(
    fc.property(fc.nat(8), fc.array(splice, { maxLength: 25 }), (length, splices) => {
      let book = bookOf(length);
      const start = book;
      let model = Array.from({ length }, (_, row) => row + 1);
      let next = length + 1;
      const inverses: Edit[] = [];
      for (const { from: wanted, remove: most, insert } of splices) {
        const from = Math.min(wanted, model.length);
        const remove = Math.min(most, model.length - from);
        const edits = [
          removeTableRows(place, from, remove),
          insertTableRows(place, tableOf(book), from, { length: insert, cells: {} }),
        ];
        for (const edit of edits) {
          const step = after(book, edit);
          book = step.book;
          inverses.push(step.inverse);
        }
        const fresh = Array.from({ length: insert }, (_, at) => next + at);
        next += insert;
        model = model.toSpliced(from, remove, ...fresh);
        expect(listed(book)).toEqual(model);
        const ids = rowIdsOf(tableOf(book));
        expect(model.map((id) => rowWithId(ids, id))).toEqual(model.map((_, row) => row));
        expect(rowWithId(ids, next)).toBeUndefined();
      }
      for (const inverse of inverses.reverse()) book = after(book, inverse).book;
      expect(book).toEqual(start);
    }),
    { numRuns: 300, seed: 20261128 },
  );
});

test('a table of 100,000 rows with a row put into its middle says so in a few runs', () => {
  const start = bookOf(100_000);
  const { book } = after(start, insertTableRows(place, tableOf(start), 50_000, { length: 1, cells: {} }));
  expect(JSON.stringify(tableOf(book).ids).length).toBeLessThan(200);
});

test.each([
  ['too few', { runs: [{ first: 1, count: 2 }], next: 9 }],
  [
    'one twice',
    {
      runs: [
        { first: 1, count: 2 },
        { first: 2, count: 1 },
      ],
      next: 9,
    },
  ],
  ['one still to be given', { runs: [{ first: 1, count: 3 }], next: 3 }],
])('a splice that brings %s is refused whole: book-row-ids', (_, back) => {
  const start = bookOf(3);
  const edit: Edit = {
    label: 'x',
    patches: [
      { kind: 'splice', at: ['sheets', 's', 'parts', 't'], from: 0, remove: 0, insert: 0, cells: {}, back },
    ],
  };
  const applied = applyEdit(start, edit);
  expect(applied.ok ? 'taken' : applied.problems[0]?.code).toBe('edit-place-unfit');
});
