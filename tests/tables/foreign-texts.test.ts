import { describe, expect, test } from 'vitest';
import { type ReadOptions, readTable, type TableColumn, type TableReading } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'area', label: 'area, if not the whole strip', kind: 'given', unit: 'sf' },
  { name: 'thick', label: 'thickness', kind: 'given', unit: 'in' },
  { name: 'V_s', label: 'volume, if stated', kind: 'given', unit: 'cy' },
  { name: 'w', label: 'allowance', kind: 'given', unit: '%' },
  { name: 's_s', label: 'reinforcement', kind: 'given', unit: 'lbm/cy' },
  { name: 'N', label: 'force', kind: 'given', unit: 'kN' },
];

function codes(read: TableReading): readonly string[] {
  return (read.ok ? read.value.problems : read.problems).map(({ code }) => code);
}

function onlyRefusal(read: TableReading): string {
  if (read.ok) throw new Error('the text was read');
  return read.problems.map(({ message, hints }) => [message, ...hints].join('; ')).join('. ');
}

describe('a unit where people put it', () => {
  test.each([
    ['V_s m³', 'V_s', 'm³'],
    ['V_s, m3', 'V_s', 'm^3'],
    ['V_s (m3)', 'V_s', 'm^3'],
    ['V_s [CY]', 'V_s', 'cy'],
    ['V_s (cu yd)', 'V_s', 'cy'],
    ['V_s (CU. YD.)', 'V_s', 'cy'],
    ['V_s/cy', 'V_s', 'cy'],
    ['volume, if stated, cubic yards', 'V_s', 'cy'],
    ['volume, if stated in m3', 'V_s', 'm^3'],
    ['Area (sq ft)', 'area', 'sf'],
    ['Area SF', 'area', 'sf'],
    ['area - m²', 'area', 'm²'],
    ['Area: sqm', 'area', 'm^2'],
    ['Thickness [ft]', 'thick', 'ft'],
    ['Thickness in mm', 'thick', 'mm'],
    ['thick in', 'thick', 'in'],
    ['THICKNESS (IN)', 'thick', 'in'],
    ['thick_mm', 'thick', 'mm'],
    ['Thickness (M)', 'thick', 'm'],
    ['allowance (percent)', 'w', '%'],
    ['s_s (lb/cu yd)', 's_s', 'lbm/cy'],
    ['s_s kg/m3', 's_s', 'kg/m^3'],
    ['force KN', 'N', 'kN'],
  ])('%s', (header, name, unit) => {
    const read = readTable(`item,"${header}"\nslab,7.5\n`, COLUMNS);
    expect(read.ok ? [read.value.units, read.value.cells[name]] : read.problems).toEqual([
      { [name]: unit },
      [`7.5 ${unit}`],
    ]);
  });

  test('in a row below the headers', () => {
    const read = readTable('item;area;thick;w\n;[m2];(mm);-\nslab;120,5;350;0,05\n', COLUMNS);
    expect(read.ok ? read.value.cells : read.problems).toEqual({
      item: ['slab'],
      area: ['120.5 m^2'],
      thick: ['350 mm'],
      w: ['5 %'],
    });
    expect(read.account?.counts).toMatchObject({ heading: 7, taken: 4 });
  });

  test.each([
    ['item;area;V_s\ntext;text;m3\nslab;;7.5\n', 'm^3'],
    ['item;area;V_s\n;Unit:;m3\nslab;;7.5\n', 'm^3'],
    ['item;area;V_s\nUnits;;[m³]\nslab;;7.5\n', 'm³'],
    ['item;area;V_s\nEinheit;-;(CY)\nslab;;7.5\n', 'cy'],
    ['item;area;V_s\nUnits;m2;m3\nslab;;7.5\n', 'm^3'],
    ['item;area;V_s\n;;m3\nslab;;n/a\ncaps;;7.5\n', 'm^3'],
    ['item;area;V_s\n;;(m3)\nslab;;nil\ncaps;;７.５\n', 'm^3'],
  ])('in a row that has words too: %j', (text, unit) => {
    const read = readTable(text, COLUMNS, { nil: 'blank' });
    expect(read.ok ? [read.value.units.V_s, read.value.cells.V_s?.at(-1)] : read.problems).toEqual([
      unit,
      `7.5 ${unit}`,
    ]);
  });

  test('a dash in brackets below the headers is the unit of plain numbers', () => {
    const read = readTable('item;w\n;[-]\nslab;0.05\n', COLUMNS);
    expect(read.ok ? read.value.cells : read.problems).toEqual({ item: ['slab'], w: ['5 %'] });
  });

  test.each([
    'item;thick;w\ntext;;-\nslab;7.5;\n',
    'item;thick;w\n;;-\nslab;7.5;\n',
    'item;thick;w\nUnit:;;-\nslab;7.5;\n',
    'item;thick;w\nUnit:;;[-]\nslab;7.5;\n',
    'item;thick;w\n-;;(-)\nslab;7.5;\n',
  ])('a dash in a row of units above a blank column: %j', (text) => {
    const read = readTable(text, COLUMNS);
    expect(read.ok ? read.value.cells : read.problems).toEqual({ item: ['slab'], thick: [7.5], w: [null] });
    expect(read.ok && read.value.problems).toEqual([]);
  });

  test('a dash above dashes, or beside an item, is no unit', () => {
    expect(onlyRefusal(readTable('item;thick;w\n;;-\nslab;7.5;-\n', COLUMNS))).toContain('line 2, column C');
    expect(onlyRefusal(readTable('item;thick;w\ncaps;;-\nslab;7.5;\n', COLUMNS))).toContain(
      'line 2, column C',
    );
  });

  test('a row of words is none of units', () => {
    expect(codes(readTable('item;V_s\nUnit;lots\nslab;7.5\n', COLUMNS))).toEqual([]);
    const read = readTable('item;V_s\nUnit;lots\nslab;7.5\n', COLUMNS);
    expect(read.ok && read.value.cells.item).toEqual(['Unit', 'slab']);
  });

  test.each([
    ['s_s (tons/cy)', 'the unit “tons/cy” of “s_s (tons/cy)” can be t/cy, ST/cy or LT/cy'],
    ['V_s (kN)', '“V_s (kN)” states “kN”, a unit of another kind than the column “V_s” takes (cy)'],
    ['V_s (net)', 'the unit “net” of “V_s (net)” is none that the column “V_s” takes (cy)'],
    ['V_s (-)', 'the unit “-” of “V_s (-)” is none that the column “V_s” takes (cy)'],
    ['force (mN)', 'the unit “mN” of “force (mN)” is not read as it is written; write MN'],
    ['s_s (oz/cy)', 'the unit “oz/cy” of “s_s (oz/cy)” is not read as it is written; write lbm/cy'],
  ])('%s is asked for', (header, words) => {
    expect(onlyRefusal(readTable(`item,${header}\nslab,7.5\n`, COLUMNS))).toContain(words);
  });

  test('above and below that differ are asked for', () => {
    expect(onlyRefusal(readTable('item,V_s (cy)\n,m3\nslab,7.5\n', COLUMNS))).toContain('“cy or m^3”');
  });
});

