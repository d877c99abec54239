import { expect, test } from 'vitest';
import { pasteText } from '../../../../src/app/editing/clipboard/paste-text.ts';
import { pastedText } from '../../../../src/app/editing/clipboard/pasted-text.ts';
import { describeInsertion } from '../../../../src/app/editing/lines/describe-insertion.ts';
import type { Book, Edit } from '../../../../src/document/index.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import type { UnitsView } from '../../../../src/record/values/units-view.ts';
import { readTable } from '../../../../src/tables/index.ts';
import { standardUnits } from '../../../../src/units/index.ts';
import { bookOf, tableOf } from '../../../make-book.ts';
import { at, smallBook } from '../../small-book.ts';
import { after, done, refusal, spans } from '../applied.ts';

const notebook = openNotebook(smallBook());
const paste = (text: string, item = 'r0', field = 'k1', view: UnitsView = 'written') =>
  pasteText(notebook, at('p3', item, field), view, text);

/** The edit that a text leads to; throws if it leads to a question. */
function edit(text: string, item?: string, field?: string, view?: UnitsView): Edit {
  const pasted = done(paste(text, item, field, view));
  if (pasted.kind !== 'edit') throw new Error('the text leads to a question');
  return pasted.edit;
}
/** The table of the book that the texts are pasted into. */
function smallTable() {
  const table = smallBook().sheets[0]?.parts.find(({ kind }) => kind === 'table');
  if (table?.kind !== 'table') throw new Error('the book has no table');
  return table;
}

const rows = (...where: Parameters<typeof edit>) => spans(after(smallBook(), edit(...where)));

test('columns are found by their headings, in any order, and the table grows', () => {
  expect(rows('length (ft)\tmark\n1200.5\tx\n3\ty\n4\tz\n5\tlast\n')).toEqual([
    ['x', '1200.5 ft'],
    ['y', '3 ft'],
    ['z', '4 ft'],
    ['last', '5 ft'],
  ]);
});

test('columns and rows that the text does not have stay', () => {
  expect(rows('mark\tlength\nx\t7', 'r1')).toEqual([
    ['a', '1'],
    ['x', '7'],
    ['c', ''],
  ]);
  expect(rows('length\n7', 'r1')).toEqual([
    ['a', '1'],
    ['b', '7'],
    ['c', ''],
  ]);
});

test('rows that are called otherwise from now on are asked what becomes of what other columns hold', () => {
  expect(done(paste('mark\nx', 'r1'))).toEqual({ kind: 'ask' });
  expect(done(paste('mark\nb\nx', 'r1')).kind).toBe('edit');
  expect(rows('mark\nx', 'r2')).toEqual([
    ['a', '1'],
    ['b', '2 m'],
    ['x', ''],
  ]);
});

test('numbers are in the unit the page shows, with headings and without', () => {
  expect(rows('mark\tlength\nx\t10\ny\t20 ft', 'r0', 'k1', 'US').map(([, length]) => length)).toEqual([
    '10 ft',
    '20 ft',
    '',
  ]);
  expect(paste('mark\tlength\nx\t10\ny\t20 m', 'r0', 'k1', 'US')).toEqual({
    ok: true,
    value: { kind: 'ask' },
  });
  expect(rows('mark\tlength (m)\nx\t10\ny\t20', 'r0', 'k1', 'US')[0]?.[1]).toBe('10 m');
  expect(rows('10\n20 m', 'r0', 'k2', 'US').map(([, length]) => length)).toEqual(['10 ft', '20 m', '']);
  expect(rows('10', 'r0', 'k2', 'US')[0]?.[1]).toBe('10 ft');
});

test('one column of cells goes below its place, each where it stands, blank ones too', () => {
  expect(rows('7\n\n9\n10', 'r1', 'k2').map(([, length]) => length)).toEqual(['1', '7', '', '9', '10']);
});

test('a heading of its own is kept: five numbers on it fill rows and make rows', () => {
  const now = after(smallBook(), edit('7\n8\n9\n10\n11', 'head', 'k2'));
  expect(spans(now).map(([, length]) => length)).toEqual(['7', '8', '9', '10', '11']);
  const table = now.sheets[0]?.parts[2];
  expect(table).toMatchObject({ columns: [{ name: 'mark' }, { name: 'length' }, { name: 'twice' }] });
  expect(now.sheets[0]?.parts[3]).toEqual(smallBook().sheets[0]?.parts[3]);
});

test('one selected range takes one value in all its cells', () => {
  const filled = done(pasteText(notebook, at('p3', 'r0', 'k2'), 'written', '5', { rows: 3, columns: 1 }));
  if (filled.kind !== 'edit') throw new Error('the text leads to a question');
  expect(spans(after(smallBook(), filled.edit)).map(([, length]) => length)).toEqual(['5', '5', '5']);
});

