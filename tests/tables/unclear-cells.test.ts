import { expect, test } from 'vitest';
import { type ReadOptions, readTable, type TableColumn } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
];

function under(cell: string, options: ReadOptions = {}) {
  const beside = cell.endsWith('m3') ? '60.5 m3' : '60.5';
  return readTable(`item;V_s\nslab;${beside}\ncaps;${cell}\n`, COLUMNS, options);
}

const last = (cell: string, options: ReadOptions) => {
  const read = under(cell, options);
  return read.ok ? read.value.cells.V_s?.[1] : read.problems.map(({ message }) => message);
};

test.each(['-', '–', '—', '--', 'n/a', 'N/A', 'n.a.', 'nil', 'none', 'NULL', 'k. A.'])(
  '“%s” among numbers can be a blank or 0',
  (cell) => {
    const read = under(cell);
    expect(!read.ok && read.problems.map(({ code }) => code)).toEqual(['cells-nil']);
    expect(!read.ok && read.problems[0]?.message).toBe(
      `line 3, column B “V_s”: “${cell}” can be a blank or 0`,
    );
    expect(read.account?.counts).toMatchObject({ refused: 1 });
    expect(last(cell, { nil: 'blank' })).toBe(null);
    expect(last(cell, { nil: 'zero' })).toBe(0);
    expect(under(cell, { nil: 'zero' }).account?.counts).toMatchObject({ marked: 1, taken: 3, heading: 2 });
  },
);

test.each([
  ['(12.5)', -12.5, 12.5],
  ['(1,250.5)', '-1,250.5', '1,250.5'],
  ['( 12 )', -12, 12],
  ['(12.5) m3', '-12.5 m^3', '12.5 m^3'],
])('“%s” can be less than 0', (cell, minus, plain) => {
  const read = under(cell);
  expect(!read.ok && read.problems.map(({ code }) => code)).toEqual(['cells-parentheses']);
  expect(last(cell, { parentheses: 'minus' })).toBe(minus);
  expect(last(cell, { parentheses: 'plain' })).toBe(plain);
});

test.each([
  ['12.5-', -12.5],
  ['12.5−', -12.5],
  ['1,250.5-', '-1,250.5'],
  ['12.5- m3', '-12.5 m^3'],
])('“%s” has its minus behind it', (cell, value) => {
  expect(last(cell, {})).toBe(value);
});

test.each([
  ['1,25E3 m3', '1.25E3 m^3'],
  ['1,5e-2 CU. YD.', '1.5e-2 cy'],
])('“%s” is a power of ten and its unit', (cell, value) => {
  expect(readTable(`item;V_s\nslab;60,5 cf\ncaps;${cell}\n`, COLUMNS).ok).toBe(true);
  const read = readTable(`item;V_s\nslab;60,5 cf\ncaps;${cell}\n`, COLUMNS);
  expect(read.ok && read.value.cells.V_s?.[1]).toBe(value);
});

test('a dash in a column of words is a word', () => {
  const read = readTable('item;V_s\n-;60.5\ncaps;1\n', COLUMNS);
  expect(read.ok && read.value.cells.item).toEqual(['-', 'caps']);
});

test('what is said of dashes is told with the cells', () => {
  const read = readTable('item;V_s\na;-\nb;1.5\nc;n/a\nd;(2)\n', COLUMNS, {
    nil: 'blank',
    parentheses: 'minus',
  });
  expect(read.ok && read.value.problems.map(({ code, message }) => [code, message])).toEqual([
    [
      'cells-nil-taken',
      'line 2, column B “V_s”: “-” is taken as a blank, as was said; the same of 1 more cell',
    ],
    ['cells-parentheses-taken', 'line 5, column B “V_s”: “(2)” is taken with a minus, as was said'],
  ]);
});

test('rows that end early are pointed out, or taken as was said', () => {
  const text = 'item;V_s\na;1\nb\n';
  const asked = readTable(text, COLUMNS);
  expect(asked.ok && asked.value.problems.map(({ code, severity }) => [code, severity])).toEqual([
    ['row-short', 'error'],
  ]);
  const read = readTable(text, COLUMNS, { short: 'blank' });
  expect(read.ok && read.value.problems.map(({ code, message }) => [code, message])).toEqual([
    ['rows-ended', 'line 3 ends early, and the last cells there are blank'],
  ]);
});

test.each(['0012', '-0', '12345678901234567890', '1.', '.5', '-3.5', '007.50'])(
  '“%s” is read in a stated unit as it is written',
  (digits) => {
    const read = readTable(`item;V_s (m3)\nslab;${digits}\ncaps;0.5\n`, COLUMNS);
    expect(read.ok && read.value.cells.V_s?.[0]).toBe(`${digits} m^3`);
  },
);

test('dashes between bars that may stand for no number are no drawn line', () => {
  const lone = readTable('| V_s |\n| -- |\n| 60.5 |\n| --- |\n| 2 |\n', COLUMNS);
  expect(!lone.ok && lone.problems.map(({ message }) => message)).toEqual([
    'line 2, column A “V_s”: “--” can be a blank or 0; the same of 1 more cell',
  ]);
  const paired = readTable('| V_s | item |\n|--|--|\n| 60.5 | slab |\n| -- | -- |\n| 2 | caps |\n', COLUMNS);
  expect(!paired.ok && paired.problems.map(({ message }) => message)).toEqual([
    'line 4, column A “V_s”: “--” can be a blank or 0',
  ]);
});

test('a drawn line between bars is no row', () => {
  const lone = readTable('| V_s |\n|:--|\n| 60.5 |\n| 2 |\n', COLUMNS);
  expect(lone.ok && lone.value.cells.V_s).toEqual([60.5, 2]);
  const ruled = readTable(
    '|---|---|\n| item | V_s |\n|--|--|\n| slab | 60.5 |\n|---|---|\n| caps | 2 |\n',
    COLUMNS,
  );
  expect(ruled.ok && ruled.value.cells).toEqual({ item: ['slab', 'caps'], V_s: [60.5, 2] });
});