describe('a share in a column of per cent', () => {
  test.each([
    ['w (-)\n0.05\n1\n', ['5 %', '100 %']],
    ['w (%)\n0.05\n', ['0.05 %']],
    ['w\n0.5\n10\n', [0.5, 10]],
    ['w\n5 %\n0\n', ['5 %', 0]],
  ])('%j is settled', (text, cells) => {
    const read = readTable(text, COLUMNS);
    expect(read.ok ? read.value.cells.w : read.problems).toEqual(cells);
  });

  test('without a word it is asked for', () => {
    expect(onlyRefusal(readTable('item,w\nslab,0\ncaps,0.05\n', COLUMNS))).toBe(
      'line 3, column B “w”: “0.05” can be 0.05 % or 5 %, as all numbers of the column are 1 or less; ' +
        'state the unit of the column: w (%) for per cent, w (-) for parts of one',
    );
  });
});

describe('a number that can be read two ways', () => {
  test.each([
    ['item\tV_s\nslab\t1,250\n', '1250 or 1.250'],
    ['item,V_s\nslab,"1,250"\n', '1250 or 1.250'],
    ['item,V_s\nslab,1.250\n', '1.250 or 1250'],
    ['item;V_s\nslab;12,385\ncaps;101,220\n', '12385 or 12.385; so can 1 more'],
    ['item;V_s\nslab;１，２５０\n', 'can be'],
  ])('%j is asked for', (text, words) => {
    const read = readTable(text, COLUMNS);
    expect(codes(read)).toEqual(['decimal-ambiguous']);
    expect(onlyRefusal(read)).toContain(words);
    expect(read.account?.counts.refused).toBeGreaterThan(0);
  });

  test.each([
    ['item\tV_s\nslab\t1,250\ncaps\t0.5\n', ['1,250', 0.5]],
    ['item\tV_s\nslab\t1.250\ncaps\t0,5\n', [1250, 0.5]],
    ['item\tV_s\nslab\t1 250,500\n', ['1 250.500']],
    ["item\tV_s\nslab\t1'250.500\ncaps\t1’250\n", ['1250.500', 1250]],
    ['item\tV_s\nslab\t1.250E3\n', ['1.250E3']],
    ['item\tV_s\nslab\t１２５０．５\n', [1250.5]],
    ['item\tV_s\nslab\t12 1/2\n', ['12 1/2']],
    ['item\tV_s\nslab\t1,250.5 CY\n', ['1,250.5 cy']],
    ['item\tV_s\nslab\t350 m3\n', ['350 m^3']],
  ])('%j is settled', (text, cells) => {
    const read = readTable(text, COLUMNS);
    expect(read.ok ? read.value.cells.V_s : read.problems).toEqual(cells);
  });
});

