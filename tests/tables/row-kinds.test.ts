import { describe, expect, test } from 'vitest';
import { type ReadOptions, readTable, type TableColumn } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
  { name: 'w', kind: 'given', unit: '%' },
];

/** The codes that refuse a row under one item of 100, or how many rows are taken. */
function under(row: string): readonly string[] | number {
  const read = readTable(`item,V_s\nslab,60\ncaps,40\n${row}\n`, COLUMNS);
  return read.ok ? read.value.length : read.problems.map(({ code }) => code);
}

test.each([
  'Σ,100',
  'carried forward,100',
  'Carried forward to page 2,100',
  'Brought forward,100',
  'c/f,100',
  'Übertrag,100',
  'à reporter,3',
  'A reporter :,3',
  'Report,3',
  'suma y sigue,3',
  'a riportare,3',
  'Riporto,3',
  'carried to collection,3',
  'To collection,3',
  'Transport,100',
  'Итого,3',
  '合计,3',
  'Celkem,3',
  'All deck,100',
  ',100',
])('“%s” is asked for as a total', (row) => {
  expect(under(row)).toEqual(['row-total']);
});

test.each([
  ['item,V_s\nslab,60\ncaps,40\n,7\n', 'row-unnamed', { unnamed: 'out' }],
  ['item,V_s\n,7\nslab,60\ncaps,40\n', 'row-unnamed', { unnamed: 'out' }],
  ['item,V_s\nslab,60\ncaps,40\nwall,100\n', 'row-sum', { sums: 'out' }],
  ['item,V_s\nslab,60\ncaps,40\nWall,100.0\n', 'row-sum', { sums: 'out' }],
  ['item,V_s,w\nslab,60,5\ncaps,40,5\nwall,100,\n', 'row-sum', { sums: 'out' }],
  ['item,V_s\nslab,60\ncaps,40\nAll deck,105\n', 'row-all', { totals: 'out' }],
  ['item,V_s\nslab,60\ncaps,40\nOverall,97\n', 'row-all', { totals: 'out' }],
  ['item,V_s,w\n1,2,3\nslab,60,5\ncaps,40,5\n', 'row-numbering', { notes: 'out' }],
  ['item,V_s,w\n(1),(2),(3)\nslab,60,5\ncaps,40,5\n', 'row-numbering', { notes: 'out' }],
] as const)('%j is asked for as %s, and left out by consent', (text, code, consent) => {
  const read = readTable(text, COLUMNS);
  expect(!read.ok && read.problems.map((found) => found.code)).toEqual([code]);
  const out = readTable(text, COLUMNS, consent);
  expect(out.ok && out.value.cells.item).toEqual(['slab', 'caps']);
  expect(out.ok && out.value.cells.V_s).toEqual([60, 40]);
});

test.each([
  ['item,V_s\n,60\n,40\n,7\nslab,3\n', 4],
  ['V_s\n60\n40\n', 2],
])('%j has no words that a row could lack', (text, rows) => {
  const read = readTable(text, COLUMNS);
  expect(read.ok && read.value.length).toBe(rows);
});

test('rows without words are items where that is said', () => {
  const read = readTable('item,V_s\nslab,60\ncaps,40\n,7\n', COLUMNS, { unnamed: 'in' });
  expect(read.ok && read.value.cells).toEqual({ item: ['slab', 'caps', null], V_s: [60, 40, 7] });
  expect(read.account?.counts).toMatchObject({ heading: 2, taken: 5 });
});

test('the sum of a single row without words is asked for as a total', () => {
  const read = readTable('item,V_s\nslab,100\n,100\n', COLUMNS);
  expect(!read.ok && read.problems.map(({ code }) => code)).toEqual(['row-total']);
});

