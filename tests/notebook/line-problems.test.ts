import { describe, expect, test } from 'vitest';
import { problem } from '../../src/diagnostics/index.ts';
import {
  type Book,
  blankBook,
  type Part,
  type Row,
  setColumnField,
  setRowField,
} from '../../src/document/index.ts';
import { columnNamed, enterRows, enterValues, lineNamed, openNotebook } from '../../src/notebook/index.ts';
import { blockOf, bookOf, calc, calcColumn, numbers, tableOf } from '../make-book.ts';

const blocks = (sheet: string): readonly Part[] => [
  {
    id: `${sheet}-p`,
    kind: 'rows',
    rows: [
      { id: `${sheet}-w`, kind: 'given', name: 'w', entry: '3 m', unit: 'm' },
      { id: `${sheet}-a`, kind: 'calc', name: 'a', formula: 'w * nosuch' },
      { id: `${sheet}-b`, kind: 'calc', name: 'b', formula: 'a * 2' },
    ],
  },
  {
    id: `${sheet}-t`,
    kind: 'table',
    name: 'layers',
    length: 2,
    columns: [
      { id: `${sheet}-c`, kind: 'given', name: 'wet', type: 'truth', chunks: [['TRUE', '5 m']] },
      { id: `${sheet}-d`, kind: 'given', name: 't', unit: 'm', chunks: [[1, 'thick']] },
    ],
  },
  {
    id: `${sheet}-s`,
    kind: 'table',
    name: 'depths',
    columns: [{ id: `${sheet}-z`, kind: 'series', name: 'z', formula: 'SERIES(0 m; 2 m; 1 m)', unit: 'm' }],
  },
];
const book: Book = {
  ...blankBook(),
  sheets: [
    { key: 's', title: 'S', parts: blocks('s') },
    { key: 'u', title: 'U', parts: blocks('u') },
  ],
};
const notebook = openNotebook(book);

/** Code and sentence of the first problem of a refusal. */
function first(outcome: {
  readonly ok: boolean;
  readonly problems?: readonly { readonly code: string; readonly message: string }[];
}) {
  const [found] = outcome.problems ?? [];
  return outcome.ok || !found ? 'accepted' : `${found.code}: ${found.message}`;
}

describe('what a line or cell says of itself', () => {
  const told = (cell: string) => notebook.problems().filter((found) => found.cell === cell);

  test('a cell that should be true or false: the row is named', () => {
    expect(told('s.layers.wet')).toMatchObject([{ code: 'row-fails', data: { row: 2 } }]);
    expect(told('s.layers.wet')[0]?.message).toContain('“5 m” is neither TRUE nor FALSE');
    // The cell itself carries cell-not-truth.
    const column = notebook.column('s.layers.wet');
    expect(column.status === 'ok' && column.reading.problemAt(1)?.code).toBe('cell-not-truth');
  });

  test('a cell that should be a number', () => {
    expect(told('s.layers.t')).toMatchObject([{ code: 'row-fails', data: { row: 2 } }]);
  });

  test('a line without a type waits on the one that has the problem', () => {
    expect(told('s.a')).toMatchObject([{ code: 'name-unknown' }]);
    expect(told('s.b')).toMatchObject([{ code: 'waits-on', message: 'waits on s.a' }]);
  });
});

describe('what waits names the first cause, however far behind it is', () => {
  // Without units no line has a type as long as the first has none.
  const chain = (first: string) =>
    openNotebook(
      bookOf({
        s: [
          blockOf('p', calc('a', first), calc('b', '2 * a'), calc('c', '2 * b'), calc('e', 'SUM(t.y)'), {
            id: 'k',
            kind: 'check',
            name: 'k',
            formula: '1 m <= 2 m',
            applies: 'c > 1',
          }),
          tableOf('t', 2, numbers('x', 'm', [1, 2]), calcColumn('y', 'x * c')),
        ],
      }),
    );
  const hint = (notebook: ReturnType<typeof openNotebook>, id: string) => {
    const read = id === 's.t.y' ? notebook.column(id) : notebook.result(id);
    return 'problem' in read ? read.problem.hints.join('; ') : read.status;
  };

  test.each(['s.b', 's.c', 's.e', 's.t.y', 's.k'])('%s', (id) => {
    expect(hint(chain('nosuch + 1'), id)).toBe('mend s.a: there is no “nosuch” here');
    expect(hint(chain(''), id)).toBe('mend s.a: there is no formula yet');
  });

  test('also when that has become another one', () => {
    const notebook = chain('nosuch + 1');
    const done = notebook.apply(setRowField({ sheet: 's', part: 'p', row: 'a' }, 'formula', 'other + 1'));
    expect(done.ok).toBe(true);
    for (const id of ['s.b', 's.c', 's.e', 's.t.y', 's.k'])
      expect(hint(notebook, id)).toBe('mend s.a: there is no “other” here');
  });
});

