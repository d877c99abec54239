import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { followedWords, stayingWords } from '../../../../src/app/dialogs/rows/kept-columns.ts';
import { followItems, nameItems } from '../../../../src/app/editing/clipboard/follow-items.ts';
import { type Others, putRows } from '../../../../src/app/editing/clipboard/put-rows.ts';
import {
  applyEdit,
  type Cell,
  cellOf,
  idOfRow,
  rowIdsOf,
  type Table,
} from '../../../../src/document/index.ts';
import { bookOf } from '../../../make-book.ts';

/** A list of items with a quantity, and two columns that an estimator filled in. */
function list(items: readonly string[], rates: readonly Cell[], notes: readonly Cell[]): Table {
  return {
    id: 'list',
    kind: 'table',
    name: 'list',
    length: items.length,
    columns: [
      { id: 'i', kind: 'given', name: 'item', type: 'text', optional: true, chunks: [items] },
      { id: 'q', kind: 'given', name: 'quantity', unit: 'm^3', optional: true, chunks: [items.map(() => 1)] },
      { id: 'r', kind: 'given', name: 'rate', unit: '-', optional: true, chunks: [rates] },
      { id: 'n', kind: 'given', name: 'note', type: 'text', optional: true, chunks: [notes] },
    ],
  };
}

/** What stands in a column once new rows have gone over a list from a row on. */
function rowsPut(table: Table, names: readonly string[], row: number): (column: number) => readonly Cell[] {
  const rows = { length: names.length, cells: { item: names, quantity: names.map(() => 2) } };
  const book = bookOf({ s: [table] });
  const applied = applyEdit(book, putRows('s', table, rows, { kind: 'from', row }, '', 'follow'));
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  const [part] = applied.value.book.sheets[0]?.parts ?? [];
  if (part?.kind !== 'table') throw new Error('the table is gone');
  return (at) => {
    const column = part.columns[at];
    if (column?.kind !== 'given') throw new Error('no such column');
    return Array.from({ length: part.length ?? 0 }, (_, place) => cellOf(column, place));
  };
}