test.each([
  ['mark,length\nx,120\ny,2,500', 'a row that a comma between thousands makes longer'],
  ['mark,length\nx\ny,2', 'a row a cell short'],
  ['mark;length\nx;120\ny;2;500', 'semicolons'],
  ['mark | length\nx | 120\ny | 2', 'vertical bars'],
  ['| mark | length |\n|---|---:|\n| x | 120 |\n| y | 2 |', 'a table framed with vertical bars'],
  ['Quantities of the quay\nRevision 2\nmark,length\nx,120', 'titles above the headings'],
  ['x,120\ny,2,500\nz,3', 'rows without headings of different lengths'],
])('%s onto a column of texts never becomes texts of that one: %s', (text) => {
  const pasted = done(paste(text));
  if (pasted.kind === 'ask') return;
  const names = spans(after(smallBook(), pasted.edit)).map(([mark]) => mark);
  expect(names.join(' ')).not.toMatch(/[,;|]/);
});

test.each([
  ['mark,length\nx,120\ny,2,500', ','],
  ['Quantities of the quay\nmark;length\nx;120', ';'],
  ['mark | length\nx | 120\nnothing else', '|'],
])('%s is looked at with %s between its cells', (text, delimiter) => {
  const { columns } = smallTable();
  expect(done(pastedText(text, columns, standardUnits)).text.delimiter).toBe(delimiter);
});

test('a table framed with vertical bars has neither its frame nor its drawn lines', () => {
  expect(rows('| mark | length |\n|:---|---:|\n| x | 120 |\n| y | 2 |').slice(0, 2)).toEqual([
    ['x', '120'],
    ['y', '2'],
  ]);
});

test('names of which few have a comma are names', () => {
  expect(rows('pile\nslab\ndeck, east').map(([mark]) => mark)).toEqual(['pile', 'slab', 'deck, east']);
});

test.each([
  ['Thk (mm)\n100\n350\n400', 'head', 'k2', 'a foreign heading on a heading'],
  ['Thk (mm)\n100\n350', 'r0', 'k2', 'a foreign heading above numbers'],
  ['Element\tThk\nx\t2', 'r0', 'k1', 'foreign headings'],
  ['mark\tspan\nx\t2', 'r0', 'k1', 'one foreign heading among others'],
  ['x\t2\ny\t3', 'r0', 'k1', 'two columns without headings'],
  ['x\t2', 'r0', 'k1', 'one row of two cells'],
  ['Name\nx\ny', 'head', 'k1', 'words on the heading of a column of words'],
  ['mark\tlength\nx\t2\n\t\ny\t3', 'r0', 'k1', 'a blank row'],
  ['mark\tlength (m3)\nx\t2', 'r0', 'k1', 'a unit that does not read'],
  ['mark\ttwice\nx\t2', 'r0', 'k1', 'a calculated column'],
  ['1,250', 'r0', 'k2', 'digits that may be split'],
  ['1,250\n12,385', 'r0', 'k2', 'digits that may be split, below one another'],
  ['divers,6\nhoarding,420', 'r0', 'k1', 'cells that commas may part'],
  ['mark\tlength\nx\t2', '', 'title', 'rows on the title of the table'],
])('%j on %s %s is asked: %s', (text, item, field) => {
  expect(paste(text, item, field)).toEqual({ ok: true, value: { kind: 'ask' } });
});

test('commas of thousands are no question where another number shows what they are', () => {
  expect(rows('1,250.5\n12,385', 'r0', 'k2').map(([, length]) => length)).toEqual(['1,250.5', '12,385', '']);
  expect(rows('deck, south', 'r0', 'k1')[0]?.[0]).toBe('deck, south');
});

test('values pasted onto cells of a calculated column are stated there, each in its row', () => {
  const twice = (book: Book) =>
    book.sheets[0]?.parts.flatMap((part) => (part.kind === 'table' ? part.columns : []))[2];
  expect(twice(after(smallBook(), edit('7\n8 ft', 'r1', 'k3')))).toMatchObject({
    stated: [
      { row: 2, entry: '7', reason: '' },
      { row: 3, entry: '8 ft', reason: '' },
    ],
  });
  expect(twice(after(smallBook(), edit('7', 'r0', 'k3', 'US')))).toMatchObject({
    stated: [{ row: 1, entry: '7 ft' }],
  });
  expect(refusal(paste('7\nten', 'r0', 'k3'))).toEqual([expect.stringContaining('ten')]);
  expect(refusal(paste('7\n8\n9', 'r1', 'k3'))).toEqual([expect.stringMatching(/^paste-no-place/)]);
});

