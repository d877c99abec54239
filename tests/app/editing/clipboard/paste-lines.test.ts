import { expect, test } from 'vitest';
import { moveLines, pasteCopies, pasteOver } from '../../../../src/app/editing/clipboard/paste-lines.ts';
import type { Change } from '../../../../src/app/editing/lines/line-edits.ts';
import {
  type Book,
  blankBook,
  joinEdits,
  type Part,
  type Row,
  removeRow,
} from '../../../../src/document/index.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { at, smallBook } from '../../small-book.ts';
import { after } from '../applied.ts';

const other: readonly Part[] = [
  {
    id: 'q1',
    kind: 'rows',
    rows: [
      { id: 's1', kind: 'given', name: 'q', entry: '3 m', unit: 'm' },
      { id: 's2', kind: 'calc', name: 'far', formula: 'beam.L + q', unit: 'm' },
    ],
  },
  {
    id: 'q2',
    kind: 'table',
    name: 't',
    length: 1,
    columns: [
      { id: 'j1', kind: 'given', name: 'L', unit: 'm', chunks: [[1]] },
      { id: 'j2', kind: 'calc', name: 'sum', formula: 'L + beam.L', unit: 'm' },
    ],
  },
];

function twoSheets(): Book {
  return { ...blankBook(), sheets: [...smallBook().sheets, { key: 'site', title: '', parts: other }] };
}

const rowsOf = (book: Book): readonly Row[] =>
  book.sheets.flatMap(({ parts }) => parts.flatMap((part) => (part.kind === 'rows' ? part.rows : [])));
const named = (book: Book, ...ids: readonly string[]) =>
  ids.map((id) => {
    const row = rowsOf(book).find((one) => one.id === id);
    return row && [row.name, 'entry' in row ? row.entry : row.formula];
  });
const lines = (...ids: readonly string[]) => rowsOf(twoSheets()).filter(({ id }) => ids.includes(id));
const done = (book: Book, change: Change | undefined): Book => {
  if (!change) throw new Error('there is no change');
  return after(book, change.edit);
};
const value = (book: Book, id: string): number | undefined => {
  const result = openNotebook(book).result(id);
  return result.status === 'ok' && result.value.kind === 'number' ? result.value.si : undefined;
};
const below = { sheet: 'site', part: 'q1', item: 's1', field: 'value' };

test('copied lines get names of their own, and say of one another what they said', () => {
  const book = smallBook();
  const change = pasteCopies(book, { sheet: 'beam', place: at('p2', 'r4', 'value') }, lines('r1', 'r3'), {
    sheet: 'beam',
    book,
  });
  const block = done(book, change).sheets[0]?.parts[1];
  expect(
    block?.kind === 'rows' && block.rows.map((row) => [row.name, 'entry' in row ? row.entry : row.formula]),
  ).toEqual([
    ['L', '4 m'],
    ['q', '10 kN/m'],
    ['M', 'q * L^2 / 8'],
    ['c_M', 'M <= 25 (kN*m)'],
    ['L_2', '4 m'],
    ['M_2', 'q * L_2^2 / 8'],
  ]);
  expect(change?.edit.label).toBe('paste 2 lines');
});

test('selected lines are overwritten, and their names are free for those that come', () => {
  const book = smallBook();
  const over = [at('p2', 'r1', 'value'), at('p2', 'r2', 'value')];
  const now = done(book, pasteOver(book, over, lines('r1', 'r3'), { sheet: 'beam', book }));
  const block = now.sheets[0]?.parts[1];
  expect(block?.kind === 'rows' && block.rows.map(({ name }) => name)).toEqual(['L', 'M_2', 'M', 'c_M']);
});

