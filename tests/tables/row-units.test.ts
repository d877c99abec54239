import { describe, expect, test } from 'vitest';
import {
  type Destination,
  readMapped,
  type TableColumn,
  type TableReading,
  tableText,
} from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', label: 'volume', kind: 'given', unit: 'cy' },
  { name: 'rate', kind: 'given', unit: 'USD/cy' },
  { name: 'unit', kind: 'given', type: 'text' },
  { name: 't', kind: 'given', unit: 'ft' },
  { name: 'd', kind: 'given', unit: 'm' },
  { name: 'w', kind: 'given', unit: '%' },
  { name: 'n', kind: 'given' },
];

const to = (name: string, unit = ''): Destination => ({ kind: 'column', name, unit });
const out: Destination = { kind: 'out' };
const units: Destination = { kind: 'unit', of: 'V_s' };

function read(text: string, goes: readonly Destination[]): TableReading {
  const parted = tableText(text, COLUMNS);
  if (!parted.ok) throw new Error('not parted');
  return readMapped(parted.value, COLUMNS, { headed: true, goes: new Map(goes.entries()) });
}

/** The cells that were read, or what was refused: the code, the lines and the message. */
function cellsOf(text: string, goes: readonly Destination[], name = 'V_s') {
  const found = read(text, goes);
  if (found.ok) return found.value.cells[name];
  return found.problems.map(({ code, data, message }) => [code, data.lines, message]);
}

const MIXED = 'Works,Qty,Unit\nslab,40,m3\ncaps,50,CY\nkerb,,m2\nfill,7 cf,cf\n';

describe('units that stand row by row beside the numbers', () => {
  test('are taken where the mapping says so', () => {
    const found = read(MIXED, [to('item'), to('V_s'), units]);
    expect(found.ok && found.value.cells.V_s).toEqual(['40 m^3', '50 cy', null, '7 cf']);
    expect(found.account?.counts).toMatchObject({ heading: 3, taken: 11, out: 0, held: 0, blank: 1 });
    expect(found.account?.columns[2]).toEqual({ position: 2, header: 'Unit', unit: '', unitOf: 'V_s' });
  });

  test('are refused with their lines where they cannot be read, are missing, or say something else', () => {
    const text = 'Works,Qty,Unit\nslab,40,m2\ncaps,50,ls\nkerb,60,\nfill,7 cf,m3\npave,8,m2\n';
    expect(cellsOf(text, [to('item'), to('V_s'), units])).toEqual([
      [
        'row-unit-unread',
        [2, 6],
        'lines 2 and 6, column C: the unit “m2” beside “40” is none that the column “V_s” takes (cy)',
      ],
      [
        'row-unit-unread',
        [3],
        'line 3, column C: the unit “ls” beside “50” is none that the column “V_s” takes (cy)',
      ],
      ['row-unit-unread', [4], 'line 4, column C: no unit stands beside “60”'],
      [
        'row-unit-contradicted',
        [5],
        'line 5, column C: the unit “m3” stands beside “7 cf” (V_s), and “cf” is stated too',
      ],
    ]);
    const headed = 'Works,Qty (cy),Unit\nslab,40,cy\ncaps,50,m3\n';
    expect(cellsOf(headed, [to('item'), to('V_s', 'cy'), units])).toEqual([
      [
        'row-unit-contradicted',
        [3],
        'line 3, column C: the unit “m3” stands beside “50” (V_s), and “cy” is stated too',
      ],
    ]);
  });

  test('are refused where the numbers go nowhere', () => {
    expect(cellsOf(MIXED, [to('item'), out, units])).toEqual([
      ['column-unit-alone', undefined, '“Unit” has the units of “V_s”, and no numbers of the text go there'],
    ]);
  });
});

describe('a column of units that is left out', () => {
  const goes = [to('item'), to('V_s'), out];

  test('is refused with its lines where numbers would be read in another unit', () => {
    const words = '“m3” stands beside “40”, which would be read in cy (V_s)';
    expect(cellsOf(MIXED, [to('item'), to('V_s', 'cy'), out])).toEqual([
      ['column-units-ignored', [2], `line 2, column C “Unit”: ${words}`],
    ]);
    for (const header of ['U/M', 'Einheit', 'per', 'Col3', ''])
      expect(cellsOf(`Works,Qty,${header}\nslab,40,m3\n`, goes)).toMatchObject([
        ['column-units-ignored', [2], expect.any(String)],
      ]);
    for (const text of ['m2', 'ls', 'tons'])
      expect(cellsOf(`Works,Qty,Unit\nslab,40,${text}\n`, goes)).toMatchObject([
        ['column-units-ignored', [2], expect.any(String)],
      ]);
  });

  test('is left out where the units are those that the numbers are read in, or are none', () => {
    const inYards = to('V_s', 'cy');
    const own = 'Works,Qty,Unit\nslab,40,CY\ncaps,,m3\npave,50,\nx,6 m3,m³\n';
    expect(cellsOf(own, [to('item'), inYards, out])).toHaveLength(4);
    expect(cellsOf('Works,Qty,Zone\nslab,40,N\ncaps,30,S\n', goes)).toEqual([40, 30]);
    expect(cellsOf('Works,Rate,per\nslab,40,cy\n', [to('item'), to('rate'), out], 'rate')).toEqual([40]);
    expect(cellsOf(MIXED, [to('item'), inYards, { kind: 'out', unitless: true }])).toEqual([
      '40 cy',
      '50 cy',
      null,
      '7 cf',
    ]);
  });

  test('may be words of the table, but not against the numbers beside them', () => {
    const words = [to('item'), to('V_s'), to('unit')];
    expect(cellsOf('Works,Qty,unit\nslab,40,m3\n', words)).toMatchObject([
      ['column-units-ignored', [2], expect.any(String)],
    ]);
    expect(cellsOf('Works,Qty,unit\nslab,40,cy\n', words)).toEqual([40]);
    expect(cellsOf('Works,n,unit\nslab,40,m3\n', [to('item'), to('n'), to('unit')], 'n')).toEqual([40]);
  });

  test('is refused where it may be that of other numbers in its row, or says plain beside per cent', () => {
    const lengths = [to('item'), to('t', 'ft'), to('d', 'm'), out];
    expect(cellsOf('Works,A,B,Unit\nslab,4,5,m\n', lengths, 't')).toMatchObject([
      ['column-units-ignored', [2], expect.stringContaining('“4”, which would be read in ft (t)')],
    ]);
    const share = [to('item'), to('w'), out];
    expect(cellsOf('Works,A,Unit\nslab,5,%\ncaps,2.5,-\n', share, 'w')).toMatchObject([
      ['column-units-ignored', [3], expect.stringContaining('read in % (w)')],
    ]);
    expect(cellsOf('Works,A,Unit\nslab,1E3,-\n', share, 'w')).toMatchObject([
      ['column-units-ignored', [2], expect.any(String)],
    ]);
    expect(cellsOf('Works,Qty,Unit\nslab,5,cy\ncaps,2,–\n', goes)).toEqual([5, 2]);
  });

  test('is refused beside plain numbers', () => {
    expect(cellsOf('Works,n,Unit\nslab,40,m3\n', [to('item'), to('n'), out], 'n')).toEqual([
      [
        'column-units-ignored',
        [2],
        'line 2, column C “Unit”: “m3” stands beside “40”, which would be read as a plain number (n)',
      ],
    ]);
  });
});
