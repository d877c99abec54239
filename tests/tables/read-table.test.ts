import { expect, test } from 'vitest';
import { readTable, type TableColumn } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'soil', label: 'kind of soil', kind: 'given', type: 'text' },
  { name: 'thickness', label: 'layer thickness', kind: 'given' },
  { name: 's_u', label: 'undrained strength', kind: 'given' },
  { name: 'bottom', kind: 'calc' },
];

interface Reading {
  readonly what: string;
  readonly text: string;
  readonly cells: Readonly<Record<string, readonly (string | number | null)[]>>;
  readonly units?: Readonly<Record<string, string>>;
  readonly found?: Readonly<Record<string, unknown>>;
}

const READINGS: readonly Reading[] = [
  {
    what: 'commas, plain numbers and entries',
    text: 'soil,thickness\nclay,12\nsand,12 ft\nclay,\n',
    cells: { soil: ['clay', 'sand', 'clay'], thickness: [12, '12 ft', null] },
  },
  {
    what: 'labels, any case and loose spaces',
    text: ' Kind  of Soil ,LAYER THICKNESS\n clay , 1.5 \n',
    cells: { soil: ['clay'], thickness: [1.5] },
  },
  {
    what: 'units in parentheses and brackets',
    text: 'thickness (m),S_U [kPa]\n12,30\n12 ft,"1,200.5"\n1/2,3 1/2\n.5,-1e3\nthick,\n',
    cells: {
      thickness: ['12 m', '12 ft', '1/2 m', '.5 m', 'thick'],
      s_u: ['30 kPa', '1,200.5 kPa', '3 1/2 kPa', '-1e3 kPa', null],
    },
    units: { thickness: 'm', s_u: 'kPa' },
  },
  {
    what: 'spaces of all kinds between thousands, and digits that can be read two ways, with the unit above them',
    text: 'thickness (mm)\n1 200\n1\u00a0234.5\n−1\u202f234.5\n12 345\n"1,23,4"\n4-1/2\n½\n12 300 ft\nabout 20\n2026-11-25\n',
    cells: {
      thickness: [
        '1 200 mm',
        '1\u00a0234.5 mm',
        '−1\u202f234.5 mm',
        '12 345 mm',
        '1,23,4 mm',
        '4-1/2 mm',
        '½ mm',
        '12 300 ft',
        'about 20',
        '2026-11-25',
      ],
    },
    units: { thickness: 'mm' },
  },
  {
    what: 'spaces between thousands before decimal commas',
    text: 'soil;thickness (m)\nclay;1 234,5\nsand;12,25\n',
    cells: { soil: ['clay', 'sand'], thickness: ['1 234.5 m', '12.25 m'] },
    units: { thickness: 'm' },
    found: { delimiter: ';', decimal: 'comma' },
  },
  {
    what: 'a compound unit, and a dash for none',
    text: 'thickness (lbf/(ft s)),s_u (-)\n1,2\n',
    cells: { thickness: ['1 lbf/(ft s)'], s_u: [2] },
    units: { thickness: 'lbf/(ft s)' },
  },
  {
    what: 'a byte order mark, CR LF, blank lines at both ends',
    text: '\ufeff\r\nsoil,thickness\r\nclay,1\r\n\r\n\r\n',
    cells: { soil: ['clay'], thickness: [1] },
  },
  {
    what: 'semicolons',
    text: 'soil;thickness\nclay, stiff;1.5\n',
    cells: { soil: ['clay, stiff'], thickness: [1.5] },
    found: { delimiter: ';', decimal: 'point' },
  },
  {
    what: 'tabs, as a spreadsheet copies cells',
    text: 'soil\tthickness (m)\r\nclay\t1,200.5\r\n',
    cells: { soil: ['clay'], thickness: ['1,200.5 m'] },
    units: { thickness: 'm' },
    found: { delimiter: '\t' },
  },
  {
    what: 'quoted cells with separators, marks and line breaks',
    text: 'soil,thickness\n"clay, ""fat""\nand grey","12\'-6"""\nsand,3"\n',
    cells: { soil: ['clay, "fat"\nand grey', 'sand'], thickness: ['12\'-6"', '3"'] },
  },
  {
    what: 'one column alone',
    text: 'thickness\n1\n2\n',
    cells: { thickness: [1, 2] },
    found: { delimiter: ',' },
  },
  {
    what: 'a number that is not written as the program would write it stays as typed',
    text: 'thickness\n1.50\n007\n"1,200"\n1e400\n',
    cells: { thickness: ['1.50', '007', '1,200', '1e400'] },
  },
  {
    what: 'numbers in a column of text stay text',
    text: 'soil\n12\n"1,5"\n',
    cells: { soil: ['12', '1,5'] },
  },
  {
    what: 'decimal commas where no number can be read two ways',
    text: 'thickness;s_u (kPa)\n1,5;1.234,5\n0,125 m;-12\n',
    cells: { thickness: [1.5, '0.125 m'], s_u: ['1234.5 kPa', '-12 kPa'] },
    units: { s_u: 'kPa' },
    found: { decimal: 'comma' },
  },
  {
    what: 'blank headers over blank cells',
    text: 'soil,thickness,,\nclay,1,,\n',
    cells: { soil: ['clay'], thickness: [1] },
  },
];

