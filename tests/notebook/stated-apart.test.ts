import { describe, expect, test } from 'vitest';
import {
  type Book,
  blankBook,
  type Edit,
  type Row,
  stateCells,
  stateRow,
  stateSide,
} from '../../src/document/index.ts';
import { type Notebook, openNotebook, setNamed, statedValues } from '../../src/notebook/index.ts';
import { statedLines } from '../../src/record/index.ts';

const check = { id: 'c', kind: 'check', name: 'c', formula: 'w <= 10 kN', unit: 'kN' } as const;
const rows: readonly Row[] = [
  { id: 'b', kind: 'given', name: 'b', entry: '3', unit: 'm' },
  { id: 'z', kind: 'given', name: 'z', entry: 'El. +1 m CD', unit: 'm CD' },
  { id: 'w', kind: 'calc', name: 'w', formula: 'b * 2 (kN/m)', unit: 'kN' },
  { id: 'e', kind: 'calc', name: 'e', formula: 'w - 6 kN', unit: 'kN' },
  { id: 'y', kind: 'calc', name: 'y', formula: 'z + b', unit: 'm CD' },
  { id: 'm', kind: 'calc', name: 'm', formula: 'IF(b > 2 m; "deep"; "shallow")' },
  check,
];
const h = { id: 'h', kind: 'given', name: 'h', unit: 'm', chunks: [[1, 2, 3]] } as const;
const v = { id: 'v', kind: 'calc', name: 'v', formula: 'h * 2 (m^2)', unit: 'm^3' } as const;
const book: Book = {
  ...blankBook(),
  settings: { ...blankBook().settings, datums: ['CD'] },
  sheets: [
    {
      key: 's',
      title: 'S',
      parts: [
        { id: 'p', kind: 'rows', rows },
        { id: 't', kind: 'table', name: 't', length: 3, columns: [h, v] },
      ],
    },
  ],
};

const reason = 'table 4.2, read by hand';
const place = (row: string) => ({ sheet: 's', part: 'p', row });
const line = (row: string, entry: string): Edit => stateRow(place(row), { entry, reason });
const cells = (...entries: readonly string[]): Edit =>
  stateCells(
    { sheet: 's', table: 't', column: 'v' },
    v,
    new Map(entries.map((entry, at) => [at + 1, { entry, reason }])),
  );

function opened(...edits: readonly Edit[]): Notebook {
  const notebook = openNotebook(book);
  for (const edit of edits) {
    const outcome = notebook.apply(edit);
    if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
  }
  return notebook;
}

const open = (notebook: Notebook) => notebook.problems().map(({ code, cell: at }) => `${at}: ${code}`);

describe('a stated value beside the computed one', () => {
  test.each([
    ['w', '61 kN', 'stated-far'],
    ['w', '0.59 kN', 'stated-far'],
    ['w', '0', 'stated-far'],
    ['w', '6 MN', 'stated-far'],
    ['w', '-6 kN', 'stated-other-sign'],
    ['e', '1 kN', 'stated-far'],
  ])('%s stated as %s is open: %s', (row, entry, code) => {
    expect(open(opened(line(row, entry)))).toEqual([`s.${row}: ${code}`]);
  });

  test.each([
    ['w', '60 kN'],
    ['w', '0.6 kN'],
    ['w', '8 kN'],
    ['e', '0 kN'],
    ['y', 'El. -90 m CD'],
    ['m', 'medium'],
  ])('%s stated as %s is not', (row, entry) => {
    expect(open(opened(line(row, entry)))).toEqual([]);
  });

  test('is told in plain words, with both values', () => {
    const [found] = opened(line('w', '6 MN')).problems();
    expect(found).toMatchObject({
      severity: 'warning',
      message: 'the stated value, 6000 kN, is far from the computed 6 kN',
    });
    const [other] = opened(line('w', '-6 kN')).problems();
    expect(other?.message).toBe('the stated value, -6 kN, has the other sign than the computed 6 kN');
  });

  test('follows the computed one', () => {
    const notebook = opened(line('w', '61 kN'));
    const edit = setNamed(notebook.book, 's.b', '30', '');
    if (!edit.ok) throw new Error('b cannot be set');
    notebook.apply(edit.value);
    expect(open(notebook)).toEqual([]);
  });

  test('of a side of a check is open where it is far from what it stands in place of', () => {
    expect(open(opened(stateSide(place('c'), check, 'capacity', { entry: '12 kN', reason })))).toEqual([]);
    const far = opened(stateSide(place('c'), check, 'demand', { entry: '0.1 kN', reason }));
    expect(open(far)).toEqual(['s.c: stated-far']);
  });

  test('of a column is told by its row, once for all of them', () => {
    const notebook = opened(cells('25 m^3', '-4 m^3', '7 m^3'));
    expect(notebook.problems()).toMatchObject([
      {
        code: 'stated-cells-far',
        cell: 's.t.v',
        message:
          '2 stated values are far from the computed ones, the first in row 1: the stated value, 25 m^3, is far from the computed 2 m^3',
      },
    ]);
    expect(opened(cells('3 m^3')).problems()).toEqual([]);
  });

  test('is told the same in the list of stated values and in the record', () => {
    const notebook = opened(line('w', '6 MN'), cells('25 m^3'));
    expect(statedValues(notebook).map(({ apart }) => apart.map(({ code }) => code))).toEqual([
      ['stated-far'],
      ['stated-far'],
    ]);
    const [first] = statedLines(notebook);
    expect(first).toContain('open: the stated value, 6000 kN, is far from the computed 6 kN');
  });
});