describe('a comma between thousands that parts a number in two', () => {
  test.each([
    [
      'item,V_s,w\nslab,1,250\n',
      'line 2, column B: 1 and 250 beside it may be two cells or the number 1,250',
    ],
    ['item,area,thick\na,85,12\nb,1,250\nc,420,9\nd,12,14\n', 'line 3, column B: 1 and 250'],
  ])('%j is asked for', (text, words) => {
    const read = readTable(text, COLUMNS);
    expect(codes(read)).toContain('cells-split');
    expect(onlyRefusal(read)).toContain(words);
    expect(read.account?.counts.refused).toBe(2);
  });

  test.each([['item,area,thick\na,85,350\nb,1200,250\nc,420,300\n'], ['item,area,thick\na,"85","350"\n']])(
    '%j is none',
    (text) => {
      expect(codes(readTable(text, COLUMNS))).toEqual([]);
    },
  );
});

describe('rows that are no items', () => {
  const totals = 'item,V_s\nslab,10\ncaps,20\npiles,40\nTotal,70\n';

  test.each<[string, readonly number[]]>([
    [totals, [5]],
    ['item,V_s\nslab,10\ncaps,20\n,30\n', [4]],
    ['item,V_s\nslab,10\ncaps,20\nSubtotal,30\npiles,31\nwall,5\nGrand total,66\n', [4, 7]],
    ['item,V_s\nslab,10.3\ncaps,20.3\npiles,30.1\nall,60.7\n', [5]],
    ['item;V_s\nPlatte;10\nSumme;10\n', [3]],
  ])('%j has totals', (text, lines) => {
    const read = readTable(text, COLUMNS);
    expect(codes(read)).toEqual(['row-total']);
    expect(read.ok ? [] : read.problems[0]?.data.lines).toEqual(lines);
    const out = readTable(text, COLUMNS, { totals: 'out' });
    expect(codes(out)).toEqual(['rows-left-out']);
    expect(out.account?.counts.out).toBeGreaterThan(0);
    expect(codes(readTable(text, COLUMNS, { totals: 'in' }))).toEqual([]);
  });

  test.each([
    ['item,V_s\na,1\nb,2\nc,3\nd,4\n'],
    ['item,V_s\na,1\nb,2\nc,4\n'],
    ['item,V_s\ntotally new slab,1\nb,2\n'],
  ])('%j has none', (text) => {
    expect(codes(readTable(text, COLUMNS))).toEqual([]);
  });

  test.each<[string, ReadOptions, string]>([
    ['Takeoff rev. C,,\n,,\nitem,V_s,w\nslab,10,5\n', { notes: 'out' }, 'rows-above-headers'],
    ['item,V_s,w\nslab,10,5\ncaps,10,5\n* as measured,,\n', { notes: 'out' }, 'row-note'],
    ['item,V_s\nslab,\n* as measured,\n', { notes: 'out' }, 'row-note'],
    ['item,V_s\nslab,5\nall as measured on site,\n', { notes: 'in' }, 'row-note'],
    ['item,V_s,w\n', { noRows: true }, 'table-no-rows'],
  ])('%j is asked for, and read by consent', (text, consent, code) => {
    expect(codes(readTable(text, COLUMNS))).toEqual([code]);
    expect(readTable(text, COLUMNS, consent).ok).toBe(true);
  });

  test('lines are left out as was said', () => {
    const read = readTable(totals, COLUMNS, { skipped: new Set([5]) });
    expect(read.ok && read.value.length).toBe(3);
    expect(codes(read)).toEqual(['rows-left-out']);
  });
});