test.each(READINGS)('reads $what', ({ text, cells, units = {}, found = {} }) => {
  const read = readTable(text, COLUMNS);
  expect(read.ok ? read.value : read.problems).toEqual({
    length: Object.values(cells)[0]?.length,
    cells,
    units,
    delimiter: expect.any(String),
    decimal: expect.any(String),
    problems: [],
  });
  expect(read.ok ? read.value : {}).toMatchObject(found);
});

test('a stated decimal sign settles numbers that can be read two ways', () => {
  const text = 'thickness\n"1,200"\n';
  const read = (decimal: 'point' | 'comma'): unknown => {
    const outcome = readTable(text, COLUMNS, { decimal });
    return outcome.ok && outcome.value.cells.thickness;
  };
  expect(read('point')).toEqual(['1,200']);
  expect(read('comma')).toEqual(['1.200']);
});

test('a row with cells missing is kept and pointed out, and blank rows are left out and counted', () => {
  const text = 'soil,thickness,s_u\nclay,1\nsand,2,9\n,,\n"two\nlines",4,9\nclay,5 ft,9,,\n,,\nsand,6\n';
  const read = readTable(text, COLUMNS, { thousands: 'plain' });
  if (!read.ok) throw new Error(read.problems[0]?.message);
  expect(read.value.cells).toEqual({
    soil: ['clay', 'sand', 'two\nlines', 'clay', 'sand'],
    thickness: [1, 2, 4, '5 ft', 6],
    s_u: [null, 9, 9, 9, null],
  });
  expect(read.value.problems.map(({ code, severity, message }) => [code, severity, message])).toEqual([
    ['row-blank', 'warning', '2 blank rows are left out (lines 4 and 8)'],
    ['row-short', 'error', 'line 2 has 2 of 3 cells'],
    ['row-short', 'error', 'line 9 has 2 of 3 cells'],
  ]);
  expect(read.account).toMatchObject({ lines: [2, 3, 5, 7, 9], blankRows: 2 });
});

const ITS_COLUMNS =
  'its columns are soil “kind of soil”, thickness “layer thickness” and s_u “undrained strength”';

