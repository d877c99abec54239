import { describe, expect, test } from 'vitest';
import { movedWords } from '../../../src/app/panel/trial-view.ts';
import { movedChecks, TRIAL_CELL_LIMIT, tableCells, tryValue } from '../../../src/app/panel/value-trial.ts';
import { type Book, blankBook } from '../../../src/document/index.ts';
import { type Notebook, openNotebook } from '../../../src/notebook/index.ts';

/** A beam whose moment goes through a second sheet to a third, where it is checked again. */
const book: Book = {
  ...blankBook(),
  sheets: [
    {
      key: 'beam',
      title: 'Beam',
      parts: [
        {
          id: 'p',
          kind: 'rows',
          rows: [
            { id: 'r1', kind: 'given', name: 'L', entry: '4 m', unit: 'm', range: { max: '7 m' } },
            { id: 'r2', kind: 'given', name: 'q', entry: '10', unit: 'kN/m' },
            { id: 'r3', kind: 'calc', name: 'M', formula: 'q * L^2 / 8', unit: 'kN·m' },
            { id: 'r4', kind: 'check', name: 'c_M', formula: 'M <= 25 (kN*m)' },
            { id: 'r5', kind: 'check', name: 'c_q', formula: 'q <= 40 (kN/m)' },
            {
              id: 'r6',
              kind: 'choice',
              name: 'grade',
              entry: 'a',
              options: [
                { value: 'a', label: 'weak' },
                { value: 'b', label: 'strong' },
              ],
            },
          ],
        },
      ],
    },
    {
      key: 'mid',
      title: 'Middle',
      parts: [
        {
          id: 'p',
          kind: 'rows',
          rows: [{ id: 'r1', kind: 'calc', name: 'M_2', formula: '2 * beam.M', unit: 'kN·m' }],
        },
      ],
    },
    {
      key: 'far',
      title: 'Far',
      parts: [
        {
          id: 'p',
          kind: 'rows',
          rows: [
            {
              id: 'r1',
              kind: 'calc',
              name: 'M_R',
              formula: 'IF(beam.grade = "b"; 2000 (kN*m); 1000 (kN*m))',
              unit: 'kN·m',
            },
            { id: 'r2', kind: 'check', name: 'c_far', formula: 'mid.M_2 <= M_R' },
          ],
        },
      ],
    },
  ],
};
const span = { id: 'beam.L', place: { sheet: 'beam', part: 'p', item: 'r1', field: 'value' } };
const load = { id: 'beam.q', place: { sheet: 'beam', part: 'p', item: 'r2', field: 'value' } };
const grade = { id: 'beam.grade', place: { sheet: 'beam', part: 'p', item: 'r6', field: 'value' } };

function tried(notebook: Notebook, at: typeof span, entry: string) {
  const outcome = tryValue(notebook, at, entry);
  if (!outcome.ok) throw new Error(outcome.problems[0]?.message);
  return outcome.value;
}

const listed = (notebook: Notebook, beside: Notebook) =>
  movedChecks(notebook, beside).map(({ check, before, after }) => `${check.item.id}: ${before} → ${after}`);

type Rows = Extract<Book['sheets'][number]['parts'][number], { kind: 'rows' }>['rows'];

const given = (entry: string): Rows[number] => ({ id: 'r1', kind: 'given', name: 'a', entry, unit: 'kN' });
const check = (formula: string): Rows[number] => ({ id: 'r3', kind: 'check', name: 'c', formula });

/** A sum that is nothing but for what rounding leaves of it, below a limit. */
const cancelling = (limit: string): Rows => [
  given('0.1 kN'),
  { id: 'r2', kind: 'calc', name: 'X', formula: 'ABS(1.1 * a + 2.2 * a - 3.3 * a)', unit: 'kN' },
  check(`X <= ${limit}`),
];

function withRows(rows: Rows): Book {
  return {
    ...blankBook(),
    sheets: [{ key: 's', title: 'S', parts: [{ id: 'p', kind: 'rows', rows }] }],
  };
}

