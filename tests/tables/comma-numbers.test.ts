import { describe, expect, test } from 'vitest';
import { namedMapping, readMapped, type TableColumn, tableText } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'area', label: 'area, if stated', kind: 'given', unit: 'sf' },
  { name: 'V_s', label: 'Volume', kind: 'given', unit: 'cy' },
  { name: 'w', kind: 'given', unit: '%' },
];

/** The cells of a text as it is parted where nothing is said of it; the problem with it where it cannot be. */
function partedCells(text: string): readonly (readonly string[])[] | string {
  const parted = tableText(text, COLUMNS);
  if (!parted.ok) return parted.problems[0]?.code ?? '';
  return parted.value.rows.map(({ cells }) => cells);
}

describe('a line that is one number is one cell', () => {
  test.each([
    '1 234,50\n12 000,00',
    '1\u202f234,50\n12\u202f000,00',
    '1,234.5 cy',
    '1,234.5\n2,000',
    '7,5 m³',
    '7,5 %\n12,25 %',
    '7,5m3\n8,25m3',
    '1.234,50 €\n12,50 €',
    '$1,234.50\n$12.00',
    'USD 1,234.50',
    '−12,5 cu yd\n7',
    '(1.234,50)\n12,00',
    '12,5-\n7,5',
    '1’234,50\n7,25',
    '1,23,456.50\n12,34,567',
    '1.234,-\n50,--',
    'ca. 12,5\n7,5',
    '1,5E3',
    '12,5\nn/a\n7,5',
    'V_s (m³)\n1.234,5',
    'V_s (m³)\n12,5\n7,25',
    'Menge\n1.234,5\n2.000,0',
    'V_s, m³\n12,5\n7,25',
    'area, if stated\n12,5\n7,25',
    'Menge, m³\n1 234,5\n7,25',
    'North berth\n\nMenge [m³]\n12,5',
    'area, if stated\n12.5\n7',
    'area, if stated, sf\n12\n7',
    'Volume, m³\n12\n7',
    'Volume, m³\n1 234.5\n7',
    "area, if stated\nm²\n1'527.6\n62.1",
  ])('%j', (text) => {
    const lines = text.split('\n');
    expect(partedCells(text)).toEqual(lines.map((line) => [line]));
  });
});

describe('commas part cells', () => {
  test.each([
    ['item,V_s\na,12,5', ['item', 'V_s']],
    ['V_s,w\n12,5\n7,5', ['V_s', 'w']],
    ['Pos,Menge\n12,5\n7,5', ['Pos', 'Menge']],
    ['slab,12\ncaps,5', ['slab', '12']],
    ['12,slab\n5,caps', ['12', 'slab']],
    ['1,2,3\n4,5,6', ['1', '2', '3']],
    ['12, 5\n7, 5', ['12', ' 5']],
  ])('%j', (text, first) => {
    expect(partedCells(text)[0]).toEqual(first);
  });
});

test.each(['12,5\n7,5', '12,5', '1,250\n2,500'])('of bare numbers under no name it is asked: %j', (text) => {
  expect(partedCells(text)).toBe('table-parting-unclear');
  const said = tableText(text, COLUMNS, { delimiter: ',' });
  expect(said.ok && said.value.top.cells).toHaveLength(2);
});

test('a column of numbers with commas is read under its heading', () => {
  const parted = tableText('V_s (m³)\n1 234,50\n12 000,00\n', COLUMNS);
  if (!parted.ok) throw new Error('the text is not parted');
  const read = readMapped(parted.value, COLUMNS, namedMapping(parted.value, COLUMNS));
  expect(read.ok ? read.value.cells : read.problems).toEqual({ V_s: ['1 234.50 m³', '12 000.00 m³'] });
});

describe('columns that only spaces set apart', () => {
  const text =
    'item        item no    V_s (m3)   w\ndeck slab   A 1        1,234.5    5\npile caps   A 2        50         5\n';

  test('are asked for', () => {
    expect(partedCells(text)).toBe('table-parting-unclear');
    expect(partedCells('slab   12\ncaps   50\n')).toBe('table-parting-unclear');
  });

  test('are parted as was said', () => {
    const parted = tableText(text, COLUMNS, { delimiter: '  ' });
    expect(parted.ok && parted.value.rows.map(({ cells }) => cells)).toEqual([
      ['item', 'item no', 'V_s (m3)', 'w'],
      ['deck slab', 'A 1', '1,234.5', '5'],
      ['pile caps', 'A 2', '50', '5'],
    ]);
  });

  test('with a cell missing are refused, for any may be the blank one', () => {
    const parted = tableText('item  V_s  w\nslab  5\n', COLUMNS, { delimiter: '  ' });
    if (!parted.ok) throw new Error('the text is not parted');
    const read = readMapped(parted.value, COLUMNS, namedMapping(parted.value, COLUMNS), { short: 'blank' });
    const problems = read.ok ? read.value.problems : read.problems;
    expect(problems.map(({ code, severity }) => [code, severity])).toEqual([['row-short-spaced', 'error']]);
  });

  test.each(['item,V_s\nslab,  5\ncaps,  7\n', 'slab  of the deck\ncaps\n'])('%j are none', (words) => {
    expect(partedCells(words)).not.toBe('table-parting-unclear');
  });
});
