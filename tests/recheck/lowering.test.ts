import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { type Book, openBook } from '../../src/document/index.ts';
import { type Grid, lowerBook } from '../../src/recheck/index.ts';
import { bookOf, calc, computed, given, table } from './books.ts';
import { randomFrom } from './random.ts';
import { randomBook } from './random-book.ts';

const SEED = 20_261_125;

function gridOf(book: Book): Grid {
  const { program, values } = computed(book);
  return lowerBook(program, values).grid;
}

function templates(): readonly Book[] {
  const folder = fileURLToPath(new URL('../../templates/', import.meta.url));
  return readdirSync(folder).map((id) => {
    const opened = openBook(readFileSync(`${folder}${id}/book.quaybook.json`, 'utf8'));
    if (!opened.ok) throw new Error(`${id} does not open`);
    return opened.value.book;
  });
}

console.log(`recheck: random books start from seed ${SEED}`);
const grids = [
  ...templates(),
  ...Array.from({ length: 6 }, (_, at) => randomBook(randomFrom(SEED + at))),
].map(gridOf);
const formulas = grids.flatMap(({ sheets }) =>
  sheets.flatMap(({ rows }) =>
    rows.flatMap((row) => row.filter((cell): cell is string => typeof cell === 'string')),
  ),
);

/** A formula with `@` for every address and range, and nothing for the names of functions. */
const bare = (formula: string): string =>
  formula
    .replace(/[A-Za-z]+\d*!\$[A-Z]+\$?\d+(:\$[A-Z]+\$?\d+)?/g, '@')
    .replace(/[A-Z]+(\.[A-Z]+)*(?=\()/g, '');

test('only plain functions are written, the search of an ascending column, and a normal quantile', () => {
  const used = new Set(formulas.flatMap((formula) => formula.match(/[A-Z][A-Z.]*(?=\()/g) ?? []));
  const allowed = [
    'ABS',
    'ATAN',
    'COS',
    'EXP',
    'IF',
    'INDEX',
    'INT',
    'LN',
    'MATCH',
    'MAX',
    'MIN',
    'NA',
    'NORM.S.INV',
  ];
  expect([...used].sort()).toEqual([...allowed, 'SIGN', 'SIN', 'SQRT', 'SUM', 'VLOOKUP']);
});

test('no number and no text of a person stands in a formula', () => {
  expect(formulas.length).toBeGreaterThan(5000);
  expect(formulas.filter((formula) => !/^=[@"()+\-*/^<>=,]+$/.test(bare(formula)))).toEqual([]);
  expect(formulas.filter((formula) => formula.replaceAll('""', '').includes('"'))).toEqual([]);
});

test('a power and a sign stand in parentheses of their own, where spreadsheets disagree on their order', () => {
  const open = formulas.map(bare).filter((formula) => /-@\^|\^-|\^@\^|@\^@\^/.test(formula));
  expect(open).toEqual([]);
});

test('no formula is longer than a workbook takes', () => {
  expect(formulas.reduce((most, { length }) => Math.max(most, length), 0)).toBeLessThan(8192);
});

test('a grid is a plain value', () => {
  for (const grid of grids) expect(JSON.parse(JSON.stringify(grid))).toEqual(grid);
});

test('a small book, cell by cell', () => {
  const layers = table(
    'layers',
    2,
    given('thickness', 'ft', [12, '3 m']),
    calc('bottom', 'RUNNINGSUM(thickness)', 'ft'),
  );
  const { sheets, labels } = gridOf(
    bookOf(
      { 'D [in]': '36 in', 'A [in^2]': '=D^2 / 2', 'L [ft]': '', deep: '=MAX(layers.bottom) > 20 ft' },
      layers,
    ),
  );
  expect(Object.fromEntries(sheets.map(({ name, rows }) => [name, rows]))).toEqual({
    Cells: [
      [null, '=(Cells!$C$1*Units!$B$1)', 36],
      [null, '=((Cells!$B$1^Numbers!$A$1)/Numbers!$A$1)'],
      [null, '=NA()'],
      [
        null,
        '=(((MAX(Table1!$C$2:$C$3))-(Numbers!$A$2*Units!$B$2))>' +
          '(Numbers!$A$3*MAX(ABS((MAX(Table1!$C$2:$C$3))),ABS((Numbers!$A$2*Units!$B$2)))))',
      ],
    ],
    Table1: [
      [null, null, null, null],
      [1, '=(Table1!$D2*Units!$B$2)', '=Table1!$E2', 12, '=Table1!$B2'],
      [2, 3, '=Table1!$E3', null, '=(Table1!$E2+Table1!$B3)'],
    ],
    Work: [],
    Search: [],
    Numbers: [[2], [20], [1e-12]],
    Units: [
      [null, 0.0254, null],
      [null, 0.3048, null],
    ],
  });
  expect(labels).toContainEqual({ sheet: 'Table1', row: 0, column: 1, text: 's.layers.thickness' });
});
