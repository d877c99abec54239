import { expect, test } from 'vitest';
import type { Outcome, Problem } from '../../src/diagnostics/index.ts';
import {
  type Destination,
  namedMapping,
  type ReadTable,
  readMapped,
  type TableColumn,
  type TableText,
  tableText,
  textColumns,
} from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', label: 'description', kind: 'given', type: 'text' },
  { name: 'qty', label: 'quantity', kind: 'given' },
  { name: 'price', kind: 'given' },
  { name: 'amount', kind: 'calc' },
];

function parted(text: string): TableText {
  const found = tableText(text, COLUMNS);
  if (!found.ok) throw new Error(found.problems[0]?.message);
  return found.value;
}

const to = (name: string, unit = ''): Destination => ({ kind: 'column', name, unit });
const out: Destination = { kind: 'out' };

/** The text read with its columns, from the first on, going there; undefined is not settled. */
function mapped(text: string, goes: readonly (Destination | undefined)[], headed = true): Outcome<ReadTable> {
  const settled = goes.flatMap((one, position) => (one ? [[position, one] as const] : []));
  return readMapped(parted(text), COLUMNS, { headed, goes: new Map(settled) });
}

const words = (problems: readonly Problem[]) =>
  problems.map(({ code, message, hints }) => [code, message, ...hints]);

const FOREIGN = 'Works,Vol. (cy),Rate [USD/cy],Remarks\ndeck slab,"1,250",48,wet\ncaps,420,61.5,\n';

test('the columns of a text are told with header, unit and first value', () => {
  expect(textColumns(parted('Works,,Vol. (cy),,Note (-)\ncaps,,,,\n,,420,x,\n'), true)).toEqual([
    { position: 0, header: 'Works', unit: '', below: '', first: { line: 2, text: 'caps' } },
    { position: 2, header: 'Vol. (cy)', unit: 'cy', below: '', first: { line: 3, text: '420' } },
    { position: 3, header: '', unit: '', below: '', first: { line: 3, text: 'x' } },
    { position: 4, header: 'Note (-)', unit: '-', below: '', first: undefined },
  ]);
});

test('without a header the first row has the first values', () => {
  expect(textColumns(parted('caps;;420\ndeck;;1250\n'), false)).toEqual([
    { position: 0, header: '', unit: '', below: '', first: { line: 1, text: 'caps' } },
    { position: 2, header: '', unit: '', below: '', first: { line: 1, text: '420' } },
  ]);
});

test('headers settle what they name, calculated columns too, and nothing is guessed', () => {
  const text = parted('Description,Qty (cy),quantities,unit price,prise,amount\n');
  expect(namedMapping(text, COLUMNS)).toEqual({
    headed: true,
    goes: new Map([
      [0, to('item')],
      [1, to('qty', 'cy')],
      [5, to('amount')],
    ]),
  });
});

test('foreign headers go where they are told, in the units told, and what is left out is said', () => {
  const read = mapped(FOREIGN, [to('item'), to('qty', 'cy'), to('price', ' USD/cy '), out]);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  expect(read.value).toMatchObject({
    length: 2,
    cells: {
      item: ['deck slab', 'caps'],
      qty: ['1,250 cy', '420 cy'],
      price: ['48 USD/cy', '61.5 USD/cy'],
    },
    units: { qty: 'cy', price: 'USD/cy' },
  });
  expect(words(read.value.problems)).toEqual([['column-left-out', '“Remarks” of the text stays out']]);
});

test('a dash or nothing as the unit leaves numbers in the unit of their column', () => {
  const read = mapped(FOREIGN, [out, to('qty'), to('price', '-'), out]);
  expect(read.ok && [read.value.cells, read.value.units]).toEqual([
    { qty: ['1,250', 420], price: [48, 61.5] },
    {},
  ]);
  expect(read.ok && words(read.value.problems)).toEqual([
    ['column-left-out', '“Works” and “Remarks” of the text stay out'],
  ]);
});