describe('a formula that is still to be written', () => {
  const part: Part = {
    id: 'p',
    kind: 'rows',
    rows: [
      { id: 'y', kind: 'calc', name: 'y', formula: ' ', unit: 'm' },
      { id: 'z', kind: 'calc', name: 'z', formula: 'y * 2', unit: 'm' },
      { id: 'u', kind: 'calc', name: 'u', formula: '' },
      { id: 'v', kind: 'calc', name: 'v', formula: 'u * 2' },
    ],
  };
  const drafted = openNotebook({ ...blankBook(), sheets: [{ key: 's', title: 'S', parts: [part] }] });

  test('is told as a problem, but its line waits and has none', () => {
    expect(drafted.problems().map(({ cell, code }) => `${cell} ${code}`)).toEqual([
      's.y formula-empty',
      's.z waiting-on',
      's.u formula-empty',
      's.v waits-on',
    ]);
    expect(drafted.result('s.y')).toMatchObject({
      status: 'waiting',
      problem: { cell: 's.y', message: 'there is no formula yet' },
    });
  });

  test('what depends on it waits on it by name', () => {
    expect(drafted.result('s.z')).toMatchObject({
      status: 'waiting',
      problem: { message: 'waits on “y”, which has no value', hints: ['mend s.y: there is no formula yet'] },
    });
    expect(drafted.result('s.v')).toMatchObject({ status: 'waiting', problem: { message: 'waits on s.u' } });
  });
});

describe('the unit of a check', () => {
  const check = (id: string, formula: string, unit: string) =>
    ({ id, kind: 'check', name: id, formula, unit }) as const;
  const part: Part = {
    id: 'p',
    kind: 'rows',
    rows: [
      { id: 'a', kind: 'given', name: 'a', entry: '3 m', unit: 'm' },
      check('wrong', '0 <= a', 'kN'),
      check('feet', 'a <= 4 m', 'ft'),
      check('several', 'AND(a <= 4 m; a >= 1 m)', ''),
    ],
  };
  const checked = openNotebook({ ...blankBook(), sheets: [{ key: 's', title: 'S', parts: [part] }] });

  test('that is of another dimension than what is compared gives no verdict', () => {
    expect(checked.problems()).toMatchObject([{ cell: 's.wrong', code: 'unit-disagrees' }]);
    expect(checked.problems()[0]?.message).toContain('“a” is a length');
    expect(checked.verdict('s.wrong')).toBeUndefined();
  });

  test('that fits is what both sides are read in', () => {
    expect(checked.verdict('s.feet')).toMatchObject({ holds: true, demand: { si: 3, unit: { text: 'ft' } } });
    expect(checked.verdict('s.several')).toEqual({ holds: true });
  });
});

describe('names that cannot be used', () => {
  test('set-unknown, set-check, name-on-sheets', () => {
    expect(first(enterValues(book, { 's.ww': '1 m' }, ''))).toBe(
      'set-unknown: there is no line “s.ww” in this book',
    );
    const check: Row = { id: 'k', kind: 'check', name: 'k', formula: 'w <= 5 m' };
    const checked: Book = {
      ...book,
      sheets: [{ key: 's', title: 'S', parts: [{ id: 'q', kind: 'rows', rows: [check] }] }],
    };
    expect(first(enterValues(checked, { 's.k': '1 m' }, ''))).toBe(
      'set-check: “s.k” is a check, whose verdict cannot be set',
    );
    expect(first(enterValues(book, { w: '1 m' }, ''))).toBe('name-on-sheets: “w” stands on several sheets');
    expect(first(enterValues(book, { 's.w': '1 m' }, ''))).toBe('accepted');
  });

  test('table-unknown, table-computed', () => {
    expect(first(enterRows(book, 's.layrs', [], ''))).toBe(
      'table-unknown: there is no table “s.layrs” in this book',
    );
    expect(first(enterRows(book, 's.depths', [], ''))).toBe(
      'table-computed: the rows of “s.depths” are computed and cannot be given',
    );
  });

  test('result-unknown', () => {
    expect(first(lineNamed(notebook.model, 's.q'))).toBe(
      'result-unknown: there is no line or column “s.q” in this book',
    );
    expect(first(columnNamed(notebook.model, 's.layers.q'))).toMatch(/^result-unknown/);
  });
});

