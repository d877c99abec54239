import { expect, test } from 'vitest';
import { cellContent } from '../../../../src/app/editing/cells/cell-content.ts';
import { pasteIntoTable, pasteOntoLines } from '../../../../src/app/editing/clipboard/paste-cells.ts';
import { describeInsertion } from '../../../../src/app/editing/lines/describe-insertion.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { at, smallBook } from '../../small-book.ts';
import { after, done, refusal, spans } from '../applied.ts';

const book = smallBook();
const notebook = openNotebook(book);
const text = (now: ReturnType<typeof smallBook>, item: string) =>
  cellContent(now, at('p2', item, 'value')).text;

test('a block at the end of a table makes it longer', () => {
  const cells = [
    ['x', '7'],
    ['y', '8 ft'],
  ];
  expect(spans(after(book, done(pasteIntoTable(notebook, at('p3', 'r2', 'k1'), { cells }))))).toEqual([
    ['a', '1'],
    ['b', '2 m'],
    ['x', '7'],
    ['y', '8 ft'],
  ]);
});

test('on a heading a block begins in the first row', () => {
  const cells = [['7'], ['8'], ['9'], ['10']];
  const now = after(book, done(pasteIntoTable(notebook, at('p3', 'head', 'k2'), { cells })));
  expect(spans(now)).toEqual([
    ['a', '7'],
    ['b', '8'],
    ['c', '9'],
    ['', '10'],
  ]);
});

test('a number alone comes with its unit to where another one is', () => {
  const pasted = { cells: [['560'], ['700 mm'], ['3']], units: [['mm'], ['mm'], ['m']] };
  const now = after(book, done(pasteIntoTable(notebook, at('p3', 'r0', 'k2'), pasted)));
  expect(spans(now).map(([, length]) => length)).toEqual(['560 mm', '700 mm', '3']);
  const line = done(
    pasteOntoLines(notebook, [[at('p2', 'r1', 'value')]], { cells: [['560']], units: [['mm']] }),
  );
  expect(text(after(book, line), 'r1')).toBe('560 mm');
});

test('one value fills all cells that are selected, and a row all rows', () => {
  const one = pasteIntoTable(notebook, at('p3', 'r0', 'k2'), { cells: [['5']] }, { rows: 3, columns: 1 });
  expect(spans(after(book, done(one))).map(([, length]) => length)).toEqual(['5', '5', '5']);
  const row = pasteIntoTable(
    notebook,
    at('p3', 'r0', 'k1'),
    { cells: [['x', '5']] },
    { rows: 3, columns: 2 },
  );
  expect(spans(after(book, done(row)))).toEqual([
    ['x', '5'],
    ['x', '5'],
    ['x', '5'],
  ]);
  const lines = [[at('p2', 'r1', 'value')], [at('p2', 'r2', 'value')]];
  const now = after(book, done(pasteOntoLines(notebook, lines, { cells: [['5']] })));
  expect(['r1', 'r2'].map((item) => text(now, item))).toEqual(['5', '5']);
});

test('what reaches a calculated column or beyond the last is refused whole, nothing cut off', () => {
  expect(refusal(pasteIntoTable(notebook, at('p3', 'r0', 'k2'), { cells: [['1', '2']] }))).toEqual([
    'paste-calculated: column 2 of the pasted cells falls on twice, which is calculated',
  ]);
  expect(refusal(pasteIntoTable(notebook, at('p3', 'r0', 'k3'), { cells: [['1', '2']] }))).toEqual([
    'paste-too-wide: 2 columns of cells, and “spans” has 1 from here to its last one',
  ]);
});

test('a block that its lines have no place for is refused whole', () => {
  const lines = [[at('p2', 'r1', 'value')], [undefined]];
  expect(refusal(pasteOntoLines(notebook, lines, { cells: [['1'], ['2']] }))).toEqual([
    'paste-no-place: 2 rows of 1 cell beginning with “2” find no place on these lines',
  ]);
});

test('rows copied with their calculated cells go into the columns that are given; the others are calculated anew', () => {
  const book = smallBook();
  const block = { cells: [['d', '7', '14']], calculated: [2] };
  const now = after(
    book,
    done(pasteIntoTable(notebook, at('p3', 'r0', 'k1'), block, { rows: 2, columns: 3 })),
  );
  expect(spans(now)).toEqual([
    ['d', '7'],
    ['d', '7'],
    ['c', ''],
  ]);
  expect(refusal(pasteIntoTable(notebook, at('p3', 'r0', 'k1'), { cells: block.cells }))).toMatchObject([
    expect.stringMatching(/^paste-calculated/),
  ]);
});