test('copied to another sheet, lines mean what they meant: copies that came along, the rest by its sheet', () => {
  const book = twoSheets();
  const to = { sheet: 'site', place: below };
  const change = pasteCopies(book, to, lines('r2', 'r3', 'r4'), { sheet: 'beam', book });
  const now = done(book, change);
  const block = now.sheets[1]?.parts[0];
  // q is taken on sheet site, and L is another one in its table.
  expect(
    block?.kind === 'rows' && block.rows.map((row) => [row.name, 'entry' in row ? row.entry : row.formula]),
  ).toEqual([
    ['q', '3 m'],
    ['q_2', '10 kN/m'],
    ['M', 'q_2 * beam.L^2 / 8'],
    ['c_M', 'M <= 25 (kN*m)'],
    ['far', 'beam.L + q'],
  ]);
  expect(value(now, 'site.M')).toBe(value(book, 'beam.M'));
  expect(change?.remark).toBeUndefined();
});

test('of lines from another book the names that did not come along are told', () => {
  const book = twoSheets();
  const far: Row = { id: 'z', kind: 'calc', name: 'far', formula: 'pier.M + L', unit: 'm' };
  const change = pasteCopies(book, { sheet: 'site', place: below }, [...lines('r3'), far], {
    sheet: 'pier',
    book: undefined,
  });
  expect(named(done(book, change), 'r6')).toEqual([['M', 'q * L^2 / 8']]);
  expect(change?.remark).toBe(
    'the formulas pasted name q, L, which did not come along: here they mean what this book calls so, or nothing',
  );
});

test('what did not come along and is gone is told within a book too', () => {
  const book = after(twoSheets(), removeRow({ sheet: 'beam', part: 'p2', row: 'r2' }));
  const change = pasteCopies(book, { sheet: 'site', place: below }, lines('r3'), { sheet: 'beam', book });
  expect(change?.remark).toMatch(/^the formulas pasted name q, which did not come along: here it means/);
});

test.each(['as they stand', 'when they are gone'])('lines that are cut take references along, %s', (when) => {
  const start = twoSheets();
  const gone = joinEdits(
    'cut',
    ['r1', 'r2'].map((row) => removeRow({ sheet: 'beam', part: 'p2', row })),
  );
  const book = when === 'as they stand' ? start : after(start, gone);
  const now = done(book, moveLines(book, 'beam', lines('r1', 'r2'), { sheet: 'site', place: below }));
  // The names are taken on the other sheet; what said it there still does.
  expect(named(now, 'r1', 'r2', 'r3', 's2')).toEqual([
    ['L_2', '4 m'],
    ['q_2', '10 kN/m'],
    ['M', 'site.q_2 * site.L_2^2 / 8'],
    ['far', 'L_2 + q'],
  ]);
  const table = now.sheets[1]?.parts[1];
  expect(table).toMatchObject({ columns: [{}, { formula: 'L + L_2' }] });
  expect(value(now, 'beam.M')).toBe(value(start, 'beam.M'));
  expect(value(now, 'site.far')).toBe(value(start, 'site.far'));
});

test('what a line says of the sheet it leaves is spelt with its key', () => {
  const book = twoSheets();
  const now = done(book, moveLines(book, 'beam', lines('r3'), { sheet: 'site', place: below }));
  expect(named(now, 'r3', 'r4')).toEqual([
    ['M', 'beam.q * beam.L^2 / 8'],
    ['c_M', 'site.M <= 25 (kN*m)'],
  ]);
  expect(value(now, 'site.M')).toBe(value(book, 'beam.M'));
});

test('lines moved within their sheet keep every word', () => {
  const book = twoSheets();
  const now = done(
    book,
    moveLines(book, 'beam', lines('r1'), { sheet: 'beam', place: at('p4', 'r5', 'value') }),
  );
  expect(named(now, 'r1', 'r3', 's2')).toEqual([
    ['L', '4 m'],
    ['M', 'q * L^2 / 8'],
    ['far', 'beam.L + q'],
  ]);
  expect(value(now, 'beam.M')).toBe(value(book, 'beam.M'));
});
