import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { followedWords, stayingWords } from '../../../../src/app/dialogs/rows/kept-columns.ts';
import { followItems, nameItems } from '../../../../src/app/editing/clipboard/follow-items.ts';
import { putRows } from '../../../../src/app/editing/clipboard/put-rows.ts';
import { type Others, whatBecomes } from '../../../../src/app/editing/clipboard/what-becomes.ts';
import type { Where } from '../../../../src/app/editing/clipboard/where.ts';
import { describeInsertion } from '../../../../src/app/editing/lines/describe-insertion.ts';
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
function statedAfter(
  names: readonly string[],
  others: Others,
  { quantity = 1, where = { kind: 'from', row: 0 } }: { quantity?: number; where?: Where } = {},
): readonly unknown[] {
  const plain = list(['slab A', 'slab B'], [null, null], [null, null]);
  const stated = [{ row: 1, entry: '9 m^3', reason: 'survey' }];
  const volume = { id: 'v', kind: 'calc', name: 'V', formula: 'quantity * 2', stated } as const;
  const rows = { length: names.length, cells: { item: names, quantity: names.map(() => quantity) } };
  const table = { ...plain, columns: [...plain.columns, volume] };
  const edit = putRows('s', table, rows, where, '', others);
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

  test('a reason given for other figures is to be confirmed, whether its value follows or stays', () => {
    const given = { entry: '9 m^3', reason: 'survey', reasonFor: 'slab A with quantity 1 m³' };
    expect(statedAfter(['caps', 'slab A'], 'follow', { quantity: 2 })[1]).toEqual(given);
    expect(statedAfter(['slab a', 'caps'], 'stay', { quantity: 2 })[0]).toEqual(given);
  });

  test('a value goes with its item into rows that take the place of all, or is deleted', () => {
    const where = { kind: 'replace' } as const;
    const kept = { entry: '9 m^3', reason: 'survey' };
    expect(statedAfter(['caps', 'slab A', 'new'], 'follow', { where })).toEqual([undefined, kept, undefined]);
    expect(statedAfter(['caps', 'slab A'], 'empty', { where })).toEqual([undefined, undefined]);
  });

  test('what is deleted, to be confirmed, blank or there twice is told by name, value and reason', () => {
    const plain = list(['slab A', 'slab B', 'caps'], [null, null, null], ['wet', null, null]);
    const stated = [
      { row: 1, entry: '9', reason: 'weighed\nat gate' },
      { row: 2, entry: '8 cy', reason: '' },
    ];
    const volume = {
      id: 'v',
      kind: 'calc',
      name: 'V',
      unit: 'm^3',
      formula: 'quantity * 2',
      stated,
    } as const;
    const table = { ...plain, columns: [...plain.columns, volume] };
    const rows = { length: 2, cells: { item: ['caps', 'slab A'], quantity: [1, null] } };
    const over = { kind: 'from', row: 0 } as const;
    const told = (where: Where, others: Others) =>
      describeInsertion(putRows('s', table, rows, where, '', others));
    expect(told({ kind: 'replace' }, 'empty')).toBe(
      '2 rows taken; 2 stated values are deleted: V of slab A 9 m³ (weighed at gate) and V of slab B 8 cy (reason open); “note” is blank now in these rows',
    );
    expect(told(over, 'follow')).toBe(
      '2 rows pasted; 1 stated value is deleted: V of slab B 8 cy (reason open); 1 reason is to be confirmed, for what it was given for has changed: V of slab A 9 m³ (weighed at gate); 1 entry becomes blank: quantity of slab A 1 m³; “note” and “V” follow their items',
    );
    expect(told(over, 'empty')).toContain('“caps” stands there twice now, in the new rows and below them');
    expect(whatBecomes(table, rows, over, 'stay')).toMatchObject({
      deleted: [],
      below: ['caps'],
      twice: ['caps'],
    });
    // The row of caps does not stay below as well.
    expect(whatBecomes(table, rows, over, 'follow')).toMatchObject({ below: [], twice: [] });
  });

  test('what is new, gone or called alike is told by name', () => {
    const before = list(['a', 'b', 'b', 'c'], [1, 2, 3, 4], [null, null, null, null]);
    const rows = { length: 4, cells: { item: ['c', 'b', 'd', 'b'] } };
    const followed = followItems(before, rows, { kind: 'from', row: 0 });
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
    expect(
      followItems(before, { length: 1, cells: { quantity: [3] } }, { kind: 'from', row: 0 }),
    ).toBeUndefined();
  });

  test('in place of all rows, what is gone is all that the new ones do not have, also beyond their length', () => {
    const before = list(['a', 'b', 'c', '', 'd'], [1, 2, 3, 4, 5], [null, null, null, null, null]);
    const rows = { length: 2, cells: { item: ['x', 'b'] } };
    expect(followItems(before, rows, { kind: 'replace' })?.gone).toEqual(['a', 'c', 'd', 'row 4']);
    // Over the rows there, those below stay.
    expect(followItems(before, rows, { kind: 'from', row: 0 })?.gone).toEqual(['a']);
    expect(followItems(before, rows, { kind: 'from', row: 2 })?.gone).toEqual(['c', 'row 4']);
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
          // Nothing else moves; an item that stands among the new rows is below them no more.
          expect(rates.slice(0, row)).toEqual(rows.slice(0, row).map(([, rate]) => rate));
          const below = rows.slice(row + names.length).filter(([item]) => {
            const count = (all: readonly string[]) => all.filter((one) => plain(one) === plain(item)).length;
            return !(count(names) === 1 && count(old.map(([other]) => other)) === 1);
          });
          expect(rates.slice(row + names.length)).toEqual(below.map(([, rate]) => rate));
        },
      ),
      { numRuns: 500 },
    );
  });
});