test.each([
  'All-round brace,7',
  'Allowance,103',
  'Carriageway,103',
  'wall,103',
  'All weather cover,7',
  'total station plinth,7',
  'sum pump pit,7',
  'Summa wall,7',
  'Brought to site fill,7',
  'Transport,7',
  'Report of survey,7',
  'Summary slab,7',
  'Sumac bed,7',
])('“%s” is a row', (row) => {
  expect(under(row)).toBe(3);
});

/** The lines of the rows that seem to be sums and are not called so. */
function sumLines(text: string): unknown {
  const read = readTable(text, COLUMNS);
  return read.ok ? [] : read.problems.map(({ code, data }) => [code, data.lines]);
}

test.each<[string, readonly number[]]>([
  // Sums of the rows since the last one, and one of all.
  ['item,V_s\na,60\nb,40\nXxx,100\nc,30\nd,25\nXxx,55\nYyy,155\n', [4, 7, 8]],
  // An item that happens to be a sum, and the total behind it, which counts it.
  ['item,V_s\na,60\nb,40\nwall,100\nc,50\nXxx,250\n', [4, 6]],
  ['item,V_s,w\na,60,1\nb,40,2\nXxx,100,3\n', [4]],
  ['V_s\n1\n2\n3\n6\n', [5]],
])('%j has rows that are sums', (text, lines) => {
  expect(sumLines(text)).toEqual([['row-sum', lines]]);
});

test.each([
  // One number that is there twice, one number of two, a series, two numbers alone, a sum of other rows in each column.
  'item,V_s\na,60\nb,0\nc,60\n',
  'item,V_s,w\na,60,1\nb,40,2\nc,100,5\n',
  'item,V_s\na,1\nb,2\nc,3\nd,4\ne,5\n',
  'V_s\n10\n20\n30\n',
  'item,V_s,w\na,60,5\nTotal row of piles,60,5\nb,40,6\nc,40,11\n',
])('%j has none', (text) => {
  expect(readTable(text, COLUMNS, { totals: 'in' }).ok).toBe(true);
});

// Half a step of the last digit of each summand and of the sum: 10 and 20 may be 10.49 and 20.49, and 30.98 is 31.
test.each([
  ['10,20', '31'],
  ['1234,2345', '3580'],
  ['1234,2345,421', '4001'],
  ['12.34,23.41,4.23', '40'],
  ['10.3,20.4', '30.8'],
  ['10.3,20.4', '31'],
  ['1.25,2.5,3.125', '6.9'],
  ['1234.5 m3,2345.5 m3', '3580.1 m3'],
])('of %s the sum may be written %s', (above, sum) => {
  const rows = above.split(',').map((x, at) => `item ${at}\t${x}`);
  const text = `item\tV_s\n${rows.join('\n')}\nApron\t${sum}\n`;
  expect(sumLines(text)).toEqual([['row-sum', [rows.length + 2]]]);
});

test.each([
  ['10,20', '32'],
  ['1234,2345', '3581'],
  ['12.34,23.41,4.23', '41'],
  ['10.3,20.4', '30.9'],
  // Small counts are off by more than a tenth of their sum, which is no rounding of volumes.
  ['2,3', '6'],
])('of %s the sum is not %s', (above, sum) => {
  const rows = above.split(',').map((x, at) => `item ${at},${x}`);
  expect(sumLines(`item,V_s\n${rows.join('\n')}\nApron,${sum}\n`)).toEqual([]);
});

test('the sums of quantities that are rounded one by one are always asked for', () => {
  const random = randomFrom(20_261_130);
  for (let draw = 0; draw < 300; draw += 1) {
    const decimals = Math.floor(random() * 3);
    const coarser = Math.floor(random() * (decimals + 1));
    const exact = Array.from({ length: 2 + Math.floor(random() * 9) }, () => 20 + 500 * random());
    const rows = exact.map((x, at) => `item ${at},${x.toFixed(decimals)}`);
    const sum = exact.reduce((whole, x) => whole + x, 0).toFixed(coarser);
    const text = `item,V_s\n${rows.join('\n')}\nApron,${sum}\n`;
    const found = sumLines(text) as readonly (readonly [string, readonly number[]])[];
    expect(found.find(([code]) => code === 'row-sum')?.[1], text).toContain(rows.length + 2);
  }
});

