import { describe, expect, test } from 'vitest';
import {
  readMapped,
  type TableColumn,
  tableText,
  textColumns,
  unitOfHeader,
} from '../../src/tables/index.ts';
import { standardUnits } from '../../src/units/index.ts';

const V_s: TableColumn = { name: 'V_s', label: 'volume, if stated', kind: 'given', unit: 'cy' };
const item: TableColumn = { name: 'item', kind: 'given', type: 'text' };
const COLUMNS = [item, V_s];

function parted(header: string, below = '') {
  const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;
  const rows = [['item', header], ...(below === '' ? [] : [['', below]]), ['slab', '100']];
  const text = tableText(rows.map((cells) => cells.map(quoted).join(';')).join('\n'), COLUMNS);
  if (!text.ok) throw new Error(text.problems[0]?.message);
  return text.value;
}

/** The number 100 under a header that was said to go to V_s without a unit: the cell, or the code that refuses it. */
function takenAs(header: string, below = ''): string | number | null | undefined {
  const text = parted(header, below);
  const found = textColumns(text, true)[1];
  if (found === undefined) throw new Error('the text has two columns');
  const unit = unitOfHeader(found, V_s, standardUnits);
  const read = readMapped(text, COLUMNS, {
    headed: true,
    goes: new Map([
      [0, { kind: 'column', name: 'item', unit: '' }],
      [1, { kind: 'column', name: 'V_s', unit }],
    ]),
  });
  return read.ok ? read.value.cells.V_s?.[0] : read.problems[0]?.code;
}

describe('a column that goes somewhere without a word on units', () => {
  test.each([
    'V_s m3',
    'V_s_m3',
    'V_s - m3',
    'V_s in m^3',
    'V_s/m3',
    'V_s: m3',
    'V_s = m3',
    'V_s, m3, net',
    'V_s {m3}',
    'V_s (m3) (net)',
    'V_s (neat, m3)',
    'V_s m ^ 3',
    'Vol. m3',
    'Vol.m3',
    'Vol/m3',
    'Vol_m3',
    'Vol <m3>',
    'Vol m3*',
    'Volume m3',
    'Volume m3 (net)',
    'Volume m3 net',
    'Volume (in m3)',
    'Menge in m3',
    'Menge cbm',
    'Menge in Kubikmeter',
    'Vol. cu.mtr',
    'Vol (㎥)',
    'Vol m**3',
    'Volumen (metros cúbicos)',
    'Объём (м3)',
    'Menge cu.m',
    'Menge cu. m.',
    'Menge cubic metre',
    'm3',
  ])('is in the unit that its header “%s” states', (header) => {
    expect(takenAs(header)).toBe('100 m^3');
  });

  test.each(['Vol, cyd', 'Vol (C.Y.)', 'Vol CYs', 'Vol. cu. yds.', 'VOL. CU. YDS.', 'Vol cuyds'])(
    'is in cubic yards where its header “%s” states them',
    (header) => {
      expect(takenAs(header)).toBe('100 cy');
    },
  );

  test.each(['Vol, cft', 'Vol C.F.', 'Vol (CFs)'])(
    'is in cubic feet where its header “%s” states them',
    (header) => {
      expect(takenAs(header)).toBe('100 cf');
    },
  );

  test.each(['Vol', 'Volume in place', 'Total volume', 'Vol 2', 'Qty', 'Menge'])(
    'is in the unit of its column where its header “%s” states none',
    (header) => {
      expect(takenAs(header)).toBe(100);
    },
  );

  test.each([
    'V_s m',
    'Vol kg/m3',
    'Vol m3/h',
    'Rate per m3',
    'Depth d',
    'Vol BCM',
    'Vol (BCY)',
    'Vol LCY',
    'Vol. mc',
    'Vol. cu.fathom',
    'Menge Stk.',
    'Menge in Festmetern',
    'Volm3',
    'V_s in m 3',
    'Volumen³',
    'V_s (m3) [cy]',
    'Menge (netto)',
  ])('is asked for where the header “%s” states another kind or cannot be read', (header) => {
    expect(takenAs(header)).toBe('column-unit-unread');
  });

  test('is of another kind where its header states that in brackets', () => {
    expect(takenAs('V_s (m2)')).toBe('column-unit-other-kind');
  });

  test('a row of units below counts as its header does, and the two have to agree', () => {
    expect(takenAs('Menge', 'm3')).toBe('100 m^3');
    expect(takenAs('Menge (m3)', 'm³')).toBe('100 m³');
    expect(takenAs('Menge (cy)', 'm3')).toBe('column-unit-unread');
  });

  test('a unit that is said against the one of the header is told', () => {
    const read = readMapped(parted('Menge (m3)'), COLUMNS, {
      headed: true,
      goes: new Map([
        [0, { kind: 'out' }],
        [1, { kind: 'column', name: 'V_s', unit: 'cy' }],
      ]),
    });
    expect(read.ok && read.value.problems.map(({ code }) => code)).toEqual([
      'column-left-out',
      'column-unit-overridden',
    ]);
  });
});

/** Headers as long as a book may be, each of which was looked at as often as it has parts: minutes, and more. */
describe('a header of 100,000 signs', () => {
  const long = (part: string): string => part.repeat(Math.ceil(100_000 / part.length));

  test.each(['a b ', 'a0 + ', '_m', '(x) ', "'", '** ', ', ', 'm3 '])('made of “%s” is read', (part) => {
    expect(takenAs(long(part))).toBeDefined();
  });

  test('states the unit at its end', () => {
    expect(takenAs(`${long('net of all that is said elsewhere ')}m3`)).toBe('100 m^3');
    expect(takenAs(`${long('net of all that is said elsewhere ')}(m3)`)).toBe('100 m^3');
  });
});