test('what is no text is said in a readable sentence', () => {
  const read = readTable('i\0t\0e\0m\0', COLUMNS);
  expect(codes(read)).toEqual(['table-not-text']);
  expect(onlyRefusal(read)).toMatch(/^this is no text, but perhaps/);
});

test('a separator stated in the first line is none of its cells', () => {
  const read = readTable('sep=;\nitem;V_s\nslab;1,5\n', COLUMNS);
  expect(read.ok ? [read.value.cells, read.account?.lines] : read.problems).toEqual([
    { item: ['slab'], V_s: [1.5] },
    [3],
  ]);
});

test('cells that are not read are told with line and column, all to a limit', () => {
  const check: NonNullable<ReadOptions['check']> = (column, cell) =>
    column === 'V_s' && typeof cell === 'string'
      ? { ...problemLike, message: `${cell} is no number` }
      : column === 'V_s' && typeof cell === 'number' && cell < 0
        ? { ...problemLike, severity: 'warning', message: `${cell} is below 0` }
        : undefined;
  const rows = Array.from({ length: 130 }, (_, at) => `slab,${at % 2 === 0 ? 'x' : -at}`);
  const read = readTable(`item,V_s\n${rows.join('\n')}\n,y\n`, COLUMNS, { check });
  if (!read.ok) throw new Error('not read');
  const told = read.value.problems;
  expect(told.filter(({ code }) => code === 'cell-unread')).toHaveLength(66);
  expect(told.filter(({ code }) => code === 'cell-remarkable')).toHaveLength(65);
  expect(told[0]?.message).toBe('line 2, column B “V_s”: x is no number');
  expect(read.account?.counts).toMatchObject({ marked: 131, taken: 130 });
  const many = readTable(`item,V_s\n${'slab,x\n'.repeat(103)}${'slab,-1\n'.repeat(104)}`, COLUMNS, { check });
  expect(codes(many).filter((code) => code.endsWith('-more'))).toEqual([
    'cells-unread-more',
    'cells-remarkable-more',
  ]);
  expect(many.ok && many.value.problems.at(-1)?.message).toBe('there are remarks on 4 more cells');
});

const problemLike = {
  code: 'cell-not-number',
  severity: 'error',
  from: 0,
  to: 0,
  message: '',
  hints: [],
  fixes: [],
  data: {},
} as const;

test.each(['12.03.2024', '1.2.3', '12.345.67'])(
  '“%s” is no number, also where commas stand before decimals',
  (text) => {
    const read = readTable(`item;V_s\nslab;10,5\ncaps;${text}\n`, COLUMNS);
    expect(read.ok && read.value.cells.V_s).toEqual([10.5, text]);
  },
);