/** Numbers between 0 and 1 that begin alike each time: a linear congruence, from memory. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const NAMED: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'material', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
];

test('an item that is called like a total is taken, also where totals are left out, and told', () => {
  const rows = 'item,material,V_s\na,concrete,10\ntotal station plinth,concrete,7\nb,concrete,20\n';
  for (const text of [rows, `${rows}Total,,37\n`]) {
    const read = readTable(text, NAMED, { totals: 'out' });
    expect(read.ok && read.value.cells.item).toEqual(['a', 'total station plinth', 'b']);
    expect(read.ok && read.value.problems.find(({ code }) => code === 'row-called-total')?.message).toBe(
      'line 3 is called like a total and is taken as a row like the others, for the rows above do not come to that: “total station plinth, concrete, 7”',
    );
  }
});

test.each([
  // Of the names of items each may begin so, first in the list too.
  ['total station plinth,concrete,10\nsum pump pit,concrete,20\nSumma wall,concrete,7', []],
  ['a,concrete,10\nb,concrete,20\nTotal deck,concrete,30', [['row-total', [4]]]],
  ['a,concrete,10\nb,concrete,20\nTotal deck,,31', [['row-total', [4]]]],
  // Numbers that do not add up, and nothing where the others say their material.
  ['a,concrete,10\nb,concrete,20\nTotal deck,,55', [['row-total', [4]]]],
  ['a,concrete,10\nb,concrete,20\nTotal deck,concrete,32.5', [['row-all', [4]]]],
  ['a,concrete,10\nb,concrete,20\nTotal (m³),concrete,55', [['row-total', [4]]]],
  ['a,concrete,10\nb,concrete,20\nTotal carried to page 2,concrete,55', [['row-total', [4]]]],
])('of %j these are asked for: %j', (rows, asked) => {
  const read = readTable(`item,material,V_s\n${rows}\n`, NAMED);
  expect(read.ok ? [] : read.problems.map(({ code, data }) => [code, data.lines])).toEqual(asked);
});

test('what was said of totals is not said of rows that are called like items', () => {
  const text = 'item,V_s\nslab,60\ncaps,40\nwall,100\nTotal,200\n';
  const read = readTable(text, COLUMNS, { totals: 'out' });
  expect(!read.ok && read.problems.map(({ code, data }) => [code, data.lines])).toEqual([['row-sum', [4]]]);
  const taken = readTable(text, COLUMNS, { totals: 'out', sums: 'in' });
  expect(taken.ok && taken.value.cells.item).toEqual(['slab', 'caps', 'wall']);
});

/** Words for totals and for sums carried forward, as takeoffs in many languages have them. */
const WORDS = [
  ...[
    'Subtotale',
    'Totale',
    'Tot.',
    'Sommano',
    'Delsumma',
    'Totalt',
    'Slutsumma',
    'Yhteensä',
    'Välisumma',
    'Kokku',
  ],
  ...[
    'Sum',
    'I alt',
    'Delsum',
    'Samtals',
    'Kopā',
    'Iš viso',
    'Razem',
    'Součet',
    'Mezisoučet',
    'Celkem',
    'Súčet',
  ],
  ...[
    'Skupaj',
    'Ukupno',
    'Zbroj',
    'Összesen',
    'Mindösszesen',
    'Végösszeg',
    'Итого',
    'Разом',
    'Усього',
    'Общо',
  ],
  ...[
    'Σύνολο',
    'Άθροισμα',
    'Ara toplam',
    'Tổng cộng',
    'Tổng',
    'Cộng',
    'รวม',
    'कुल',
    '합계',
    '소계',
    '총계',
    '合計',
  ],
  ...['סה"כ', 'סה״כ', 'סך הכל', 'المجموع', 'الإجمالي', 'جمع کل', 'Sous-total', 'Totaal', 'Insgesamt'],
  ...['c/fwd', 'b/fwd', 'c.f.', 'Z przeniesienia', 'Do przeniesienia', 'Átvitel', 'Перенос', 'К переносу'],
  ...['Overført', 'Överfört', 'Prenos', 'Převod', 'Siirto', 'Devreden', 'Σε μεταφορά', '繰越'],
];