/** What is stated in each row once new rows have gone over “slab A” and “slab B”, of which the first has a stated volume. */
function statedAfter(names: readonly string[], others: Others): readonly unknown[] {
  const plain = list(['slab A', 'slab B'], [null, null], [null, null]);
  const stated = [{ row: 1, entry: '9 m^3', reason: 'survey' }];
  const volume = { id: 'v', kind: 'calc', name: 'V', formula: 'quantity * 2', stated } as const;
  const rows = { length: names.length, cells: { item: names, quantity: names.map(() => 2) } };
  const table = { ...plain, columns: [...plain.columns, volume] };
  const edit = putRows('s', table, rows, { kind: 'from', row: 0 }, '', others);
  const applied = applyEdit(bookOf({ s: [table] }), edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  const [part] = applied.value.book.sheets[0]?.parts ?? [];
  const column = part?.kind === 'table' ? part.columns.at(-1) : undefined;
  if (part?.kind !== 'table' || column?.kind !== 'calc') throw new Error('the column is gone');
  const ids = rowIdsOf(part);
  return names.map((_, at) => {
    const { row, ...statement } = column.stated?.find((one) => one.row === idOfRow(ids, at)) ?? { row: 0 };
    return row === 0 ? undefined : statement;
  });
}

describe('entries that follow their item when a revised list goes over it', () => {
  test('stand beside the item of their name, wherever it went', () => {
    const before = list(
      ['slab A', 'slab B', 'caps', 'kerb', 'base'],
      [3, 5, 7, 0, 2],
      [null, 'wet', null, null, 'dry'],
    );
    const column = rowsPut(before, ['base', 'Slab  b', 'new plinth', 'caps', 'slab A'], 0);
    expect(column(0)).toEqual(['base', 'Slab  b', 'new plinth', 'caps', 'slab A']);
    expect(column(2)).toEqual([2, 5, null, 7, 3]);
    expect(column(3)).toEqual(['dry', 'wet', null, null, null]);
  });

  test('so do values stated in calculated cells, also into rows that are new', () => {
    expect(statedAfter(['caps', 'new', 'slab B', 'slab A'], 'follow')).toEqual([
      undefined,
      undefined,
      undefined,
      { entry: '9 m^3', reason: 'survey' },
    ]);
  });

  test('stated values that stay beside another item have their reasons to confirm', () => {
    expect(statedAfter(['caps', 'Slab  b'], 'stay')).toEqual([
      { entry: '9 m^3', reason: 'survey', reasonFor: 'slab A' },
      undefined,
    ]);
    expect(statedAfter(['slab a', 'caps'], 'stay')).toEqual([
      { entry: '9 m^3', reason: 'survey' },
      undefined,
    ]);
    expect(statedAfter(['caps', 'slab A'], 'empty')).toEqual([undefined, undefined]);
  });

  test('what is new, gone or called alike is told by name', () => {
    const before = list(['a', 'b', 'b', 'c'], [1, 2, 3, 4], [null, null, null, null]);
    const rows = { length: 4, cells: { item: ['c', 'b', 'd', 'b'] } };
    const followed = followItems(before, rows, 0);
    expect(followed).toEqual({
      from: [3, undefined, undefined, undefined],
      fresh: ['d'],
      gone: ['a'],
      doubled: ['b'],
    });
    if (followed)
      expect(followedWords(followed)).toBe(
        '1 of 4 rows finds its item; new, and blank there: “d”; gone with what they hold: “a”; called alike, and blank there: “b”.',
      );
    expect(followItems(before, { length: 1, cells: { quantity: [3] } }, 0)).toBeUndefined();
  });

  test('rows of which most are called alike name no items', () => {
    const layers = list(['clay', 'sand', 'clay', 'sand'], [1, 2, 3, 4], [null, null, null, null]);
    const rows = { length: 4, cells: { item: ['sand', 'clay', 'sand', 'clay'] } };
    expect(nameItems(layers, rows)).toBe(false);
    expect(nameItems(layers, { length: 3, cells: { item: ['sand', 'clay', 'silt'] } })).toBe(true);
    expect(nameItems(layers, { length: 1, cells: { quantity: [3] } })).toBe(false);
  });

  test('what stays in its row is said to be of another item there', () => {
    expect(stayingWords([['base', 'slab A']])).toBe('“base” gets that of “slab A”.');
    const rows = ['a', 'b', 'c', 'd', 'e'].map((now) => [now, `old ${now}`] as const);
    expect(stayingWords(rows)).toBe(
      '“a” gets that of “old a”; “b” gets that of “old b”; “c” gets that of “old c”; 2 more get that of another.',
    );
  });

  test('no entry ever stands beside an item of another name', () => {
    const name = fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g', 'B', ' a');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(name, fc.option(fc.integer({ min: 1, max: 99 }))), { minLength: 1, maxLength: 8 }),
        fc.array(name, { minLength: 1, maxLength: 8 }),
        fc.nat(3),
        (rows, names, start) => {
          const row = Math.min(start, rows.length - 1);
          const before = list(
            rows.map(([item]) => item),
            rows.map(([, rate]) => rate),
            rows.map(() => null),
          );
          const rates = rowsPut(before, names, row)(2);
          const plain = (text: string) => text.trim().toLowerCase();
          const old = rows.slice(row);
          for (const [at, item] of names.entries()) {
            const ofName = old.filter(([other]) => plain(other) === plain(item));
            const isAlone =
              ofName.length === 1 && names.filter((one) => plain(one) === plain(item)).length === 1;
            expect(rates[row + at]).toBe(isAlone ? ofName[0]?.[1] : null);
          }
          // Nothing else moves.
          expect(rates.slice(0, row)).toEqual(rows.slice(0, row).map(([, rate]) => rate));
          expect(rates.slice(row + names.length)).toEqual(
            rows.slice(row + names.length).map(([, rate]) => rate),
          );
        },
      ),
      { numRuns: 500 },
    );
  });
});
