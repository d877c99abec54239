import { expect, test } from 'vitest';
import { type Account, readMapped, readTable, type TableColumn, tableText } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', label: 'volume', kind: 'given', unit: 'cy' },
  { name: 'w', label: 'allowance', kind: 'given', unit: '%' },
  { name: 'V', label: 'volume in place', kind: 'calc', unit: 'cy' },
];

function accountOf(account: Account | undefined): Account {
  if (account === undefined) throw new Error('the text could not be parted');
  return account;
}

test('every cell of a text that is taken is accounted for', () => {
  const text = 'item,V_s (m3),Remark,\nslab,12,wet,\n,,,\ncaps,,,\nTotal,12,,\n';
  const parted = tableText(text, COLUMNS);
  if (!parted.ok) throw new Error('not parted');
  const goes = new Map([
    [0, { kind: 'column', name: 'item', unit: '' }],
    [1, { kind: 'column', name: 'V_s', unit: 'm^3' }],
    [2, { kind: 'out' }],
  ] as const);
  const { ok, account } = readMapped(
    parted.value,
    COLUMNS,
    { headed: true, goes },
    {
      totals: 'out',
      notes: 'in',
    },
  );
  expect(ok).toBe(true);
  // 5 rows of 4: three headers, three values, a remark and its header left out with the two of the total.
  expect(accountOf(account)).toMatchObject({
    cells: 20,
    counts: { heading: 2, taken: 3, marked: 0, out: 4, refused: 0, held: 0, blank: 11 },
    columns: [
      { position: 0, header: 'item', column: 'item', unit: '' },
      { position: 1, header: 'V_s (m3)', column: 'V_s', unit: 'm^3' },
      { position: 2, header: 'Remark', unit: '' },
    ],
    lines: [2, 4],
    blankRows: 1,
  });
  expect(account?.fateAt(1, 2)).toBe('out');
  expect(account?.fateAt(1, 1)).toBe('taken');
});

test('a cell with a remark is marked, and one without a value too', () => {
  const check = (_: string, cell: unknown) =>
    cell === 'about 5'
      ? ({ code: 'cell-not-number', severity: 'error', message: 'no number', hints: [], fixes: [] } as never)
      : undefined;
  const { ok, account } = readTable('item,V_s\nslab,about 5\ncaps,6\n', COLUMNS, { check });
  expect(ok).toBe(true);
  expect(accountOf(account).counts).toMatchObject({ heading: 2, taken: 3, marked: 1, blank: 0 });
});

test('of a text that is refused nothing is taken: what is not refused itself is held', () => {
  const { ok, account } = readTable('item,V (cy),w\nslab,12,5\ncaps,13,5\n', COLUMNS);
  expect(ok).toBe(false);
  expect(accountOf(account).counts).toEqual({
    blank: 0,
    heading: 2,
    taken: 0,
    marked: 0,
    out: 0,
    refused: 3,
    held: 4,
  });
  expect(account?.fateAt(2, 1)).toBe('refused');
});

test('all that is wrong with a text is told at once', () => {
  const text = 'item,V (cy),w\nslab,12,0.05\n"Total",12,\nnote: rev. B,,\ncaps,13,0.1,9\n';
  const read = readTable(text, COLUMNS);
  expect(read.ok ? [] : read.problems.map(({ code }) => code)).toEqual([
    'column-calculated',
    'row-long',
    'row-total',
    'row-note',
    'column-share',
  ]);
});

test('numbers of 1 or less among others in per cent are taken, marked and told with both readings', () => {
  const { account, ...read } = readTable('item,w\nslab,0.5\ncaps,10\nkerb,1\npave,0\n', COLUMNS);
  expect(read.ok && read.value.cells.w).toEqual([0.5, 10, 1, 0]);
  expect(read.ok && read.value.problems).toMatchObject([
    {
      code: 'cells-share',
      severity: 'warning',
      message: 'lines 2 and 4, column B “w”: “0.5” is read as 0.5 %, and would be 50 % as a part of one',
    },
  ]);
  expect(accountOf(account).counts).toMatchObject({ marked: 2, taken: 6, refused: 0 });
  const stated = readTable('item,w (%)\nslab,0.5\ncaps,10\n', COLUMNS);
  expect(stated.ok && stated.value.problems).toEqual([]);
});

test('a cell that its column does not read is kept as it was written', () => {
  const check = (_: string, cell: unknown) =>
    String(cell).startsWith('$')
      ? ({
          code: 'entry-unit-mismatch',
          severity: 'error',
          message: 'no volume',
          hints: [],
          fixes: [],
        } as never)
      : undefined;
  const read = readTable('item;V_s\nslab;$48,00\ncaps;6,5\n', COLUMNS, { check });
  expect(read.ok && read.value.cells.V_s).toEqual(['$48,00', 6.5]);
});

test('a saved table comes back whole: what it calculates stays out in one sentence', () => {
  const text = 'item,V_s (cy),w (%),V (cy)\nslab,5,320,4\ncaps,6,7,622.5\n';
  const read = readTable(text, COLUMNS);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('; '));
  expect(read.value.cells).toMatchObject({ item: ['slab', 'caps'], V_s: ['5 cy', '6 cy'] });
  expect(Object.keys(read.value.cells)).not.toContain('V');
  expect(read.value.problems.map(({ code }) => code)).toEqual(['columns-calculated-anew']);
  expect(accountOf(read.account).counts).toMatchObject({ heading: 3, taken: 6, out: 3 });
});