test.each(WORDS)('“%s” is a total whatever its number is', (word) => {
  expect(under(`"${word.replaceAll('"', '""')}",3`)).toEqual(['row-total']);
});

test.each([
  'Перенос кабеля',
  'Siirtokisko',
  'Prenosna črpalka',
  'Tot lot',
  'Sumpf',
  'Viso beam',
  'Kokkupanek',
  'Общи работи',
])('“%s” is an item', (word) => {
  expect(under(`${word},3`)).toBe(3);
});

test('of a total above all rows it is not said what it is the sum of', () => {
  const read = readTable('item,V_s\nTotal,100\nslab,60\ncaps,40\n', COLUMNS);
  expect(!read.ok && read.problems[0]?.message).toBe('line 2 seems to be a total: “Total, 100”');
});

test('a text that a column takes is no total, and one beside it is', () => {
  const columns: readonly TableColumn[] = [
    { name: 'layer', kind: 'given', type: 'text' },
    { name: 'basis', kind: 'given', type: 'text', options: ['total', 'effective'] },
    { name: 'γ', kind: 'given', unit: 'pcf' },
  ];
  const rows = 'layer,basis,γ\nfill,total,110\nclay,Total,100\n';
  const read = readTable(rows, columns);
  expect(read.ok && read.value.length).toBe(2);
  const summed = readTable(`${rows}total,total,210\n`, columns);
  expect(!summed.ok && summed.problems.map(({ code }) => code)).toEqual(['row-total']);
});

test('layers are no sum of those above for being nearly so; one that is a sum is asked for', () => {
  const columns: readonly TableColumn[] = [
    { name: 'item', kind: 'given', type: 'text' },
    { name: 'thick', kind: 'given', unit: 'in' },
  ];
  const codes = (sum: string) => {
    const read = readTable(`item,thick\npaving,3.5\nbase,12\nslab,${sum}\n`, columns);
    return read.ok ? [] : read.problems.map(({ code }) => code);
  };
  expect(['16', '15', '15.4'].map(codes)).toEqual([[], [], []]);
  expect(codes('15.5')).toEqual(['row-sum']);
});

describe('blank rows among numbers that go over others in their places', () => {
  const numbers = 'V_s,w\n60,5\n,\n,\n40,4\n,\n';
  const read = (text: string, more: Partial<ReadOptions> = {}) =>
    readTable(text, COLUMNS, { inPlace: true, ...more });

  test('are asked for, and stay where they stand or are left out', () => {
    const asked = read(numbers);
    expect(!asked.ok && asked.problems.map(({ code }) => code)).toEqual(['rows-blank-between']);
    expect(!asked.ok && asked.problems[0]?.message).toContain('lines 3 and 4 are blank');
    const kept = read(numbers, { blankRows: 'in' });
    expect(kept.ok && kept.value.cells).toEqual({ V_s: [60, null, null, 40], w: [5, null, null, 4] });
    const out = read(numbers, { blankRows: 'out' });
    expect(out.ok && out.value.cells).toEqual({ V_s: [60, 40], w: [5, 4] });
  });

  test('are gaps where each row has its name, and in a list of its own', () => {
    const named = read('item,V_s\nslab,60\n,\ncaps,40\n');
    expect(named.ok && named.value.cells.V_s).toEqual([60, 40]);
    const list = readTable(numbers, COLUMNS);
    expect(list.ok && list.value.length).toBe(2);
  });
});
