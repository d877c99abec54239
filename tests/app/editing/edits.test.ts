import { expect, test } from 'vitest';
import { readCarried, unitOfBareNumbers } from '../../../src/app/editing/cells/carry-unit.ts';
import { cellContent, cellFromText, writtenAt } from '../../../src/app/editing/cells/cell-content.ts';
import { enterText } from '../../../src/app/editing/cells/cell-edits.ts';
import { clearCells, fillDown } from '../../../src/app/editing/cells/range-edits.ts';
import {
  type Change,
  duplicate,
  insertBelow,
  insertRowBelow,
  moveLine,
  removeLines,
} from '../../../src/app/editing/lines/line-edits.ts';
import type { CellPlace } from '../../../src/app/view-model/place.ts';
import { applyEdit, type Book, type Edit } from '../../../src/document/index.ts';
import { sessionOn } from '../editor/completion/sample-session.ts';
import { at, smallBook } from '../small-book.ts';

/** The book after an edit; the edit's inverse must lead back. */
function after(book: Book, edit: Edit | undefined): Book {
  if (!edit) throw new Error('there is no edit');
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems.map(({ message }) => message).join('; '));
  const back = applyEdit(applied.value.book, applied.value.inverse);
  expect(back.ok && back.value.book).toEqual(book);
  return applied.value.book;
}

const text = (book: Book, place: CellPlace): string => cellContent(book, place).text;
const ids = (book: Book, part: string): readonly string[] => {
  const found = book.sheets[0]?.parts.find(({ id }) => id === part);
  return found?.kind === 'rows' ? found.rows.map(({ id }) => id) : [];
};

test.each([
  [at('p1', '', 'text'), 'prose', 'A beam of one span.'],
  [at('p2', '', 'title'), 'text', 'Beam'],
  [at('p2', 'r1', 'value'), 'entry', '4 m'],
  [at('p2', 'r1', 'unit'), 'unit', 'm'],
  [at('p2', 'r3', 'value'), 'formula', 'q * L^2 / 8'],
  [at('p2', 'r3', 'name'), 'name', 'M'],
  [at('p3', 'head', 'k3'), 'formula', '2 * length'],
  [at('p3', 'k3', 'unit'), 'unit', 'm'],
  [at('p3', 'r1', 'k2'), 'entry', '2 m'],
  [at('p3', 'r1', 'k3'), undefined, ''],
])('what %o holds', (place, kind, held) => {
  expect(cellContent(smallBook(), place)).toEqual({ kind, text: held });
});

test('a calculated cell is written in the heading of its column, any other where it stands', () => {
  expect(writtenAt(smallBook(), at('p3', 'r1', 'k3'))).toEqual(at('p3', 'head', 'k3'));
  for (const place of [at('p3', 'r1', 'k2'), at('p3', 'head', 'k3'), at('p2', 'r3', 'value')])
    expect(writtenAt(smallBook(), place)).toBe(place);
});

test.each([
  [at('p1', '', 'text'), 'Two\nspans'],
  [at('p2', 'r1', 'label'), 'span'],
  [at('p2', 'r1', 'reference'), 'drawing 3'],
  [at('p2', 'r1', 'value'), '13 ft'],
  [at('p2', 'r3', 'value'), 'q * L'],
  [at('p3', 'head', 'k3'), '3 * length'],
  [at('p3', 'r2', 'k2'), '5'],
])('what is entered at %o stands there', (place, typed) => {
  const book = smallBook();
  const edit = enterText(book, place, typed);
  expect(edit.ok && text(after(book, edit.value), place)).toBe(typed);
});

test('a formula may begin with an equals sign; a calculated cell of a table takes nothing', () => {
  const book = smallBook();
  const edit = enterText(book, at('p2', 'r3', 'value'), '= q * L');
  expect(edit.ok && text(after(book, edit.value), at('p2', 'r3', 'value'))).toBe('q * L');
  expect(enterText(book, at('p3', 'r1', 'k3'), '5').ok).toBe(false);
});

test('plain numbers become numbers, all else stays as typed', () => {
  const column = { id: 'k', kind: 'given', name: 'x', chunks: [] } as const;
  expect(['7', ' 7.5 ', '1,200', '7.50', '3 m', ''].map((typed) => cellFromText(typed, column))).toEqual([
    7,
    7.5,
    '1,200',
    '7.50',
    '3 m',
    null,
  ]);
  expect(cellFromText('7', { ...column, type: 'text' })).toBe('7');
});

test.each(['given', 'calc', 'check', 'choice', 'text', 'heading', 'table'] as const)(
  'a new %s below a line makes a sound book',
  (kind) => {
    const book = smallBook();
    const change = insertBelow(book, 'beam', at('p2', 'r2', 'value'), kind);
    const now = after(book, change?.edit);
    if (kind === 'given' || kind === 'calc' || kind === 'check' || kind === 'choice')
      expect(ids(now, 'p2')).toEqual(['r1', 'r2', change?.place?.item, 'r3', 'r4']);
    else {
      // The lines that followed stand behind it, in a block of their own.
      const parts = now.sheets[0]?.parts.map(({ id }) => id) ?? [];
      expect(parts.toSpliced(3, 1)).toEqual(['p1', 'p2', change?.place?.part, 'p3', 'p4']);
      expect([ids(now, 'p2'), ids(now, parts[3] ?? '')]).toEqual([
        ['r1', 'r2'],
        ['r3', 'r4'],
      ]);
    }
  },
);

test('a text below the last line of a block leaves the block whole', () => {
  const book = smallBook();
  const change = insertBelow(book, 'beam', at('p2', 'r4', 'value'), 'text');
  const now = after(book, change?.edit);
  expect(now.sheets[0]?.parts.map(({ id }) => id)).toEqual(['p1', 'p2', change?.place?.part, 'p3', 'p4']);
  expect(ids(now, 'p2')).toEqual(['r1', 'r2', 'r3', 'r4']);
});

