import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { namedMapping, readMapped, readTable, type TableColumn, tableText } from '../../src/tables/index.ts';
import { splitsOf } from './splits.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
  { name: 'w', kind: 'given', unit: 'm' },
  { name: 'd', kind: 'given', unit: 'm' },
  { name: 'note', kind: 'given', type: 'text' },
];

function splitsIn(text: string, thousands?: 'plain') {
  return splitsOf(readTable(text, COLUMNS, { ...(thousands && { thousands }) }));
}

describe('a thousands comma without quotation marks is not taken for the end of a cell', () => {
  test('where every row looks so, and is as long as the headers', () => {
    expect(splitsIn('item,V_s,w,note\nslab,1,250,5\ncaps,2,310,6\nkerb,3,120,7\n')).toEqual([
      [2, '1,250'],
      [3, '2,310'],
      [4, '3,120'],
    ]);
    expect(splitsIn('item,V_s,w,note\nslab,1,250,\ncaps,2,310,\nkerb,3,120,\n')).toHaveLength(3);
    expect(splitsIn('item,V_s,w\nslab,1,250\ncaps,20,5\nkerb,30,6\npave,40,7\n')).toEqual([[2, '1,250']]);
  });

  test('where its second half begins with a zero', () => {
    expect(splitsIn('item,V_s,w\nslab,1500,050\ncaps,12,05\nkerb,7,000\n')).toEqual([
      [3, '12,05'],
      [4, '7,000'],
    ]);
  });

  test('where other rows leave the blank cells at their end off, or look so themselves', () => {
    expect(splitsIn('item,V_s,w,d\nslab,5,320,7\ncaps,20,,\nkerb,30,6\n')).toEqual([[2, '5,320']]);
    expect(splitsIn('item,V_s,w,d\nslab,5,320,\ncaps,2,310,\n')).toHaveLength(2);
  });

  test('where it begins in a column that is left out', () => {
    const parted = tableText('item,Sheet,V_s\nslab,1,250\ncaps,7,310\n', COLUMNS);
    if (!parted.ok) throw new Error('not parted');
    const goes = new Map([...namedMapping(parted.value, COLUMNS).goes, [1, { kind: 'out' } as const]]);
    const read = readMapped(parted.value, COLUMNS, { headed: true, goes });
    expect(read.ok ? [] : read.problems.map(({ data }) => data.joined)).toEqual(['1,250', '7,310']);
  });
});

describe('two numbers beside each other are two cells', () => {
  test.each([
    ['in quotation marks', 'item,V_s,w\nslab,"1","250"\n'],
    ['where the column has thousands without a comma', 'item,V_s,w\nslab,1,250\ncaps,1250,3\n'],
    ['where words would stand among numbers otherwise', 'item,V_s,d,note,w\nslab,1,250,wet,3\n'],
    ['where other rows write their blank cells at the end', 'item,V_s,w\nslab,5,320\ncaps,20,\n'],
    ['in a file parted by semicolons', 'item;V_s;w\nslab;1;250\n'],
  ])('%s', (_, text) => {
    expect(splitsIn(text)).toEqual([]);
  });

  test('where the first column counts the rows', () => {
    const parted = tableText('No,V_s\n1,250\n2,310\n', COLUMNS);
    if (!parted.ok) throw new Error('not parted');
    const goes = new Map([...namedMapping(parted.value, COLUMNS).goes, [0, { kind: 'out' } as const]]);
    const read = readMapped(parted.value, COLUMNS, { headed: true, goes });
    expect(read.ok && read.value.cells.V_s).toEqual([250, 310]);
  });

  test('where that is said', () => {
    expect(splitsIn('item,V_s,w\nslab,1,250\ncaps,2,310\n', 'plain')).toEqual([]);
    expect(readTable('item,V_s,w\nslab,1,250\n', COLUMNS, { thousands: 'plain' }).ok).toBe(true);
  });
});

test('whatever the rows, a number that its comma parted is never read as two', () => {
  const number = fc.integer({ min: 1000, max: 999_999 }).map((x) => x.toLocaleString('en-US'));
  const row = fc.tuple(fc.constantFrom('slab', 'caps'), number);
  // The blank cells at the end are left off, so that each row is as long as the headers.
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
      const text = `item,V_s,w\n${rows.map((cells) => cells.join(',')).join('\n')}\n`;
      expect(readTable(text, COLUMNS).ok).toBe(false);
      expect(splitsIn(text)).toHaveLength(rows.length);
    }),
    { seed: 20_262, verbose: true },
  );
});
