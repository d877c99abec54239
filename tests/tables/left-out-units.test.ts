import { describe, expect, test } from 'vitest';
import {
  type Destination,
  namedMapping,
  type ReadOptions,
  readMapped,
  type TableColumn,
  type TableReading,
  tableText,
  textColumns,
  unitOfHeader,
} from '../../src/tables/index.ts';
import { standardUnits } from '../../src/units/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'material', kind: 'given', type: 'text' },
  { name: 'thick', kind: 'given', unit: 'in' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
  { name: 'from', kind: 'given', type: 'text' },
];

type Goes = Readonly<Record<number, Destination>>;

function read(
  text: string,
  options: ReadOptions = {},
  skipped: readonly number[] = [],
  goes: Goes = {},
): TableReading {
  const parted = tableText(text, COLUMNS, { skipped: new Set(skipped) });
  if (!parted.ok) throw new Error(parted.problems[0]?.message);
  const named = namedMapping(parted.value, COLUMNS);
  const said = Object.entries(goes).map(([position, to]) => [Number(position), to] as const);
  return readMapped(
    parted.value,
    COLUMNS,
    { headed: true, goes: new Map([...named.goes, ...said]) },
    options,
  );
}

const codes = (found: TableReading): readonly string[] =>
  (found.ok ? found.value.problems : found.problems).map(({ code }) => code);

describe('headings that go on in a second row', () => {
  const text = 'item,material,Volume,,from\n,,gross (m³),net m3,\nslab,concrete,100,95,volume\n';

  test('are read together, each with its unit', () => {
    const parted = tableText(text, COLUMNS);
    const found = parted.ok ? textColumns(parted.value, true) : [];
    expect(found.map(({ header }) => header)).toEqual([
      'item',
      'material',
      'Volume gross (m³)',
      'Volume net m3',
      'from',
    ]);
    const column = COLUMNS.find(({ name }) => name === 'V_s');
    expect(column && found.slice(2, 4).map((one) => unitOfHeader(one, column, standardUnits))).toEqual([
      'm³',
      'm^3',
    ]);
  });

  test('go nowhere unasked, and come in with their unit', () => {
    expect(codes(read(text))).toEqual(['column-undecided']);
    const answered = read(text, {}, [], {
      2: { kind: 'out' },
      3: { kind: 'column', name: 'V_s', unit: 'm^3' },
    });
    expect(answered.ok && answered.value.cells).toMatchObject({ item: ['slab'], V_s: ['95 m^3'] });
    expect(answered.account?.counts).toMatchObject({ heading: 4, out: 3, taken: 4 });
  });

  test('one name over two columns with units is none of a unit', () => {
    const units = 'item,V_s,thick\n,net,gross\n,(m³),(mm)\nslab,100,40\n';
    const parted = tableText(units, COLUMNS);
    expect(parted.ok && textColumns(parted.value, true).map(({ header, below }) => [header, below])).toEqual([
      ['item', ''],
      ['V_s net', 'm³'],
      ['thick gross', 'mm'],
    ]);
  });

  test.each(['item,V_s\nslab,TBC\ncaps,5\n', 'item,V_s\n,n/a\ncaps,5\n', 'item,V_s\n,ca. 12\ncaps,5\n'])(
    '%j has none',
    (rows) => {
      const parted = tableText(rows, COLUMNS);
      expect(parted.ok && parted.value.top.cells).toEqual(['item', 'V_s']);
    },
  );
});

describe('a line left out that says a unit', () => {
  const note = 'All quantities in m³ and mm\nitem,material,V_s,thick,from\nslab,concrete,100,400,volume\n';

  test('is asked about, column by column', () => {
    for (const found of [read(note, { notes: 'out' }), read(note, {}, [1])]) {
      expect(codes(found)).toEqual(['unit-left-out', 'unit-left-out']);
      expect(found.ok ? [] : found.problems.map(({ message }) => message)).toEqual([
        'line 1 is left out and says “m³”, and the numbers of “V_s” would be read in cy: “All quantities in m³ and mm”',
        'line 1 is left out and says “mm”, and the numbers of “thick” would be read in in: “All quantities in m³ and mm”',
      ]);
    }
  });

  test('is answered by the units of these columns, whatever they are', () => {
    const answered = read(note, { notes: 'out' }, [], {
      2: { kind: 'column', name: 'V_s', unit: 'cy' },
      3: { kind: 'column', name: 'thick', unit: 'mm' },
    });
    expect(answered.ok && answered.value.cells).toMatchObject({ V_s: ['100 cy'], thick: ['400 mm'] });
  });

  test('is asked about where units the page shows were put in for none', () => {
    const shown = read(note, { notes: 'out' }, [], {
      2: { kind: 'column', name: 'V_s', unit: 'cy', assumed: true },
      3: { kind: 'column', name: 'thick', unit: 'mm', assumed: true },
    });
    expect(codes(shown)).toEqual(['unit-left-out']);
  });

  test('above a column', () => {
    expect(codes(read('item,V_s\n,net (m³)\nslab,100\n', {}, [2]))).toEqual(['unit-left-out']);
    expect(codes(read('item,V_s\n,cubic metres\nslab,100\n', {}, [2]))).toEqual(['unit-left-out']);
  });

  test('among the rows, over numbers of another unit', () => {
    const twice = 'item,V_s (m3)\nslab,100\nitem,V_s (cy)\ncap,50\n';
    expect(codes(read(twice, {}, [3]))).toEqual(['unit-left-out-among']);
  });

  test.each([
    ['Takeoff of the north berth, rev. C\nitem,V_s\nslab,100\n', []],
    ['All volumes in cy\nitem,V_s\nslab,100\n', []],
    ['slab 350 mm thick, 12 ft wide\nitem,thick\nslab,100\n', []],
    ['All volumes in m³\nitem,V_s (m³)\nslab,100\n', []],
    ['All volumes in m³\nitem,V_s\nslab,100 m³\n', []],
  ])('%j is none', (text, found) => {
    expect(codes(read(text, { notes: 'out' })).filter((code) => code.startsWith('unit-'))).toEqual(found);
  });
});

describe('headings repeated among the rows', () => {
  test('stay out, and are told', () => {
    const found = read('item,V_s (m3)\nslab,100\nitem,V_s (m3)\ncap,50\n');
    expect(found.ok && found.value.cells).toEqual({ item: ['slab', 'cap'], V_s: ['100 m^3', '50 m^3'] });
    expect(codes(found)).toEqual(['rows-heading']);
    expect(found.account?.counts).toMatchObject({ heading: 4, taken: 4 });
  });

  test('with another unit are refused, and the rows beside them are not', () => {
    const found = read('item,V_s (m3)\nslab,100\nItem,V_s (cy)\ncap,50\n', { check: () => undefined });
    expect(codes(found)).toEqual(['headings-change']);
    expect(found.account?.lines).toEqual([2, 4]);
    expect(found.account?.counts).toMatchObject({ heading: 2, refused: 2, held: 4 });
  });

  test('with a bracket that is an item are data', () => {
    const found = read('item,V_s (m3)\nslab (m3),100\ncap (m3),50\n');
    expect(found.account?.lines).toEqual([2, 3]);
  });
});