test('a text without a header keeps its first row', () => {
  const read = mapped('caps,x,420\n\ndeck,,1250\n', [to('item'), out, to('qty')], false);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  expect(read.value).toMatchObject({
    length: 2,
    cells: { item: ['caps', 'deck'], qty: [420, 1250] },
  });
  expect(words(read.value.problems)).toEqual([
    ['column-left-out', 'column 2 (“x”) of the text stays out'],
    ['row-blank', 'a blank row is left out (line 2)'],
  ]);
});

test('values for a calculated column are refused by its name, and left out where that is said', () => {
  const text = 'thing,total\ncaps,9\n';
  const read = mapped(text, [to('item'), to('amount')]);
  expect(read.ok ? [] : words(read.problems)).toEqual([
    [
      'column-calculated',
      '“total” names the column amount, which is calculated and takes no values',
      'leave it out, or say where it goes: item “description”, qty “quantity” or price',
    ],
  ]);
  expect(mapped(text, [to('item'), out])).toMatchObject({ ok: true, value: { cells: { item: ['caps'] } } });
});

test.each([
  {
    what: 'headers nobody settled',
    text: FOREIGN,
    goes: [to('item'), undefined, undefined, out],
    found: [
      [
        'column-undecided',
        'the table has no column called “Vol. (cy)” or “Rate [USD/cy]”',
        'choose where each of them goes, or leave it out',
      ],
    ],
  },
  {
    what: 'a column without a header beside one that is not known',
    text: 'item,Vol.,\ncaps,,420\n',
    goes: [to('item')],
    found: [
      [
        'column-undecided',
        'the table has no column called “Vol.”, and column 3 (“420”) has no header',
        'choose where each of them goes, or leave it out',
      ],
    ],
  },
  {
    what: 'a first row that looks like data',
    text: 'caps,420\ndeck,1250\n',
    goes: [],
    found: [
      [
        'column-undecided',
        'the table has no column called “caps” or “420”',
        'choose where each of them goes, or say that the first row is data',
      ],
    ],
  },
  {
    what: 'a column by position nobody settled',
    text: 'caps,420\n',
    goes: [to('item')],
    headed: false,
    found: [['column-undecided', 'column 2 (“420”) has no header', 'choose where it goes, or leave it out']],
  },
  {
    what: 'one column twice, beside what is not settled',
    text: 'Vol.,net,x\n1,2,3\n',
    goes: [to('qty'), to('qty')],
    found: [
      ['column-undecided', 'the table has no column called “x”', 'choose where it goes, or leave it out'],
      ['column-twice', '“Vol.” and “net” both go to the column “qty”', 'keep one of the two'],
    ],
  },
  {
    what: 'one column twice by position',
    text: '1;2\n',
    goes: [to('qty'), to('qty')],
    headed: false,
    found: [
      [
        'column-twice',
        'column 1 (“1”) and column 2 (“2”) both go to the column “qty”',
        'keep one of the two',
      ],
    ],
  },
  {
    what: 'a unit for words',
    text: 'Works (see plan)\ncaps\n',
    goes: [to('item', 'see plan')],
    found: [
      [
        'column-unit-misplaced',
        '“Works (see plan)” has the unit “see plan”, and goes to “item”, a column of type text',
        'leave the unit out',
      ],
    ],
  },
  {
    what: 'nothing taken',
    text: 'Vol.,x\n1,2\n',
    goes: [out, out],
    found: [
      [
        'table-nothing-taken',
        'no column of the text goes to a column of the table that takes values',
        'at least one has to',
      ],
    ],
  },
  {
    what: 'a row longer than the first without a header',
    text: 'caps,420\ndeck,1,250\n',
    goes: [to('item'), to('qty')],
    headed: false,
    found: [
      [
        'row-long',
        'line 2 has 3 cells for 2 columns; “250” is left over',
        'a number with a thousands comma needs quotation marks: "1,250"',
      ],
    ],
  },
])('refuses $what', ({ text, goes, headed, found }) => {
  const read = mapped(text, goes, headed);
  expect(read.ok ? [] : words(read.problems)).toEqual(found);
});

test('a mapping to a column the table lacks is a fault of the program', () => {
  expect(() => mapped('x\n1\n', [to('depth')])).toThrow('depth');
});
