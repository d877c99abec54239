import { describe, expect, test } from 'vitest';
import { type Book, blankBook, type Part, setCells, setEntry, setFormula } from '../../src/document/index.ts';
import { openNotebook, tryEntry } from '../../src/notebook/index.ts';

const parts: readonly Part[] = [
  {
    id: 'p',
    kind: 'rows',
    rows: [
      { id: 'a', kind: 'given', name: 'a', entry: '3 m', unit: 'm', range: { max: '9 m' } },
      { id: 'b', kind: 'calc', name: 'b', formula: 'a * 2', unit: 'm' },
      { id: 'd', kind: 'calc', name: 'd', formula: 'b + 1 m' },
      { id: 'c', kind: 'check', name: 'ok', formula: 'b <= 10 m' },
      { id: 's', kind: 'calc', name: 'most', formula: 'MAX(t.z)', unit: 'm' },
    ],
  },
  {
    id: 't',
    kind: 'table',
    name: 't',
    columns: [
      { id: 'z', kind: 'series', name: 'z', formula: 'SERIES(0 m; b; 2 m)', unit: 'm' },
      { id: 'y', kind: 'calc', name: 'y', formula: 'z + a', unit: 'm' },
    ],
  },
];
const shares: readonly Part[] = [
  {
    id: 'p',
    kind: 'rows',
    rows: [{ id: 'w', kind: 'given', name: 'w', entry: '5 %', unit: '%' }],
  },
  {
    id: 't',
    kind: 'table',
    name: 'items',
    length: 3,
    columns: [{ id: 'r', kind: 'given', name: 'r', unit: '%', chunks: [[5, 0.1, '0.2 %']] }],
  },
];

describe('a number at or below 1 where numbers are per cent', () => {
  const open = () => openNotebook({ ...blankBook(), sheets: [{ key: 's', title: '', parts: shares }] });

  test.each(['s.w', 's.items.r'])('is read as per cent in %s, with both readings as remedies', (id) => {
    const { value, problems } = tryEntry(open(), id, '0.10');
    expect(value).toMatchObject({ si: 0.001 });
    expect(problems).toMatchObject([{ code: 'bare-percent', severity: 'warning', from: 0, to: 4 }]);
    expect(problems[0]?.fixes.map(({ insert }) => insert)).toEqual(['0.10 %', '10 %']);
  });

  test.each([
    ['0.10 %', 0.001],
    ['0.10 -', 0.1],
    ['10 %', 0.1],
    ['1.01', 0.0101],
    ['0', 0],
  ])('%s needs no pointing out', (entry, si) => {
    for (const id of ['s.w', 's.items.r']) {
      expect(tryEntry(open(), id, entry)).toMatchObject({ value: { si }, problems: [] });
    }
  });

  test.each([
    ['1', '1 %', '100 %'],
    ['-0.07', '-0.07 %', '-7 %'],
    ['1/2', '1/2 %', '50 %'],
  ])('%s may be %s or %s', (entry, percent, share) => {
    const [found] = tryEntry(open(), 's.w', entry).problems;
    expect(found?.fixes.map(({ insert }) => insert)).toEqual([percent, share]);
    const read = [percent, share].map((text) => tryEntry(open(), 's.w', text));
    expect(read.map(({ problems }) => problems)).toEqual([[], []]);
  });

  test('is pointed out on its line and its column until it is written out', () => {
    const notebook = open();
    expect(notebook.problems()).toMatchObject([
      {
        code: 'column-bare-percent',
        cell: 's.items.r',
        message: 'the cell in row 2 is read as 0.1 %, and would be 10 % as a part of one',
      },
    ]);
    notebook.apply(setCells({ sheet: 's', table: 't', column: 'r' }, 1, ['0.1 %']));
    expect(notebook.problems()).toEqual([]);
    notebook.apply(setEntry({ sheet: 's', part: 'p', row: 'w' }, '0.10'));
    expect(notebook.problems()).toMatchObject([{ code: 'bare-percent', cell: 's.w' }]);
    expect(notebook.result('s.w')).toMatchObject({ status: 'ok', value: { si: 0.001 } });
  });
});

const book: Book = { ...blankBook(), sheets: [{ key: 's', title: '', parts }] };

