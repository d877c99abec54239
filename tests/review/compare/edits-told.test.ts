import { describe, expect, test } from 'vitest';
import {
  type Book,
  insertRow,
  insertSheet,
  moveRow,
  moveSheet,
  removeRow,
  setColumnField,
  setEntry,
  setFormula,
  setPartField,
  setRowField,
  setSheetField,
  setTitle,
  stateRow,
} from '../../../src/document/index.ts';
import {
  blockOf,
  bookOf,
  calc,
  calcColumn,
  choice,
  given,
  numbers,
  tableOf,
  texts,
} from '../../make-book.ts';
import { compared, edited, listed } from './compared.ts';

const book: Book = bookOf({
  load: [
    blockOf('p', given('q', '10 kN/m', 'kN/m'), given('L', '6 m', 'm'), calc('W', 'q * L')),
    blockOf('p2', { ...calc('M', 'W * L / 8'), unit: 'kN·m' }, choice('grade', 'C30', 'C40')),
    tableOf('items', 2, texts('item', ['cap', 'beam']), numbers('m', 't', [4, 5]), calcColumn('w', '2 * m')),
  ],
  sum: [
    blockOf('s', calc('T', 'SUM(load.items.m)'), { id: 'c', kind: 'check', name: 'c', formula: 'T <= 10 t' }),
  ],
});
const at = (row: string, part = 'p') => ({ sheet: 'load', part, row });

test('a book compared with itself says nothing', () => {
  expect(compared(book, structuredClone(book))).toEqual({ differences: [], tables: [] });
});

describe('what a person changed', () => {
  const told: readonly (readonly [string, Book, readonly string[]])[] = [
    ['a title', edited(book, setTitle('revision', 'B')), ['revision: blank → “B”']],
    [
      'an entry, with its size',
      edited(book, setEntry(at('L'), '7.5 m')),
      ['load.L: entry “6 m” → “7.5 m” (+1.5 m, +25.0 %)'],
    ],
    ['a choice', edited(book, setEntry(at('grade', 'p2'), 'C40')), ['load.grade: entry “C30” → “C40”']],
    [
      'a description',
      edited(book, setRowField(at('L'), 'label', 'span')),
      ['load.L, span: description none → “span”'],
    ],
    [
      'a reference',
      edited(book, setRowField(at('L'), 'reference', 'plan')),
      ['load.L: reference none → “plan”'],
    ],
    [
      'a range',
      edited(book, setRowField(at('L'), 'range', { max: '9 m' })),
      ['load.L: greatest permitted none → “9 m”'],
    ],
    ['a unit', edited(book, setRowField(at('M', 'p2'), 'unit', 'kN*m')), ['load.M: unit “kN·m” → “kN*m”']],
    [
      'a formula',
      edited(book, setFormula(at('M', 'p2'), 'W * L / 10')),
      ['load.M: formula “W * L / 8” → “W * L / 10”'],
    ],
    [
      'how a formula is written',
      edited(book, setFormula(at('M', 'p2'), 'W*L/8')),
      ['load.M: formula “W * L / 8” → “W*L/8” (written in another way, says the same)'],
    ],
    [
      'a stated value and its reason',
      edited(book, stateRow(at('W'), { entry: '61 kN', reason: 'weighed' })),
      ['load.W: stated value none → “61 kN”', 'load.W: reason for the stated value none → “weighed”'],
    ],
    [
      'a line that came, with its entry',
      edited(book, insertRow({ sheet: 'load', part: 'p' }, 1, given('H', '3 m'))),
      ['added: load.H: 3 m'],
    ],
    [
      'a line that went, with its formula',
      edited(book, removeRow(at('M', 'p2'))),
      ['removed: load.M: W * L / 8'],
    ],
    ['a line that moved', edited(book, moveRow(at('W'), 0)), ['moved: load.W from position 3 to 1']],
    [
      'a sheet that came',
      edited(book, insertSheet(0, { key: 'x', title: 'X', parts: [] })),
      ['added: sheet x, X'],
    ],
    [
      'the title of a sheet',
      edited(book, setSheetField('sum', 'title', 'S')),
      ['sheet sum, S: title blank → “S”'],
    ],
    [
      'the title of a block',
      edited(book, setPartField({ sheet: 'load', part: 'p' }, 'title', 'Given')),
      ['Given: title none → “Given”'],
    ],
    [
      'the unit of a column',
      edited(book, setColumnField({ sheet: 'load', table: 'items', column: 'w' }, 'unit', 'kg')),
      ['column load.items.w: unit none → “kg”'],
    ],
  ];
  test.each(told)('%s', (_, after, lines) => {
    const all = listed(book, after);
    const from = all.indexOf('changed') + 1;
    const to = all.includes('followed') ? all.indexOf('followed') : all.length;
    expect(all.slice(all.includes('changed') ? from : 1, to)).toEqual(lines);
  });

  test('of sheets that changed places one is told', () => {
    const after = edited(book, moveSheet('load', 1));
    expect(compared(book, after).differences.map(({ kind }) => kind)).toEqual(['moved']);
  });
});

