import { expect, test } from 'vitest';
import { blankRows } from '../../../../src/app/sheet/table/blank-rows.ts';
import { CHUNK_CELLS, type Table } from '../../../../src/document/index.ts';

const given = (name: string, cells: readonly (string | number | null)[]) =>
  ({ id: name, kind: 'given', name, chunks: chunked(cells) }) as const;

function chunked<T>(cells: readonly T[]): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(cells.length / CHUNK_CELLS) }, (_, at) =>
    cells.slice(at * CHUNK_CELLS, (at + 1) * CHUNK_CELLS),
  );
}

const table = (length: number, a: readonly (string | null)[], b: readonly (number | null)[]): Table => ({
  id: 'p',
  kind: 'table',
  name: 't',
  length,
  columns: [given('a', a), given('b', b), { id: 'c', kind: 'calc', name: 'c', formula: 'b * 2', unit: '-' }],
});

test('a row is blank where nothing at all is entered, and not where one cell is', () => {
  expect(blankRows(table(3, ['x', null, 'y'], [1, 2, null]))).toBeUndefined();
  expect(blankRows(table(4, ['x', null, null, ''], [1, null, 0, null]))).toEqual({ first: 1, count: 2 });
  expect(blankRows(table(0, [], []))).toBeUndefined();
});

test('blank rows are found in every part of a long table', () => {
  const length = CHUNK_CELLS + 3;
  const words = Array.from({ length }, (_, row) => (row === CHUNK_CELLS + 1 ? null : 'x'));
  const numbers = new Array<null>(length).fill(null);
  expect(blankRows(table(length, words, numbers))).toEqual({ first: CHUNK_CELLS + 1, count: 1 });
});

test('a row in which only a value is stated is not blank, wherever it has gone', () => {
  const before = table(4, ['x', null, null, null], [1, null, null, null]);
  const [a, b, c] = before.columns;
  if (!a || !b || c?.kind !== 'calc') throw new Error('the third column is computed');
  const stated = { ...before, columns: [a, b, { ...c, stated: [{ row: 3, entry: '5', reason: '' }] }] };
  expect(blankRows(before)).toEqual({ first: 1, count: 3 });
  expect(blankRows(stated)).toEqual({ first: 1, count: 2 });
  // The third row has moved to the end, and a new one stands in its place.
  const runs = [
    { first: 1, count: 2 },
    { first: 5, count: 1 },
    { first: 3, count: 1 },
  ];
  expect(blankRows({ ...stated, ids: { runs, next: 6 } })).toEqual({ first: 1, count: 2 });
  const others = [{ first: 11, count: 4 }];
  expect(blankRows({ ...stated, ids: { runs: others, next: 15 } })).toEqual({ first: 1, count: 3 });
});
