import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Destination,
  namedMapping,
  type ReadOptions,
  readMapped,
  type TableColumn,
  tableText,
} from '../../src/tables/index.ts';
import { splitsOf } from './splits.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
  { name: 'V_d', kind: 'given', unit: 'cy' },
  { name: 'note', kind: 'given', type: 'text' },
];

/** The text with all columns left out whose headings the table does not know. */
function readingOf(text: string, options: ReadOptions = {}) {
  const parted = tableText(text, COLUMNS, { delimiter: ',' });
  if (!parted.ok) throw new Error(parted.problems[0]?.message);
  const named = namedMapping(parted.value, COLUMNS);
  const goes = new Map<number, Destination>(named.goes);
  for (let at = 0; at < parted.value.top.cells.length; at += 1)
    if (!goes.has(at)) goes.set(at, { kind: 'out' });
  return readMapped(parted.value, COLUMNS, { headed: true, goes }, options);
}

function splitsIn(text: string, options: ReadOptions = {}) {
  return splitsOf(readingOf(text, options));
}

describe('a decimal comma without quotation marks is not taken for the end of a cell', () => {
  test('where the decimals stand in a column that is left out', () => {
    expect(splitsIn('item,V_s (cy),Remarks\ncap,12,5\ndeck,45,25\n')).toEqual([
      [2, '12,5'],
      [3, '45,25'],
    ]);
    expect(splitsIn('item,V_s (cy),Remarks\ncap,1200,125\ndeck,45,wet\n')).toEqual([[2, '1200,125']]);
    expect(splitsIn('item,V_s (cy),Remarks,Sheet\ncap,12,5,wet\n')).toEqual([[2, '12,5']]);
    expect(splitsIn('item,V_s (cy),Remarks\ncap,-12,5\n')).toEqual([[2, '-12,5']]);
  });

  test('where they have their unit behind them', () => {
    expect(splitsIn('item,V_s,Remarks\ncap,12,5 m3\ndeck,45,25 coats\n')).toEqual([[2, '12,5 m3']]);
  });

  test('where they stand in a column that takes any text', () => {
    expect(splitsIn('item,V_s,note\ncap,12,5\n')).toEqual([[2, '12,5']]);
  });

  test('where other rows are shorter by one, whether or not it is said that their ends are blank', () => {
    const ragged = 'item,V_s,V_d\ncap,100\ndeck,12,5\npile,45\n';
    expect(splitsIn(ragged)).toEqual([[3, '12,5']]);
    expect(splitsIn(ragged, { short: 'blank' })).toEqual([[3, '12,5']]);
    expect(splitsIn('Sheet,V_s\n7\n7,5\n', { short: 'blank' })).toEqual([[3, '7,5']]);
  });

  test('of many the first hundred are told one by one, and the others by their number', () => {
    const read = readingOf(`item,V_s,Remarks\n${'cap,12,5\n'.repeat(103)}`);
    const codes = read.ok ? [] : read.problems.map(({ code }) => code);
    expect(codes.filter((code) => code === 'cells-split')).toHaveLength(100);
    expect(
      read.ok
        ? []
        : read.problems.flatMap(({ code, data }) => (code === 'cells-split-more' ? [data.more] : [])),
    ).toEqual([3]);
    expect(read.account?.counts.refused).toBe(2 * 103);
  });
});

describe('two numbers beside each other are two cells', () => {
  test.each([
    ['in quotation marks', 'item,V_s,Remarks\ncap,"12","5"\n'],
    ['where another number has a decimal point', 'item,V_s,Remarks\ncap,12,5\ndeck,45.5,7\n'],
    ['where another number with a comma has quotation marks', 'item,V_s,Remarks\ncap,12,5\ndeck,"45,5",7\n'],
    ['where the rows write their blank cells at the end', 'item,V_s,Remarks\ncap,12,5\ndeck,45,\n'],
    ['where the heading beside has a unit', 'item,V_s,Rate (USD)\ncap,12,5\n'],
    ['where both are columns of numbers, and all rows as long', 'item,V_s,V_d\ncap,12,5\ndeck,45,25\n'],
    ['where the rows are counted', 'item,V_s,No\ncap,12,1\ndeck,45,2\npile,7,3\n'],
    ['where words would stand among numbers otherwise', 'item,V_s,Sheet,V_d,note\ncap,12,5,7,wet\n'],
  ])('%s', (_, text) => {
    expect(splitsIn(text)).toEqual([]);
  });

  test('where that is said', () => {
    expect(readingOf('item,V_s,Remarks\ncap,12,5\n', { thousands: 'plain' }).ok).toBe(true);
    expect(readingOf('item,V_s,Remarks\ncap,12,5\n', { decimal: 'point' }).ok).toBe(true);
  });
});

test('whatever the rows, a number that its decimal comma parted is never read without its decimals', () => {
  const number = fc
    .tuple(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 1, max: 999 }))
    .map(([whole, decimals]) => `${whole},${decimals}`);
  const whole = fc.integer({ min: 1, max: 99_999 }).map(String);
  const headings = fc.constantFrom('item,V_s,Remarks', 'item,V_s,Sheet', 'item,V_s,note', 'item,V_s,V_d');
  const row = fc.tuple(fc.constantFrom('slab', 'caps'), fc.oneof(number, number, whole));
  fc.assert(
    fc.property(headings, fc.array(row, { minLength: 2, maxLength: 8 }), (heading, rows) => {
      // Of two columns of numbers nothing tells but that rows without decimals are shorter.
      const isRagged = rows.some(([, value]) => !value.includes(','));
      fc.pre(rows.some(([, value]) => value.includes(',')) && (isRagged || !heading.endsWith('V_d')));
      const text = `${heading}\n${rows.map((cells) => cells.join(',')).join('\n')}\n`;
      expect(readingOf(text, { short: 'blank' }).ok).toBe(false);
      expect(splitsIn(text, { short: 'blank' })).toHaveLength(
        rows.filter(([, value]) => value.includes(',')).length,
      );
    }),
    { seed: 20_273, verbose: true },
  );
});
