import { describe, expect, test } from 'vitest';
import type { JsonValue } from '../../../src/diagnostics/index.ts';
import {
  type Book,
  type Edit,
  insertRow,
  removeRow,
  setCells,
  setEntry,
  setFormula,
  setSettings,
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
import { causesOf, compared, edited, followedOf, listed } from './compared.ts';

const book: Book = bookOf({
  a: [
    blockOf(
      'p',
      given('b', '2 m', 'm'),
      given('h', '3 m', 'm'),
      given('g', '10 kN/m^3', 'kN/m^3'),
      calc('A', 'b * h'),
      calc('big', 'GREATER(b; 5 m)'),
      calc('G', 'A * g'),
      choice('how', 'short', 'long'),
      {
        ...calc('L', { by: 'how', methods: [] }),
        methods: [
          { id: 'm1', for: ['short'], formula: 'b' },
          { id: 'm2', for: ['long'], formula: '3 * h' },
        ],
      },
      { id: 'c', kind: 'check', name: 'c', formula: 'G <= 70 (kN/m)', unit: 'kN/m' },
    ),
  ],
  t: [
    tableOf(
      'items',
      3,
      texts('item', ['cap', 'beam', 'pile']),
      numbers('m', 't', [4, 5, 6]),
      calcColumn('w', 'm * a.b'),
    ),
    blockOf('s', calc('S', 'SUM(items.w) / 2'), calc('N', 'COUNT(items.m)')),
  ],
});
const at = (row: string) => ({ sheet: 'a', part: 'p', row });

describe('what followed, by how much and from what', () => {
  const after = edited(book, setEntry(at('b'), '2.5 m'));
  const all = compared(book, after);

  test('an area of 2 m by 3 m becomes 7.5 m²: a quarter more', () => {
    const [area] = followedOf(all, 'a.A');
    expect(area).toMatchObject({ kind: 'result', size: { relative: 0.25 } });
    expect(area?.kind === 'result' && area.size?.absolute.si).toBeCloseTo(1.5, 12);
    expect(causesOf(area)).toEqual(['a.b entry']);
    expect(listed(book, after)).toContain('a.A: 6 m^2 → 7.5 m^2 (+1.5 m^2, +25.0 %); from a.b (entry)');
  });

  test('a verdict that turns stands first, with demand and capacity', () => {
    const lines = listed(book, after);
    expect(lines[lines.indexOf('followed') + 1]).toBe(
      'check a.c: holds, 86 % → FAILS, 107 %; demand 60 kN/m → 75 kN/m; from a.b (entry)',
    );
  });

  test('what a change does not reach is not told', () => {
    expect(followedOf(all, 'a.big')).toEqual([]);
    expect(followedOf(all, 't.N')).toEqual([]);
  });

  test('rows of a column, the largest change, and the total of what is summed', () => {
    const [values, total] = followedOf(all, 't.items.w');
    expect(values).toMatchObject({ kind: 'values', largest: { rowName: 'pile' } });
    expect(values?.kind === 'values' && values.rows.length).toBe(3);
    // Masses of 15 t in all, times 2 m and 2.5 m.
    expect(total).toMatchObject({ kind: 'total', size: { relative: 0.25 } });
    expect(total?.kind === 'total' && total.size?.absolute.si).toBeCloseTo(15_000 * 0.5, 6);
    expect(causesOf(total)).toEqual(['a.b entry']);
  });
});

test('a formula of its own and an entry above it are both causes', () => {
  const after = edited(book, setEntry(at('g'), '11 kN/m^3'), setFormula(at('G'), '1.1 * A * g'));
  expect(causesOf(followedOf(compared(book, after), 'a.G')[0])).toEqual(['a.g entry', 'a.G formula']);
});

test('an entry written in another way changes no result and causes none', () => {
  const after = edited(book, setEntry(at('b'), '200 cm'), setEntry(at('h'), '4 m'));
  expect(causesOf(followedOf(compared(book, after), 'a.A')[0])).toEqual(['a.h entry']);
});

test('what lies behind a value that stays the same is no cause', () => {
  const after = edited(
    edited(book, setFormula(at('G'), 'big * g')),
    setEntry(at('b'), '2.5 m'),
    setEntry(at('g'), '20 kN/m^3'),
  );
  const before = edited(book, setFormula(at('G'), 'big * g'));
  expect(causesOf(followedOf(compared(before, after), 'a.G')[0])).toEqual(['a.g entry']);
});

test('a method that came, went or is another is told by what it is for, its formula and its remarks', () => {
  const methods = (list: readonly object[]): Edit => ({
    label: '',
    patches: [
      { kind: 'set', at: ['sheets', 'a', 'parts', 'p', 'rows', 'L', 'methods'], value: list as JsonValue },
    ],
  });
  const after = edited(
    book,
    methods([
      { id: 'm1', for: ['short'], formula: 'b / 2' },
      { id: 'm3', formula: '5 * h', reference: 'office rule' },
    ]),
  );
  const lines = listed(book, after).filter((line) => line.startsWith('a.L: '));
  expect(lines.slice(0, 3)).toEqual([
    'a.L: method for “long” removed: formula “3 * h”',
    'a.L: method for all others added: formula “5 * h”, reference “office rule”',
    'a.L: formula of the method for “short” “b” → “b / 2”',
  ]);
  expect(listed(after, book).join('\n')).not.toMatch(/[{}[\]]/);
});

test('another method in force is told, and comes from what chooses it', () => {
  const after = edited(book, setEntry(at('how'), 'long'), setEntry(at('h'), '4 m'));
  const [method, result] = followedOf(compared(book, after), 'a.L');
  expect(method).toMatchObject({ kind: 'method', from: 'for “short”', to: 'for “long”' });
  expect(causesOf(result)).toEqual(['a.how entry']);
});

test('a cell, a line that went and one that came are causes', () => {
  const cell = edited(book, setCells({ sheet: 't', table: 'items', column: 'm' }, 1, [7]));
  expect(causesOf(followedOf(compared(book, cell), 't.S')[0])).toEqual(['t.items.m cells']);
  expect(listed(book, cell)).toContain('t.items.m, row 2 “beam”: 5 → 7 (+2 t, +40.0 %)');
  const gone = edited(book, removeRow(at('g')));
  const [lost] = followedOf(compared(book, gone), 'a.G');
  expect(lost).toMatchObject({ kind: 'result', from: { status: 'ok' } });
  expect(causesOf(lost)).toEqual(['a.g removed']);
  const [come] = followedOf(compared(gone, book), 'a.G');
  expect(causesOf(come)).toEqual(['a.g added']);
});

test('settings are the cause where no line is', () => {
  const settings = { ...book.settings, units: [{ symbol: 'hold', definition: '2 m' }] };
  const before = edited({ ...book, settings }, insertRow({ sheet: 'a', part: 'p' }, 0, given('x', '3 hold')));
  const after = edited(before, setSettings('units', [{ symbol: 'hold', definition: '2.5 m' }]));
  const [x] = followedOf(compared(before, after), 'a.x');
  expect(x).toMatchObject({ kind: 'result' });
  expect(causesOf(x)).toEqual(['book settings.units']);
});