describe('a formula tried in its place', () => {
  test('has the value it has when it is entered there, and changes nothing', () => {
    const notebook = openNotebook(book);
    const trial = notebook.tryFormula('s.b', 'a * 4 + 50 cm');
    expect(trial.outcome).toMatchObject({ kind: 'value', value: { si: 12.5, unit: { text: 'm' } } });
    expect(notebook.result('s.d')).toMatchObject({ status: 'ok', value: { si: 7 } });
    notebook.apply(setFormula({ sheet: 's', part: 'p', row: 'b' }, 'a * 4 + 50 cm'));
    expect(notebook.result('s.b')).toMatchObject({ status: 'ok', value: { si: 12.5 } });
  });

  test('in a column has the value of its first row', () => {
    const { outcome } = openNotebook(book).tryFormula('s.t.y', 'z + 2 * a + SUM(t.z)');
    expect(outcome).toMatchObject({ kind: 'value', value: { si: 18 }, row: 0 });
  });

  test('in a column has the value of another row where one is named', () => {
    const notebook = openNotebook(book);
    const first = notebook.tryFormula('s.t.y', 'z * 2').outcome;
    const second = notebook.tryFormula('s.t.y', 'z * 2', { row: 1 }).outcome;
    expect(first).toMatchObject({ value: { si: 0 }, row: 0 });
    expect(second).toMatchObject({ value: { si: 4 }, row: 1 });
  });

  test('that is the same in all rows of a column names none', () => {
    const { outcome } = openNotebook(book).tryFormula('s.t.y', '2 * a', { row: 1 });
    expect(outcome).toEqual({ kind: 'value', value: expect.objectContaining({ kind: 'number' }) });
  });

  test('of a check has its verdict', () => {
    const { outcome } = openNotebook(book).tryFormula('s.ok', '8 m >= b');
    expect(outcome).toMatchObject({ kind: 'verdict', verdict: { holds: true, utilisation: 0.75 } });
  });

  test('of a series has its ends and its step', () => {
    const { outcome } = openNotebook(book).tryFormula('s.t.z', 'SERIES(1 m; a; 50 cm)');
    expect(outcome).toMatchObject({ kind: 'series', start: { si: 1 }, stop: { si: 3 }, step: { si: 0.5 } });
  });

  test('says why it has no value', () => {
    const { outcome } = openNotebook(book).tryFormula('s.b', 'a * a / (a - 3 m)');
    expect(outcome).toMatchObject({ kind: 'no value', problem: { code: 'division-by-zero' } });
  });

  test('says what the check finds, and the circle it would close, also through the rows of a table', () => {
    const notebook = openNotebook(book);
    expect(notebook.tryFormula('s.b', 'a * a').problems).toMatchObject([{ code: 'unit-disagrees' }]);
    expect(notebook.tryFormula('s.b', 'd + 1 m')).toMatchObject({
      problems: [{ code: 'loop', data: { path: ['s.b', 's.d', 's.b'] } }],
      outcome: { kind: 'none' },
    });
    expect(notebook.tryFormula('s.b', 'MAX(t.y)').problems).toMatchObject([{ code: 'loop' }]);
  });

  test('takes another unit column', () => {
    const notebook = openNotebook(book);
    expect(notebook.tryFormula('s.b', 'a * 2', { unit: 'cm' }).outcome).toMatchObject({
      value: { unit: { text: 'cm' } },
    });
    expect(notebook.tryFormula('s.b', 'a * 2', { unit: 'kN' }).problems).toMatchObject([
      { code: 'unit-disagrees' },
    ]);
    expect(notebook.typeInPlace('s.ok', 'a * 2')).toMatchObject({ dimension: { key: 'L' } });
  });
});

test('an entry tried in its place has its value and its problems', () => {
  const notebook = openNotebook(book);
  expect(tryEntry(notebook, 's.a', '150 cm')).toMatchObject({
    value: { si: 1.5, unit: { text: 'm' } },
    problems: [],
  });
  expect(tryEntry(notebook, 's.a', '12 m').problems).toMatchObject([{ code: 'out-of-range' }]);
  expect(tryEntry(notebook, 's.a', '')).toEqual({ problems: [] });
  expect(() => tryEntry(notebook, 's.b', '1')).toThrow('takes no entry');
});