test('a symbol pasted by itself is renamed wherever it is used, among other cells it is refused', () => {
  const span = at('p2', 'r1', 'name');
  const held = cellContent(book, span).text;
  const now = after(book, done(pasteOntoLines(notebook, [[span]], { cells: [['span']] })));
  expect(cellContent(now, span).text).toBe('span');
  const formula = (one: typeof now) => cellContent(one, at('p2', 'r3', 'value')).text;
  expect(formula(book)).toMatch(new RegExp(`\\b${held}\\b`));
  expect(formula(now)).toBe(formula(book).replaceAll(new RegExp(`\\b${held}\\b`, 'g'), 'span'));
  const two = [[span, at('p2', 'r1', 'label')]];
  expect(refusal(pasteOntoLines(notebook, two, { cells: [['span', 'the span']] }))).toEqual([
    `symbol-among-cells: “span” would rename “${held}” among other cells`,
  ]);
  const same = after(book, done(pasteOntoLines(notebook, two, { cells: [[held, 'the span']] })));
  expect(cellContent(same, at('p2', 'r1', 'label')).text).toBe('the span');
});

test.each(['80', '8.5', '-3', '1,200', '80 kN', '80%', '12e3'])(
  '%s pasted over a unit is refused',
  (value) => {
    const words = `unit-is-value: “${value}” is a value, not a unit of “q”`;
    const unit = at('p2', 'r2', 'unit');
    expect(refusal(pasteOntoLines(notebook, [[unit]], { cells: [[value]] }))).toEqual([words]);
    // Over the value beside it as well, nothing of the block is put in.
    const both = [[at('p2', 'r2', 'value'), unit]];
    expect(refusal(pasteOntoLines(notebook, both, { cells: [['7', value]] }))).toEqual([words]);
  },
);

test.each(['kN', '1/s', '%', '-', '', 'm^2'])('“%s” pasted over a unit is one', (unit) => {
  const now = after(book, done(pasteOntoLines(notebook, [[at('p2', 'r2', 'unit')]], { cells: [[unit]] })));
  expect(cellContent(now, at('p2', 'r2', 'unit')).text).toBe(unit);
});

test('a value whose unit cannot fit its line is refused before it overwrites', () => {
  const lines = [[at('p2', 'r1', 'value')], [at('p2', 'r2', 'value')]];
  const block = { cells: [['5'], ['48']], units: [['m'], ['ft']] };
  expect(refusal(pasteOntoLines(notebook, lines, block))[0]).toContain('48 ft');
  expect(text(book, 'r2')).toBe('10 kN/m');
});

test('lines take a block only into as many cells, and what was put in is told', () => {
  const [first, second] = [[at('p2', 'r1', 'value')], [at('p2', 'r2', 'value')]] as const;
  const two = { cells: [['5'], ['6']] };
  expect(refusal(pasteOntoLines(notebook, [first], two))[0]).toContain('find no place on these lines');
  expect(refusal(pasteOntoLines(notebook, [first, second, first], two))[0]).toContain('find no place');
  expect(describeInsertion(done(pasteOntoLines(notebook, [first, second], two)))).toBe(
    '2 cells pasted; 2 cells: 2 taken',
  );
});

test('of a value repeated over cells of a table each is counted as what it became there', () => {
  const over = { rows: 3, columns: 2 };
  const put = (cell: string) => pasteIntoTable(notebook, at('p3', 'r0', 'k1'), { cells: [[cell]] }, over);
  expect(describeInsertion(done(put('5')))).toBe('3 rows pasted; 1 cell repeated over 6 cells: 6 taken');
  // The one column holds words, the other lengths in m.
  expect(describeInsertion(done(put('5 kN')))).toBe(
    '3 rows pasted; 1 cell repeated over 6 cells: 3 taken, 3 marked',
  );
});

test('of a block each cell is counted as what it became where it went', () => {
  const cells = [
    ['x', '5 kN'],
    ['y', '6'],
  ];
  expect(describeInsertion(done(pasteIntoTable(notebook, at('p3', 'r0', 'k1'), { cells })))).toBe(
    '2 rows pasted; 4 cells: 3 taken, 1 marked',
  );
});

test('a value that a line does not take is counted so among others', () => {
  const lines = [[at('p2', 'r1', 'value')], [at('p2', 'r2', 'value')]];
  const put = pasteOntoLines(notebook, lines, { cells: [['5'], ['about 6']] });
  expect(describeInsertion(done(put))).toBe('2 cells pasted; 2 cells: 1 taken, 1 marked');
});
