import { expect, test } from 'vitest';
import { type Book, blankBook, type Row, setEntry } from '../../../src/document/index.ts';
import { linkEdit, type Notebook, openNotebook } from '../../../src/notebook/index.ts';
import { inPersonsWords, problemInWords } from '../../../src/record/values/persons-words.ts';

const head: Row = {
  id: 'r1',
  kind: 'choice',
  name: 'head',
  entry: 'free',
  options: [
    { value: 'free', label: 'free to turn' },
    { value: 'fixed', label: 'held against turning' },
  ],
};

const bookOf = (rows: readonly Row[], others: readonly Row[] = []): Book => ({
  ...blankBook(),
  sheets: [
    { key: 'pile', title: 'Pile and soil', parts: [{ id: 'p1', kind: 'rows', rows }] },
    { key: 'load', title: 'Demand', parts: [{ id: 'p2', kind: 'rows', rows: others }] },
  ],
});

const sentences = (notebook: Notebook): readonly string[] =>
  notebook.problems().map(({ message, hints }) => [message, ...hints].join('; '));

const H: Row = { id: 'r2', kind: 'given', name: 'H', entry: '10 kN', unit: 'kN' };

test.each([
  ['waits on “pile.H”, which has no value', 'waits on “H” on “Pile and soil”, which has no value'],
  ['mend pile.H: it is blank', 'mend H on “Pile and soil”: it is blank'],
  ['rests on load.R and pile.H.', 'rests on R and H on “Pile and soil”.'],
  // Formulas stay as they are written, and so does what is no line of the book.
  ['“pile.H > 0 kN” is not so', '“pile.H > 0 kN” is not so'],
  ['pile.X and a pile.', 'pile.X and a pile.'],
  ['1.5 m of a sheet pile.H', '1.5 m of a sheet H on “Pile and soil”'],
])('%s', (written, read) => {
  const R: Row = { id: 'r3', kind: 'calc', name: 'R', formula: '2 * pile.H', unit: 'kN' };
  expect(inPersonsWords(written, openNotebook(bookOf([H], [R])), 'load')).toBe(read);
});

test('a link that would close a circle is told by symbols and the titles of sheets', () => {
  const back: Row = { id: 'r3', kind: 'calc', name: 'R', formula: '2 * pile.H', unit: 'kN' };
  const notebook = openNotebook(bookOf([H], [back]));
  const refused = linkEdit(notebook, 'pile.H', 'load.R');
  const found = refused.ok ? undefined : refused.problems[0];
  expect(found && problemInWords(found, notebook, 'pile').message).toBe(
    'R on “Demand” takes its own value from H (R on “Demand”, H)',
  );
});

test('options are told in their words: a method that is missing, one with a problem, and branches', () => {
  const k: Row = {
    id: 'r4',
    kind: 'calc',
    name: 'k',
    by: 'head',
    methods: [{ id: 'm1', for: ['fixed'], formula: '2 * nothing' }],
    unit: '-',
  };
  const n: Row = { id: 'r5', kind: 'calc', name: 'n', formula: 'IFS(head = "fixed"; 1)', unit: '-' };
  const told = sentences(openNotebook(bookOf([head, k, n])));
  expect(told).toContainEqual(expect.stringContaining('no method is for “free to turn”, which head is'));
  expect(told).toContainEqual(expect.stringContaining('the method for “held against turning”: '));
  expect(told).toContainEqual(expect.stringContaining('head is "free to turn"'));
  expect(
    told.filter((one) => /“(?:free|fixed)”|"(?:free)"/.test(one.replaceAll('“head = "fixed"”', ''))),
  ).toEqual([]);
});

test('an entry that is no option is told what the list of the page has', () => {
  const notebook = openNotebook(bookOf([head]));
  const done = notebook.apply(setEntry({ sheet: 'pile', part: 'p1', row: 'r1' }, 'fre'));
  expect(done.ok).toBe(true);
  const [found] = notebook.problems();
  const told = found && problemInWords(found, notebook, 'pile');
  expect(told?.hints).toEqual(['did you mean “free to turn”?']);
  expect(told?.fixes.map(({ label, insert }) => [label, insert])).toEqual([['free to turn', 'free']]);
});

test('other words for an option are in what is said of its methods at once', () => {
  const k: Row = {
    id: 'r4',
    kind: 'calc',
    name: 'k',
    by: 'head',
    methods: [{ id: 'm1', for: ['fixed'], formula: '2 * nothing' }],
    unit: '-',
  };
  const before = openNotebook(bookOf([head, k]));
  const options = [
    { value: 'free', label: 'pinned' },
    { value: 'fixed', label: 'clamped' },
  ];
  const done = before.apply({
    label: 'words',
    patches: [
      { kind: 'set', at: ['sheets', 'pile', 'parts', 'p1', 'rows', 'r1', 'options'], value: options },
    ],
  });
  expect(done.ok).toBe(true);
  expect(sentences(before)).toContainEqual(expect.stringContaining('the method for “clamped”: '));
});