test('what is put in is told, and every cell of it', () => {
  const told = (text: string, item?: string, field?: string) => describeInsertion(edit(text, item, field));
  expect(told('mark\tlength\nx\t1\ny\tten\nz\t', 'r0')).toBe(
    '3 rows pasted; 7 cells: 2 headings, 4 taken, 1 marked: line 3, column B “length”: “ten” is not a number, and this line takes a length (m)',
  );
  expect(told('length\n7\n8\n9', 'r1')).toBe(
    '3 rows (1 of them new) pasted; “mark” keeps what was there; 4 cells: 1 heading, 3 taken',
  );
  expect(told('mark\tlength\na\t5', 'r0')).toBe(
    '1 row pasted; 2 rows below stay; 4 cells: 2 headings, 2 taken',
  );
  // Names alone, without a heading, go over the cells they are pasted on; what is left beside them is named.
  expect(told('x\ny', 'r0', 'k1')).toBe('2 rows pasted; “length” keeps what was there; 2 cells: 2 taken');
  expect(told('A\n b ', 'r0', 'k1')).toBe('2 rows pasted; 2 cells: 2 taken');
  expect(told('7\n8', 'r2', 'k2')).toBe('2 rows (1 of them new) pasted; 2 cells: 2 taken');
});

test('the unit that leads to a question is named in it', () => {
  const { part, registry } = { part: smallBook().sheets[0]?.parts[2], registry: notebook.model.registry };
  const read = part?.kind === 'table' && readTable('mark,length (m3)\nx,2', part.columns, { registry });
  expect(read && !read.ok && read.problems.map(({ code }) => code)).toEqual(['column-unit-other-kind']);
});

test.each([
  ['1 234,50\n12 000,00', 'spaces between thousands'],
  ['1\u202f234,50', 'a narrow space between them'],
  ['7,5 ft', 'a unit'],
  ['12,5 m\n7,25 m', 'units'],
  ['(7,5)', 'parentheses'],
])('%j with %s goes into no column beside its own: one cell a line is what is asked of', (text) => {
  expect(paste(text, 'r0', 'k2')).toEqual({ ok: true, value: { kind: 'ask' } });
  const { columns } = smallTable();
  const parted = done(pastedText(text, columns, standardUnits));
  expect(parted.text.rows.map(({ cells }) => cells.length)).toEqual(text.split('\n').map(() => 1));
});

test('commas between thousands beside a unit part no cells', () => {
  expect(rows('1,234.5 ft', 'r0', 'k1')[0]).toEqual(['1,234.5 ft', '1']);
  expect(rows('1,234.5 ft', 'r0', 'k2')[0]).toEqual(['a', '1,234.5 ft']);
  expect(rows('length (ft)\n1.234,5', 'r0', 'k2')[0]).toEqual(['a', '1234.5 ft']);
});

test('columns that only spaces set apart are asked for', () => {
  expect(paste('mark   length\nx      2\ny      3', 'r0', 'k1')).toEqual({
    ok: true,
    value: { kind: 'ask' },
  });
});

test.each(["1'234.50", '1’234.50', '1´234.50'])('%j is one number, alone and among others', (text) => {
  expect(rows(text, 'r0', 'k2')[0]?.[1]).toBe('1234.50');
  expect(rows(`${text}\n\n7 m`, 'r1', 'k2').map(([, length]) => length)).toEqual(['1', '1234.50', '', '7 m']);
});

test('a blank row among numbers that would take an entry away is asked for, and one over a blank cell is not', () => {
  expect(done(paste('5\n\n7', 'r0', 'k2'))).toEqual({ kind: 'ask' });
  expect(rows('5\n\n7', 'r1', 'k2').map(([, length]) => length)).toEqual(['1', '5', '', '7']);
});

test('entries that a list leaves blank are told by name', () => {
  const told = describeInsertion(edit('mark\tlength\na\t\nb\t5'));
  expect(told).toBe(
    '2 rows pasted; 1 entry becomes blank: length of a 1 m; 1 row below stays; 5 cells: 2 headings, 3 taken',
  );
});

test('numbers without units are judged in the unit shown, as they are entered', () => {
  const stress = {
    id: 'p',
    kind: 'given',
    name: 'p',
    unit: 'ksf',
    range: { max: '12 ksf' },
    chunks: [[1, 2]],
  } as const;
  const book = bookOf({ s: [tableOf('t', 2, stress)] });
  const pasted = done(
    pasteText(openNotebook(book), { sheet: 's', part: 't', item: 'r0', field: 'p' }, 'SI', '112\n999'),
  );
  if (pasted.kind !== 'edit') throw new Error('the text leads to a question');
  // 12 ksf are 574.6 kPa.
  expect(describeInsertion(pasted.edit)).toContain('2 cells: 1 taken, 1 marked');
  const [part] = after(book, pasted.edit).sheets[0]?.parts ?? [];
  const [column] = part?.kind === 'table' ? part.columns : [];
  expect(column?.kind === 'given' && column.chunks).toEqual([['112 kPa', '999 kPa']]);
});