describe('words of problems that only the page or a later door can meet', () => {
  test('book-not-kept', () => {
    expect(problem('book-not-kept', { from: 0, to: 0 }, {}).message).toBe(
      'this book is not kept in this browser',
    );
  });

  test('cell-not-number', () => {
    const said = problem('cell-not-number', { from: 0, to: 4 }, { written: 'TRUE' });
    expect(said.message).toBe('“TRUE” is not a number');
  });
});

test('a name that is missing is offered from another sheet first, and never the line itself', () => {
  const calc = (id: string, name: string, formula: string) =>
    ({ id, kind: 'calc', name, formula, unit: 'kN' }) as const;
  const notebook = openNotebook({
    ...blankBook(),
    sheets: [
      {
        key: 'a',
        title: '',
        parts: [{ id: 'p', kind: 'rows', rows: [calc('r1', 'E_A', 'E_av * 2'), calc('r2', 'E_ax', '1 kN')] }],
      },
      { key: 'b', title: '', parts: [{ id: 'q', kind: 'rows', rows: [calc('s1', 'E_av', '3 kN')] }] },
    ],
  });
  const [found] = notebook.problems();
  expect(found?.fixes.map(({ insert }) => insert)).toEqual(['b.E_av', 'E_ax']);
});

test('a line without a unit is read in that of what goes into it', () => {
  const notebook = openNotebook({
    ...blankBook(),
    settings: { ...blankBook().settings, system: 'US' },
    sheets: [
      {
        key: 'a',
        title: '',
        parts: [
          {
            id: 'p',
            kind: 'rows',
            rows: [
              { id: 'r1', kind: 'given', name: 'E_A', entry: '956', unit: 'kN·m' },
              { id: 'r2', kind: 'calc', name: 'E_2', formula: 'E_A / 2' },
              { id: 'r3', kind: 'calc', name: 'F', formula: 'E_A / 2 m' },
            ],
          },
        ],
      },
    ],
  });
  expect(notebook.unitOf('a.E_2').text).toBe('kN·m');
  expect(notebook.unitOf('a.F').text).toBe('kip');
});

test('where no row meets a condition, what was looked for is called as its column is described', () => {
  const profile = tableOf(
    'profile',
    3,
    { ...numbers('z', 'm', [5, 10, 15]), label: 'depth of the tip' },
    { ...numbers('Q', 'kN', [100, 200, 300]), label: 'capacity' },
  );
  const notebook = openNotebook(
    bookOf({
      s: [
        profile,
        blockOf(
          'p',
          { ...calc('N', { formula: '4 * 100 kN', unit: 'kN' }), label: 'demand' },
          calc('L', { formula: 'MINIF(profile.Q >= N; profile.z)', unit: 'm' }),
          calc('D', { formula: 'MAXIF(profile.Q >= N; profile.z + 1 m)', unit: 'm' }),
        ),
      ],
    }),
  );
  const told = (id: string) => {
    const read = notebook.result(id);
    const listed = notebook.problems().filter(({ cell }) => cell === id);
    return [...('problem' in read ? [read.problem] : []), ...listed].map(({ message }) => message);
  };
  const rest = 'none of the 3 rows meets “profile.Q >= N” (N is 400 kN)';
  expect(told('s.L')).toEqual(Array(2).fill(`there is no least “depth of the tip”: ${rest}`));
  expect(told('s.D')).toEqual(Array(2).fill(`there is no greatest “profile.z + 1 m”: ${rest}`));
  const place = { sheet: 's', table: 'profile', column: 'z' };
  expect(notebook.apply(setColumnField(place, 'label', 'embedment')).ok).toBe(true);
  expect(told('s.L')).toEqual(Array(2).fill(`there is no least “embedment”: ${rest}`));
  expect(notebook.apply(setColumnField(place, 'label', undefined)).ok).toBe(true);
  expect(told('s.L')).toEqual(Array(2).fill(`there is no least “profile.z”: ${rest}`));
});
