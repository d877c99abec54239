import { describe, expect, test } from 'vitest';
import {
  type Destination,
  namedMapping,
  readMapped,
  type TableColumn,
  type TableReading,
  tableText,
} from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'thick', kind: 'given', unit: 'in' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
  { name: 'T', kind: 'given', unit: '°C' },
  { name: 'n', kind: 'given', unit: '-' },
];

/** A text as its headers say, and the first column with numbers in a unit where one is said. */
function read(text: string, unit?: Pick<Extract<Destination, { kind: 'column' }>, 'unit' | 'assumed'>) {
  const parted = tableText(text, COLUMNS);
  if (!parted.ok) throw new Error(parted.problems[0]?.message);
  const { goes } = namedMapping(parted.value, COLUMNS);
  const [name = ''] = [...goes.values()].flatMap((to) => (to.kind === 'column' ? [to.name] : [])).slice(1);
  const said = unit ? [[1, { kind: 'column', name, ...unit } as const] as const] : [];
  return readMapped(parted.value, COLUMNS, { headed: true, goes: new Map([...goes, ...said]) });
}

const codes = (found: TableReading) =>
  (found.ok ? found.value.problems : found.problems).map(({ code }) => code);
const column = (found: TableReading, name: string) => (found.ok ? found.value.cells[name] : codes(found));

describe('numbers without a unit among others with another unit than the column', () => {
  const text = 'item;V_s\nA;100 m³\nB;20 m³\nC;30\nD;40 L\nE;0\nF;\nG;5\n';

  test('are asked for, with their lines and every reading', () => {
    const found = read(text);
    expect(found.ok ? [] : found.problems.map(({ message, hints }) => [message, ...hints])).toEqual([
      [
        'lines 4 and 8, column B “V_s”: “30” has no unit, and “100 m³” in line 2 has another than the cy that it would be read in',
        'say the unit of the numbers of “V_s” that have none: m³, L or cy',
      ],
    ]);
    expect(found.account?.counts).toMatchObject({ refused: 2, taken: 0 });
  });

  test.each([
    ['m³', '30 m³'],
    ['cy', '30 cy'],
  ])('are in %s where that is said, and the others keep their own', (unit, value) => {
    expect(column(read(text, { unit }), 'V_s')?.slice(0, 3)).toEqual(['100 m³', '20 m³', value]);
  });

  test('are settled by the header or a row of units', () => {
    expect(column(read(text.replace('V_s', 'V_s (cy)')), 'V_s')?.[2]).toBe('30 cy');
    expect(column(read('item;V_s\n;m3\nA;100 cy\nC;30\n'), 'V_s')).toEqual(['100 cy', '30 m^3']);
  });

  test('are compared with the unit that the page shows', () => {
    expect(column(read('item;V_s\nA;100 m³\nC;30\n', { unit: 'm³', assumed: true }), 'V_s')).toEqual([
      '100 m³',
      '30 m³',
    ]);
    expect(codes(read('item;V_s\nA;100 cy\nC;30\n', { unit: 'm³', assumed: true }))).toEqual([
      'cells-unit-missing',
    ]);
  });

  test.each([
    ['thick', "1'200 mm", "1'200"],
    ['thick', '12 ft', '12'],
    ['thick', '12 ft 6 in', '12'],
    ['thick', '12\'-6"', '12'],
    ['thick', "12'", '12'],
    ['T', '70 °F', '0'],
    ['n', '50 %', '2'],
  ])('in the column %s: “%s” and “%s”', (name, own, bare) => {
    expect(codes(read(`item;${name}\nA;${own.replaceAll('"', '″')}\nB;${bare}\n`))).toEqual([
      'cells-unit-missing',
    ]);
  });

  test.each([
    ['V_s', '100 cy', '30'],
    ['V_s', '100 CU. YD.', '30'],
    ['V_s', '100 m³', '0'],
    ['V_s', '100 m³', '30 cy'],
    ['thick', '8"', '12'],
    ['thick', '8 1/2"', "1'200"],
    ['n', '2 ea', '3'],
  ])('leave no doubt in the column %s: “%s” and “%s”', (name, own, bare) => {
    expect(codes(read(`item;${name}\nA;${own.replaceAll('"', '″')}\nB;${bare}\n`))).toEqual([]);
  });
});
