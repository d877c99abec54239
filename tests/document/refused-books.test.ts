import { expect, test } from 'vitest';
import { openBook } from '../../src/document/index.ts';
import { textBeside } from './read-book.ts';

// biome-ignore lint/suspicious/noExplicitAny: a book is made unsound on purpose, field by field
type Anything = any;

interface Refusal {
  readonly what: string;
  readonly change: (book: Anything) => void;
  readonly code: string;
  readonly message: string;
  readonly hint?: string;
  readonly cell?: string;
}

const rows = (book: Anything): Anything => book.sheets[0].parts[2].rows;
const layers = (book: Anything): Anything => book.sheets[0].parts[3];
const profile = (book: Anything): Anything => book.sheets[0].parts[4];

const twoMethods = (): Anything => ({
  by: 'method',
  methods: [
    { id: 'm', for: ['clay'], formula: '1 m^2' },
    { id: 'n', formula: '2 m^2' },
  ],
});
function withMethods(book: Anything, change: Anything): void {
  const { formula: _, ...line } = rows(book)[4];
  rows(book)[4] = JSON.parse(JSON.stringify({ ...line, ...twoMethods(), ...change }));
}

/** One change each that makes a sound book unsound, and the words that refuse it. */
const REFUSALS: readonly Refusal[] = [
  {
    what: 'a missing field',
    change: (book) => delete book.settings.currency,
    code: 'book-field-missing',
    message: 'settings has no “currency”',
  },
  {
    what: 'a missing field of a row',
    change: (book) => delete rows(book)[4].name,
    code: 'book-field-missing',
    message: 'sheets[0].parts[2].rows[4] has no “name”',
  },
  {
    what: 'an unknown field of a row',
    change: (book) => {
      rows(book)[4].formulla = '1';
    },
    code: 'book-field-unknown',
    message: 'sheets[0].parts[2].rows[4] has the unknown field “formulla”',
    hint: 'did you mean “formula”?',
    cell: 'pile.A',
  },
  {
    what: 'a sheet of an origin that is not listed',
    change: (book) => {
      book.origins = [{ id: 'o1', title: 'Fenders' }];
      book.sheets[0].origin = 'o2';
    },
    code: 'book-origin-unknown',
    message: 'sheets[0], the sheet “pile”, names the origin “o2”, which the book does not list',
  },
  {
    what: 'two origins of one id',
    change: (book) => {
      book.origins = [
        { id: 'o1', title: 'Fenders' },
        { id: 'o1', title: 'Bollards' },
      ];
    },
    code: 'book-id-twice',
    message: 'origins[1] has the id “o1”, which origins[0] has too',
  },
  {
    what: 'an unknown field of the book',
    change: (book) => {
      book.macros = [];
    },
    code: 'book-field-unknown',
    message: 'the book has the unknown field “macros”',
  },
  {
    what: 'a text where a list is wanted',
    change: (book) => {
      book.sheets = 'none';
    },
    code: 'book-value-wrong',
    message: 'sheets is “none”, and should be a list',
  },
  {
    what: 'a number where an entry is wanted',
    change: (book) => {
      rows(book)[0].entry = 36;
    },
    code: 'book-value-wrong',
    message: 'sheets[0].parts[2].rows[0].entry is 36, and should be a text',
    cell: 'pile.D',
  },
  {
    what: 'a kind of row there is not',
    change: (book) => {
      rows(book)[0].kind = 'input';
    },
    code: 'book-value-wrong',
    message:
      'sheets[0].parts[2].rows[0].kind is “input”, and should be “given” or “choice” or “calc” or “check”',
    cell: 'pile.D',
  },
  {
    what: 'a system of units there is not',
    change: (book) => {
      book.settings.system = 'metric';
    },
    code: 'book-value-wrong',
    message: 'settings.system is “metric”, and should be “SI” or “US”',
  },
  {
    what: 'a currency that is no code',
    change: (book) => {
      book.settings.currency = '$';
    },
    code: 'book-value-wrong',
    message: 'settings.currency is “$”, and should be a currency code of three capital letters',
  },
  {
    what: 'a cell of the wrong kind',
    change: (book) => {
      layers(book).columns[1].chunks[0][1] = true;
    },
    code: 'book-value-wrong',
    message: 'sheets[0].parts[3].columns[1].chunks[0][1] is true, and should be a number or a text or null',
    cell: 'pile.layers',
  },
  {
    what: 'a fractional length',
    change: (book) => {
      layers(book).length = 2.5;
    },
    code: 'book-value-wrong',
    message: 'sheets[0].parts[3].length is 2.5, and should be a whole number',
    cell: 'pile.layers',
  },
  {
    what: 'a length below zero',
    change: (book) => {
      layers(book).length = -1;
    },
    code: 'book-value-wrong',
    message: 'sheets[0].parts[3].length is -1, and should be at least 0',
    cell: 'pile.layers',
  },
  {
    what: 'a length without end',
    change: (book) => {
      layers(book).length = 1e7;
    },
    code: 'book-value-wrong',
    message: 'sheets[0].parts[3].length is 10000000, and should be at most 1000000',
    cell: 'pile.layers',
  },
  {
    what: 'an empty list of options',
    change: (book) => {
      rows(book)[2].options = [];
    },
    code: 'book-value-wrong',
    message: 'sheets[0].parts[2].rows[2].options is an empty list, and should be a list of at least 1',
    cell: 'pile.method',
  },
  {
    what: 'a review that says something',
    change: (book) => {
      book.review.comments = ['fine'];
    },
    code: 'book-value-wrong',
    message: 'review.comments[0] is “fine”, and should be an object',
  },
  {
    what: 'a role that is no id',
    change: (book) => {
      book.sheets[0].parts[5].cells = { 'a b': 'D' };
    },
    code: 'book-value-wrong',
    message: 'sheets[0].parts[5].cells["a b"] is “D”, and should be an object whose keys are ids',
  },
  {
    what: 'a text too long',
    change: (book) => {
      rows(book)[0].entry = 'x'.repeat(1001);
    },
    code: 'book-too-long',
    message: 'sheets[0].parts[2].rows[0].entry has 1001 characters, and may have at most 1000',
    cell: 'pile.D',
  },
  {
    what: 'a chunk too long',
    change: (book) => {
      layers(book).columns[1].chunks[0] = new Array(1025).fill(1);
    },
    code: 'book-too-long',
    message: 'sheets[0].parts[3].columns[1].chunks[0] has 1025 items, and may have at most 1024',
    cell: 'pile.layers',
  },
  {
    what: 'a name that starts with a digit',
    change: (book) => {
      rows(book)[0].name = '2D';
    },
    code: 'book-name-spelling',
    message: 'sheets[0].parts[2].rows[0].name is “2D”, which is not a name',
    hint: "start with a letter and go on with letters, digits, _ and '",
    cell: 'pile.2D',
  },
  {
    what: 'a name with the micro sign',
    change: (book) => {
      rows(book)[0].name = '\u00b5';
    },
    code: 'book-name-spelling',
    message: 'sheets[0].parts[2].rows[0].name is “\u00b5”, which is not a name',
    hint: "start with a letter and go on with letters, digits, _ and '",
    cell: 'pile.\u00b5',
  },
  {
    what: 'an id with a space',
    change: (book) => {
      rows(book)[0].id = 'r 1';
    },
    code: 'book-id-spelling',
    message: 'sheets[0].parts[2].rows[0].id is “r 1”, which is not an id',
    hint: 'use the letters a to z, digits, _ - . and :',
    cell: 'pile.D',
  },
  {
    what: 'an id used twice',
    change: (book) => {
      layers(book).columns[0].id = 'r1';
    },
    code: 'book-id-twice',
    message: 'sheets[0].parts[3].columns[0] has the id “r1”, which sheets[0].parts[2].rows[0] has too',
  },
  {
    what: 'two sheets with one key',
    change: (book) => {
      book.sheets[1].key = 'pile';
    },
    code: 'book-key-of-two-sheets',
    message: 'two sheets have the key “pile”',
  },
  {
    what: 'two rows with one name',
    change: (book) => {
      rows(book)[1].name = 'D';
    },
    code: 'book-name-twice',
    message: 'on sheet “pile” the row “D” has the name of a row',
    hint: 'rename one of the two',
    cell: 'pile.D',
  },
  {
    what: 'a table with the name of a row',
    change: (book) => {
      layers(book).name = 'D';
    },
    code: 'book-name-twice',
    message: 'on sheet “pile” the table “D” has the name of a row',
    hint: 'rename one of the two',
    cell: 'pile.D',
  },
  {
    what: 'a column with the name of a row',
    change: (book) => {
      layers(book).columns[0].name = 'D';
    },
    code: 'book-name-twice',
    message: 'on sheet “pile” the column “D” has the name of a row',
    hint: 'rename one of the two',
    cell: 'pile.D',
  },
  {
    what: 'two columns of a table with one name',
    change: (book) => {
      layers(book).columns[0].name = 'bottom';
    },
    code: 'book-name-twice',
    message: 'on sheet “pile” the column “bottom” has the name of a column',
    hint: 'rename one of the two',
    cell: 'pile.bottom',
  },
  {
    what: 'a table with the key of a sheet',
    change: (book) => {
      layers(book).name = 'cost';
    },
    code: 'book-table-named-as-sheet',
    message: 'on sheet “pile” the table “cost” has the key of a sheet',
    hint: 'rename the table',
    cell: 'pile.cost',
  },
  {
    what: 'a calculated line without a formula and without methods',
    change: (book) => delete rows(book)[4].formula,
    code: 'book-formula-or-methods',
    message:
      'sheets[0].parts[2].rows[4], the line “A”, must have either “formula” or both “by” and “methods”',
    cell: 'pile.A',
  },
  {
    what: 'a calculated line with a formula and methods',
    change: (book) => Object.assign(rows(book)[4], twoMethods()),
    code: 'book-formula-or-methods',
    message:
      'sheets[0].parts[2].rows[4], the line “A”, must have either “formula” or both “by” and “methods”',
    cell: 'pile.A',
  },
  {
    what: 'methods that nothing chooses',
    change: (book) => withMethods(book, { by: undefined }),
    code: 'book-formula-or-methods',
    message:
      'sheets[0].parts[2].rows[4], the line “A”, must have either “formula” or both “by” and “methods”',
    cell: 'pile.A',
  },
  {
    what: 'a method for all others before another one',
    change: (book) => withMethods(book, { methods: twoMethods().methods.reverse() }),
    code: 'book-method-not-last',
    message:
      'sheets[0].parts[2].rows[4].methods[0], a method of “A”, is for all other options and is not the last',
    hint: 'say its options, or move it to the end',
    cell: 'pile.A',
  },
  {
    what: 'an option of two methods, in other cases',
    change: (book) =>
      withMethods(book, {
        methods: [...twoMethods().methods.slice(0, 1), { id: 'o', for: [' Clay'], formula: '1' }],
      }),
    code: 'book-option-twice',
    message:
      'sheets[0].parts[2].rows[4].methods[1], a method of “A”, is for “ Clay”, which has its method already',
    hint: 'take the option out of one of them',
    cell: 'pile.A',
  },
  {
    what: 'two methods with one id',
    change: (book) =>
      withMethods(book, { methods: [...twoMethods().methods.slice(0, 1), { id: 'm', formula: '1' }] }),
    code: 'book-id-twice',
    message:
      'sheets[0].parts[2].rows[4].methods[1] has the id “m”, which sheets[0].parts[2].rows[4].methods[0] has too',
    cell: 'pile.A',
  },
  {
    what: 'no method at all',
    change: (book) => withMethods(book, { methods: [] }),
    code: 'book-value-wrong',
    message: 'sheets[0].parts[2].rows[4].methods is an empty list, and should be a list of at least 1',
    cell: 'pile.A',
  },
  {
    what: 'a method for an option without a name',
    change: (book) => withMethods(book, { methods: [{ id: 'm', for: [''], formula: '1 m' }] }),
    code: 'book-value-wrong',
    message: 'sheets[0].parts[2].rows[4].methods[0].for[0] is “”, and should be at least 1',
    cell: 'pile.A',
  },
  {
    what: 'a choice with two sources',
    change: (book) => {
      rows(book)[2].from = 'layers.soil';
    },
    code: 'book-choice-source',
    message: 'sheets[0].parts[2].rows[2], the choice “method”, must have either “options” or “from”',
    cell: 'pile.method',
  },
  {
    what: 'a choice without a source',
    change: (book) => delete rows(book)[2].options,
    code: 'book-choice-source',
    message: 'sheets[0].parts[2].rows[2], the choice “method”, must have either “options” or “from”',
    cell: 'pile.method',
  },
  {
    what: 'a table without a length',
    change: (book) => delete layers(book).length,
    code: 'book-table-length',
    message: 'sheets[0].parts[3], the table “layers”, has neither a length nor a series column',
    cell: 'pile.layers',
  },
  {
    what: 'a series beside a length',
    change: (book) => {
      profile(book).length = 3;
    },
    code: 'book-table-series',
    message: 'sheets[0].parts[4], the table “profile”, has its rows from a series column and also a length',
    cell: 'pile.profile',
  },
  {
    what: 'two series columns',
    change: (book) => {
      profile(book).columns[1].kind = 'series';
    },
    code: 'book-table-series',
    message:
      'sheets[0].parts[4], the table “profile”, has its rows from a series column and also another series column',
    cell: 'pile.profile',
  },
  {
    what: 'a series beside a given column',
    change: (book) => {
      profile(book).columns[1] = { id: 'k7', kind: 'given', name: 'share', chunks: [] };
    },
    code: 'book-table-series',
    message:
      'sheets[0].parts[4], the table “profile”, has its rows from a series column and also a given column',
    cell: 'pile.profile',
  },
  {
    what: 'a column shorter than its table',
    change: (book) => layers(book).columns[1].chunks[0].pop(),
    code: 'book-column-length',
    message: 'sheets[0].parts[3].columns[1], the column “thickness”, has 2 cells in a table of 3 rows',
    cell: 'pile.layers',
  },
  {
    what: 'identities for too few rows',
    change: (book) => {
      layers(book).ids = { runs: [{ first: 1, count: 2 }], next: 9 };
    },
    code: 'book-row-ids',
    message: 'sheets[0].parts[3].ids: layers has 3 rows and identities for 2',
    cell: 'pile.layers',
  },
  {
    what: 'one identity for two rows',
    change: (book) => {
      layers(book).ids = {
        runs: [
          { first: 1, count: 2 },
          { first: 2, count: 1 },
        ],
        next: 9,
      };
    },
    code: 'book-row-ids',
    message: 'sheets[0].parts[3].ids: two rows of layers have one identity, or one that is still to be given',
    cell: 'pile.layers',
  },
  {
    what: 'a short chunk that is not the last',
    change: (book) => {
      layers(book).columns[1].chunks = [[1, 2], [3]];
    },
    code: 'book-chunk-length',
    message: 'sheets[0].parts[3].columns[1].chunks[0] has 2 cells, and should have 1024',
    cell: 'pile.layers',
  },
];

test.each(REFUSALS)('refused: $what', ({ change, code, message, hint, cell }) => {
  const book: Anything = JSON.parse(textBeside('books/every-part.quaybook.json'));
  change(book);
  const opened = openBook(JSON.stringify(book));
  expect(opened.ok).toBe(false);
  const found = opened.ok ? [] : opened.problems;
  expect(found.map((one) => one.message)).toEqual([message]);
  expect(found[0]).toMatchObject({ code, severity: 'error', hints: hint === undefined ? [] : [hint] });
  expect(found[0]?.cell).toBe(cell);
});

test('a book with many faults lists twenty of them', () => {
  const book: Anything = JSON.parse(textBeside('books/every-part.quaybook.json'));
  for (let i = 0; i < 30; i++) book[`extra${i}`] = i;
  const opened = openBook(JSON.stringify(book));
  expect(opened.ok ? [] : opened.problems).toHaveLength(20);
});