test.each([
  ['', 'table-empty', 'the text has no rows', 'bring in a text whose first row names the columns'],
  [' \n\n', 'table-empty', 'the text has no rows', 'bring in a text whose first row names the columns'],
  [
    'clay,12\nsand,3\n',
    'table-header-missing',
    'the first row is “clay, 12”, and should name columns of the table',
    ITS_COLUMNS,
  ],
  ['colour\ngrey\n', 'column-unknown', 'the table has no column “colour”', ITS_COLUMNS],
  ['soil,thicknes\nclay,1\n', 'column-unknown', 'the table has no column “thicknes”', ITS_COLUMNS],
  [
    'Bottom\n12\n',
    'column-calculated',
    '“Bottom” names the column bottom, which is calculated and takes no values',
    'leave it out, or say where it goes: soil “kind of soil”, thickness “layer thickness” or s_u “undrained strength”',
  ],
  [
    'thickness (m),Layer thickness\n1,2\n',
    'column-twice',
    '“thickness (m)” and “Layer thickness” both go to the column “thickness”',
    'keep one of the two',
  ],
  [
    'soil (m)\nclay\n',
    'column-unit-misplaced',
    '“soil (m)” has the unit “m”, and goes to “soil”, a column of type text',
    'leave the unit out',
  ],
  [
    'soil,,thickness\nclay,,1\nsand,grey,2\n',
    'column-without-header',
    'column 2 of the text has no header, and has “grey” in line 3',
    'write the name of the column above it',
  ],
  [
    'soil,thickness,s_u\nsand,1,2\nslab,1,250.5,3\n',
    'row-long',
    'line 3 has 4 cells for 3 columns; “3” is left over',
    'a number with a thousands comma needs quotation marks: "1,250.5"',
  ],
  [
    'soil,thickness\nslab,-1,250,000 cy\n',
    'row-long',
    'line 2 has 4 cells for 2 columns; “250, 000 cy” is left over',
    'a number with a thousands comma needs quotation marks: "-1,250,000"',
  ],
  [
    'soil,thickness\nclay, fat,"1,200"\n',
    'row-long',
    'line 2 has 3 cells for 2 columns; “1,200” is left over',
    'put a cell that has the separator in it in quotation marks',
  ],
  [
    'soil\tthickness\nclay\t1\t250\n',
    'row-long',
    'line 2 has 3 cells for 2 columns; “250” is left over',
    'put a cell that has the separator in it in quotation marks',
  ],
  [
    'soil,thickness\n"clay,1\nsand,2\n',
    'table-quote-open',
    'the quotation mark that opens a cell at line 2 is never closed',
    'close it, or write a mark that belongs to the text twice within quotation marks',
  ],
  [
    'soil,thickness\n"clay" fat,1\n',
    'table-quote-stray',
    'a quoted cell at line 2 goes on after its closing quotation mark',
    'write a mark that belongs to the text twice',
  ],
  [
    'soil;thickness\nclay;3\nclay;1,200\n',
    'decimal-ambiguous',
    '“1,200” in line 3, column B (thickness), can be 1200 or 1.200',
    'say whether decimals come after a point or a comma',
  ],
  [
    'thickness\t s_u\n12.5\t1\n3\t"12,5"\n',
    'decimal-mixed',
    '“12.5” at line 2 has a decimal point, and “12,5” at line 3 a decimal comma',
    'write all numbers one way',
  ],
])('refuses %j', (text, code, message, hint) => {
  const read = readTable(text, COLUMNS);
  expect(read.ok ? [] : read.problems.map((found) => [found.code, found.message, ...found.hints])).toEqual([
    [code, message, hint],
  ]);
});

test('every unknown header is told, beside what else is wrong with the headers', () => {
  const read = readTable('soil,colour,soil,smell\nclay,red,sand,none\n', COLUMNS);
  expect(read.ok ? [] : read.problems.map(({ message }) => message)).toEqual([
    'the table has no columns “colour” and “smell”',
    '“soil” and “soil” both go to the column “soil”',
  ]);
});

test('a number against what was stated of decimals is refused', () => {
  const read = readTable('thickness\n1.25\n', COLUMNS, { decimal: 'comma' });
  expect(read.ok ? [] : read.problems.map(({ code, message }) => [code, message])).toEqual([
    ['decimal-contradicted', '“1.25” in line 2, column A (thickness), has no decimal comma'],
  ]);
});

test('a text with too many rows is refused', () => {
  const read = readTable('thickness\n1\n2\n3\n', COLUMNS, { rowLimit: 2 });
  expect(read.ok ? [] : read.problems.map(({ code, message }) => [code, message])).toEqual([
    ['table-too-many-rows', 'the text has 3 rows, and a table has at most 2'],
  ]);
});

test('a name in its own case goes before the same in another', () => {
  const columns: readonly TableColumn[] = [
    { name: 'a', kind: 'given' },
    { name: 'A', kind: 'given' },
  ];
  const read = readTable('A,a\n1,2\n', columns);
  expect(read.ok && read.value.cells).toEqual({ A: [1], a: [2] });
});

test('a hundred thousand rows are read', () => {
  const lines = Array.from(
    { length: 100_000 },
    (_, i) => `clay ${i % 7},${i / 8},${i % 5 === 0 ? '' : `${i} kPa`}`,
  );
  const text = `soil,thickness,s_u\n${lines.join('\n')}\n`;
  const read = readTable(text, COLUMNS);
  expect(read.ok && read.value.length).toBe(100_000);
  expect(read.ok && read.value.cells.thickness?.[99_999]).toBe(99_999 / 8);
});