describe('a rename is told as one, and what only follows it is not told', () => {
  const kinds = (after: Book): readonly string[] =>
    compared(book, after).differences.map((one) =>
      one.kind === 'field' ? `${one.subject.after?.id} ${one.field}` : one.kind,
    );

  test('of a line', () => {
    const after = edited(
      book,
      setRowField(at('L'), 'name', 'L_s'),
      setFormula(at('W'), 'q * L_s'),
      setFormula(at('M', 'p2'), 'W * L_s / 8'),
    );
    // Without a description the line has its entry to be known by.
    expect(kinds(after)).toEqual(['load.L_s name']);
  });

  test('of a sheet, a table and a column', () => {
    const sheet = edited(book, setSheetField('load', 'key', 'loads'), {
      label: '',
      patches: [setFormula({ sheet: 'sum', part: 's', row: 'T' }, 'SUM(loads.items.m)').patches[0]!],
    });
    expect(kinds(sheet)).toEqual(['loads key']);
    const table = edited(
      book,
      setPartField({ sheet: 'load', part: 'items' }, 'name', 'things'),
      setFormula({ sheet: 'sum', part: 's', row: 'T' }, 'SUM(load.things.m)'),
    );
    expect(kinds(table)).toEqual(['load.things name']);
    const column = edited(
      book,
      setColumnField({ sheet: 'load', table: 'items', column: 'm' }, 'name', 'mass'),
      setColumnField({ sheet: 'load', table: 'items', column: 'w' }, 'formula', '2 * mass'),
      setFormula({ sheet: 'sum', part: 's', row: 'T' }, 'SUM(load.items.mass)'),
    );
    expect(kinds(column)).toEqual(['load.items.mass name']);
  });

  test('a formula that stays as it is and means another line is told', () => {
    const after = edited(
      book,
      setRowField(at('L'), 'name', 'L_s'),
      insertRow({ sheet: 'load', part: 'p' }, 1, { ...given('L', '9 m', 'm'), id: 'other' }),
    );
    const meant = compared(book, after).differences.filter(
      (one) => one.kind === 'field' && one.only === 'names',
    );
    expect(meant.map((one) => 'subject' in one && one.subject.after?.id)).toEqual(['load.W', 'load.M']);
  });
});

test('one identity does not make one line of two that have nothing in common', () => {
  const after = edited(
    book,
    removeRow(at('grade', 'p2')),
    insertRow({ sheet: 'load', part: 'p2' }, 1, { ...given('s', '2 m'), id: 'grade' }),
  );
  const kinds = compared(book, after).differences.map((one) => one.kind);
  expect(kinds).toEqual(['added', 'removed']);
});

test('a line of another identity is known by its name on its sheet', () => {
  const other = JSON.parse(JSON.stringify(book).replaceAll('"id":"', '"id":"x_'));
  expect(compared(book, other)).toEqual({ differences: [], tables: [] });
});