describe('a value tried', () => {
  test('moves every check that rests on it, at any depth, and leaves the book as it is', () => {
    const notebook = openNotebook(book);
    const { notebook: beside } = tried(notebook, span, '6 m');
    // 10·4²/8 = 20 and 10·6²/8 = 45, of 25 kN·m; twice that, of 1000 kN·m.
    expect(listed(notebook, beside)).toEqual([
      'beam.c_M: 80 % holds → 180 % fails',
      'far.c_far: 4.0 % holds → 9.0 % holds',
    ]);
    expect(notebook.book).toBe(book);
    expect(notebook.verdict('beam.c_M')?.holds).toBe(true);
    expect(movedWords(movedChecks(notebook, beside), 3)).toBe('2 of 3 checks move, 1 comes to fail.');
  });

  test('is tried from the book each time, and the value of the book moves nothing', () => {
    const notebook = openNotebook(book);
    const first = tried(notebook, span, '6 m');
    const back = tryValue(notebook, span, '4 m', first);
    if (!back.ok) throw new Error('the value of the book is refused');
    expect(back.value.notebook).toBe(first.notebook);
    expect(listed(notebook, back.value.notebook)).toEqual([]);
    expect(movedWords([], 3)).toBe('None of 3 checks move.');
  });

  test('of a choice moves what was chosen by it', () => {
    const notebook = openNotebook(book);
    // 40 kN·m of 1000 and of 2000.
    expect(listed(notebook, tried(notebook, grade, 'b').notebook)).toEqual([
      'far.c_far: 4.0 % holds → 2.0 % holds',
    ]);
  });

  test('has as many digits as tell the utilisations apart', () => {
    const notebook = openNotebook(book);
    // 20 and 20.008 of 25 kN·m; 10 and 10.004 of 40 kN/m; 40 and 40.016 of 1000 kN·m.
    expect(listed(notebook, tried(notebook, load, '10.004').notebook)).toEqual([
      'beam.c_M: 80.00 % holds → 80.03 % holds',
      'beam.c_q: 25.00 % holds → 25.01 % holds',
      'far.c_far: 4.000 % holds → 4.002 % holds',
    ]);
  });

  test('moves nothing where terms cancel and only what rounding leaves of them differs', () => {
    const cancels = openNotebook(withRows(cancelling('1 kN')));
    const at = { place: { sheet: 's', part: 'p', item: 'r1', field: 'value' }, id: 's.a' };
    const { notebook: beside } = tried(cancels, at, '0.7 kN');
    const [before, after] = [cancels, beside].map((one) => one.verdict('s.c')?.utilisation);
    // What this is about: both are next to nothing, and not the same.
    expect(before).not.toBe(after);
    expect(Math.max(before ?? 1, after ?? 1)).toBeLessThan(1e-12);
    expect(listed(cancels, beside)).toEqual([]);
  });

  test('has its powers of ten as all of the page has them', () => {
    const small = openNotebook(withRows([given('0.01 kN'), check('a <= 1e9 (kN)')]));
    const at = { place: { sheet: 's', part: 'p', item: 'r1', field: 'value' }, id: 's.a' };
    for (const words of listed(small, tried(small, at, '20 kN').notebook))
      expect(words).not.toMatch(/\de[-−]/);
    expect(listed(small, tried(small, at, '20 kN').notebook)).toHaveLength(1);
  });

  test('that takes a value away says so', () => {
    const notebook = openNotebook(book);
    const moved = movedChecks(notebook, tried(notebook, span, '').notebook);
    expect(moved.map(({ check, after }) => `${check.item.id}: ${after}`)).toEqual([
      'beam.c_M: no value',
      'far.c_far: no value',
    ]);
    expect(movedWords(moved, 3)).toBe('2 of 3 checks move, 2 lose their value.');
  });

  test('is refused where the line cannot read it, and pointed out where it is beyond its range', () => {
    const notebook = openNotebook(book);
    const refused = tryValue(notebook, span, '5 kN');
    expect(refused.ok).toBe(false);
    const { notebook: beside } = tried(notebook, span, '8 m');
    expect(beside.problems().map(({ code, cell }) => [code, cell])).toContainEqual([
      'out-of-range',
      'beam.L',
    ]);
  });

  test('keeping it is one edit, which its inverse takes back', () => {
    const notebook = openNotebook(book);
    const applied = notebook.apply(tried(notebook, span, '6 m').edit);
    if (!applied.ok) throw new Error('the edit is refused');
    expect(notebook.verdict('beam.c_M')?.holds).toBe(false);
    expect(notebook.apply(applied.value.inverse).ok).toBe(true);
    expect(notebook.book).toEqual(book);
  });
});

test('the cells of tables are counted, those of a series too', () => {
  const notebook = openNotebook({
    ...blankBook(),
    sheets: [
      {
        key: 's',
        title: 'Rows',
        parts: [
          {
            id: 't',
            kind: 'table',
            name: 'steps',
            columns: [
              { id: 'z', kind: 'series', name: 'z', formula: 'SERIES(0 m; 30000 m; 1 m)', unit: 'm' },
              { id: 'y', kind: 'calc', name: 'y', formula: '2 * z', unit: 'm' },
            ],
          },
        ],
      },
    ],
  });
  expect(tableCells(notebook)).toBe(2 * 30_001);
  expect(tableCells(notebook)).toBeGreaterThan(TRIAL_CELL_LIMIT);
});