test('into an empty sheet a line brings its block', () => {
  const empty = { ...smallBook(), sheets: [{ key: 'beam', title: '', parts: [] }] };
  const now = after(empty, insertBelow(empty, 'beam', undefined, 'given')?.edit);
  expect(now.sheets[0]?.parts).toMatchObject([{ kind: 'rows', rows: [{ kind: 'given', name: 'x_1' }] }]);
});

test('names and ids of new lines are free', () => {
  let book = smallBook();
  for (let times = 0; times < 3; times += 1)
    book = after(book, insertBelow(book, 'beam', at('p4', 'r5', 'name'), 'given')?.edit);
  const block = book.sheets[0]?.parts.at(-1);
  expect(block?.kind === 'rows' && block.rows.map(({ name }) => name)).toEqual(['g', 'x_3', 'x_2', 'x_1']);
});

const moves: readonly (readonly [CellPlace, -1 | 1, (book: Book) => unknown, unknown])[] = [
  [at('p2', 'r1', 'value'), 1, (book) => ids(book, 'p2'), ['r2', 'r1', 'r3', 'r4']],
  [
    at('p2', 'r4', 'value'),
    1,
    (book) => [ids(book, 'p2'), ids(book, 'p4')],
    [
      ['r1', 'r2', 'r3'],
      ['r4', 'r5'],
    ],
  ],
  [at('p4', 'r5', 'value'), -1, (book) => ids(book, 'p2'), ['r1', 'r2', 'r3', 'r4', 'r5']],
  [at('p1', '', 'text'), 1, (book) => book.sheets[0]?.parts.map(({ id }) => id), ['p2', 'p1', 'p3', 'p4']],
  [at('p3', 'r0', 'k1'), 1, (book) => text(book, at('p3', 'r1', 'k1')), 'a'],
];

test.each(moves)('%o moves by %i', (place, by, look, expected) => {
  const book = smallBook();
  expect(look(after(book, moveLine(book, place, by)?.edit))).toEqual(expected);
});

test('at the edge nothing moves', () => {
  expect(moveLine(smallBook(), at('p1', '', 'text'), -1)).toBeUndefined();
  expect(moveLine(smallBook(), at('p3', 'r2', 'k1'), 1)).toBeUndefined();
});

test('lines, table rows and prose go', () => {
  const book = smallBook();
  expect(
    ids(after(book, removeLines(book, [at('p2', 'r1', 'value'), at('p2', 'r2', 'value')])), 'p2'),
  ).toEqual(['r3', 'r4']);
  const rows = after(book, removeLines(book, [at('p3', 'r0', 'k1'), at('p3', 'r1', 'k1')]));
  expect(text(rows, at('p3', 'r0', 'k1'))).toBe('c');
  expect(after(book, removeLines(book, [at('p1', '', 'text')])).sheets[0]?.parts).toHaveLength(3);
});

test.each([
  [at('p2', 'r1', 'value')],
  [at('p3', '', 'title')],
  [at('p3', 'r1', 'k1')],
  [at('p1', '', 'text')],
])('a duplicate of %o is a sound book', (place) => {
  const book = smallBook();
  const change: Change | undefined = duplicate(book, place);
  expect(after(book, change?.edit)).not.toEqual(book);
});

test('a row is inserted into a table below the one in hand', () => {
  const book = smallBook();
  const now = after(book, insertRowBelow(book, at('p3', 'r0', 'k1'))?.edit);
  expect([0, 1, 2].map((row) => text(now, at('p3', `r${row}`, 'k1')))).toEqual(['a', '', 'b']);
});

test('of a calculated cell its value is carried, in the unit it came out in', () => {
  const { notebook } = sessionOn(smallBook());
  expect(readCarried(notebook, at('p3', 'r0', 'k3'))).toEqual({ text: '2', unit: 'm' });
  expect(readCarried(notebook, at('p3', 'r1', 'k2'))).toEqual({ text: '2 m', unit: 'm' });
  expect(readCarried(notebook, at('p2', 'r3', 'value'))).toEqual({ text: 'q * L^2 / 8', unit: undefined });
});

test('the unit of a bare number is that of its line or column, if it holds numbers', () => {
  const book = smallBook();
  const places = [at('p2', 'r1', 'value'), at('p3', 'r0', 'k2'), at('p3', 'r0', 'k3'), at('p3', 'r0', 'k1')];
  expect(places.map((place) => unitOfBareNumbers(book, place))).toEqual(['m', 'm', undefined, undefined]);
  expect(unitOfBareNumbers(book, at('p2', 'r1', 'label'))).toBeUndefined();
});

test('clearing empties entries, descriptions and cells, and leaves symbols', () => {
  const book = smallBook();
  const now = after(
    book,
    clearCells(book, [
      [at('p2', 'r1', 'name'), at('p2', 'r1', 'label'), at('p2', 'r1', 'value')],
      [at('p3', 'r0', 'k2')],
      [at('p3', 'r1', 'k2')],
    ]),
  );
  expect(text(now, at('p2', 'r1', 'name'))).toBe('L');
  expect(text(now, at('p2', 'r1', 'label'))).toBe('');
  expect(text(now, at('p2', 'r1', 'value'))).toBe('');
  expect(text(now, at('p3', 'r1', 'k2'))).toBe('');
});

test('filling down repeats the first row of a range', () => {
  const book = smallBook();
  const rows = ['r0', 'r1', 'r2'].map((item) => [at('p3', item, 'k2')]);
  const now = after(book, fillDown(book, rows));
  expect(rows.flat().map((place) => text(now, place))).toEqual(['1', '1', '1']);
});
