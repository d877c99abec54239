import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Book,
  blankBook,
  type Column,
  type Edit,
  findRow,
  findSheet,
  insertTableRows,
  openBook,
  type Row,
  removeTableRows,
  replaceRow,
  type Statement,
  stateCell,
  stateRow,
  stateSide,
  type Table,
} from '../../src/document/index.ts';
import {
  type Notebook,
  openNotebook,
  recheckProgram,
  setNamed,
  statedValues,
} from '../../src/notebook/index.ts';
import { recheck } from '../../src/recheck/index.ts';
import { writeQuantity } from '../../src/units/index.ts';

const rows: readonly Row[] = [
  { id: 'b', kind: 'given', name: 'b', entry: '3', unit: 'm' },
  { id: 'w', kind: 'calc', name: 'w', formula: 'b * 2 (kN/m)', unit: 'kN' },
  { id: 'u', kind: 'calc', name: 'u', formula: 'w + 1 kN' },
  { id: 'n', kind: 'calc', name: 'n', formula: 'nosuch * 2', unit: 'kN' },
  { id: 't', kind: 'calc', name: 't', formula: 'IF(b > 2 m; "deep"; "shallow")' },
  { id: 'c', kind: 'check', name: 'c', formula: 'u <= 10 kN', unit: 'kN' },
  { id: 'z', kind: 'check', name: 'z', formula: '10 kN - u >= 0' },
];
const book: Book = {
  ...blankBook(),
  sheets: [{ key: 's', title: 'S', parts: [{ id: 'p', kind: 'rows', rows }] }],
};

const place = (row: string) => ({ sheet: 's', part: 'p', row });

function applied(notebook: Notebook, ...edits: readonly Edit[]): Notebook {
  for (const edit of edits) {
    const outcome = notebook.apply(edit);
    if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
  }
  return notebook;
}

const stated = (row: string, entry: string, reason = 'table 4.2, read by hand') =>
  applied(openNotebook(book), stateRow(place(row), { entry, reason }));

function said(notebook: Notebook, id: string): string {
  const read = notebook.result(id);
  if (read.status !== 'ok') return read.status === 'missing' ? 'missing' : read.problem.code;
  const { value } = read;
  return value.kind === 'number'
    ? writeQuantity(value.si, value.unit)
    : value.kind === 'text'
      ? value.text
      : `${value.truth}`;
}

const codes = (notebook: Notebook) => notebook.problems().map(({ code, cell }) => `${cell}: ${code}`);

describe('a stated value', () => {
  test('is used wherever the line is, and the computed one is still worked out', () => {
    const notebook = stated('w', '8');
    expect(said(notebook, 's.w')).toBe('8 kN');
    expect(said(notebook, 's.u')).toBe('9 kN');
    expect(notebook.computed('s.w')).toMatchObject({ status: 'ok', value: { si: 6000 } });
    expect(notebook.computed('s.u')).toBeUndefined();
  });

  test('the computed one follows its givens, the stated one stays', () => {
    const notebook = stated('w', '2 kip');
    const edit = setNamed(notebook.book, 's.b', '5', '');
    if (!edit.ok) throw new Error('b cannot be set');
    const outcome = notebook.apply(edit.value);
    expect(outcome.ok && [...outcome.value.changed].toSorted()).toEqual(
      expect.arrayContaining(['s.b', 's.w']),
    );
    expect(notebook.computed('s.w')).toMatchObject({ value: { si: 10_000 } });
    expect(notebook.result('s.w')).toMatchObject({ value: { si: 2 * 4448.2216152605 } });
  });

  test('taken back, the computed one is in force again, and nothing is left behind', () => {
    const notebook = stated('w', '8');
    applied(notebook, stateRow(place('w'), undefined));
    expect(notebook.book).toEqual(book);
    expect(said(notebook, 's.u')).toBe('7 kN');
    expect(notebook.computed('s.w')).toBeUndefined();
  });

  test('stands where the formula fails, which is a remark', () => {
    const notebook = stated('n', '4 kN');
    expect(said(notebook, 's.n')).toBe('4 kN');
    const [remark] = notebook.problems();
    expect(remark).toMatchObject({ code: 'stated-formula-fails', severity: 'warning', cell: 's.n' });
    expect(remark?.message).toContain('nosuch');
    expect(openNotebook(book).problems()[0]).toMatchObject({ severity: 'error', cell: 's.n' });
  });

  test('without a reason is listed as open', () => {
    expect(codes(stated('w', '8', ' '))).toContain('s.w: stated-without-reason');
    expect(codes(stated('w', '8'))).not.toContain('s.w: stated-without-reason');
  });

  test.each([
    ['w', '5 m', 'entry-unit-mismatch'],
    ['w', '', 'stated-blank'],
    ['w', 'heavy', 'entry-not-a-number'],
    ['u', '8', 'stated-kind'],
    ['u', '8 m', 'stated-kind'],
    ['w', 'TRUE', 'entry'],
  ])('%s stated as “%s” is refused: no number is shown for it or what rests on it', (row, entry, code) => {
    const notebook = stated(row, entry);
    expect(said(notebook, `s.${row}`)).toContain(code);
    expect(notebook.result('s.c').status).not.toBe('ok');
    expect(codes(notebook).some((one) => one.startsWith(`s.${row}: `) && one.includes(code))).toBe(true);
  });

  test('may be a text, also one that looks like a number', () => {
    expect(said(stated('t', 'medium'), 's.t')).toBe('medium');
    expect(said(stated('t', '12'), 's.t')).toBe('12');
  });

  test('with its unit settles a line that states none', () => {
    const notebook = stated('u', '2 kip');
    expect(notebook.result('s.u')).toMatchObject({ value: { si: 2 * 4448.2216152605 } });
    expect(notebook.verdict('s.c')?.holds).toBe(true);
  });
});

describe('a stated side of a check', () => {
  const check = rows[5] as Extract<Row, { kind: 'check' }>;
  const sided = (side: 'demand' | 'capacity', entry: string) =>
    applied(openNotebook(book), stateSide(place('c'), check, side, { entry, reason: 'client’s criteria' }));

  test('is what the check compares', () => {
    expect(sided('capacity', '6').verdict('s.c')).toMatchObject({ holds: false, capacity: { si: 6000 } });
    expect(sided('capacity', '7').verdict('s.c')).toMatchObject({ holds: true, utilisation: 1 });
    expect(sided('demand', '11').verdict('s.c')).toMatchObject({ holds: false, demand: { si: 11_000 } });
    expect(sided('demand', '11').computed('s.c', 'demand')).toMatchObject({ value: { si: 7000 } });
    expect(sided('demand', '11').computed('s.c', 'capacity')).toBeUndefined();
  });

  test('of a difference held against 0 replaces it whole', () => {
    const zero = rows[6] as Extract<Row, { kind: 'check' }>;
    const notebook = applied(
      openNotebook(book),
      stateSide(place('z'), zero, 'demand', { entry: '4 kN', reason: 'a margin' }),
    );
    expect(notebook.verdict('s.z')).toMatchObject({
      holds: false,
      demand: { si: 4000 },
      capacity: { si: 3000 },
    });
  });

  test('of another dimension gives no verdict', () => {
    const notebook = sided('capacity', '3 m');
    expect(notebook.verdict('s.c')).toBeUndefined();
    expect(notebook.result('s.c').status).toBe('problem');
  });

  test('of a check that compares no demand with a capacity is refused: stated-no-side', () => {
    const equal: Row = { id: 'c', kind: 'check', name: 'c', formula: 'u = 7 kN' };
    const notebook = applied(
      openNotebook(book),
      replaceRow(place('c'), equal),
      stateSide(place('c'), equal, 'demand', { entry: '7 kN', reason: 'a note' }),
    );
    expect(codes(notebook)).toContain('s.c: stated-no-side');
    expect(notebook.result('s.c').status).toBe('problem');
  });

  const failing = (formula: string, side: 'demand' | 'capacity', entry: string) => {
    const row: Row = { id: 'c', kind: 'check', name: 'c', formula, unit: 'kN' };
    const change = stateSide(place('c'), row, side, { entry, reason: 'client’s criteria' });
    return applied(openNotebook(book), replaceRow(place('c'), row), change);
  };

  test.each([
    ['nosuch <= 10 kN', 'demand', '4', true],
    ['nosuch <= 10 kN', 'demand', '12', false],
    ['u >= nosuch * 2', 'demand', '6', true],
    ['u <= 3 m * nosuch', 'capacity', '6 kN', false],
    ['b * 3 <= u', 'demand', '7', true],
  ] as const)('of %s stands where its formula fails: %s %s', (formula, side, entry, holds) => {
    const notebook = failing(formula, side, entry);
    expect(notebook.verdict('s.c')).toMatchObject({ holds });
    expect(codes(notebook).filter((one) => one.startsWith('s.c'))).toEqual(['s.c: stated-formula-fails']);
    expect(notebook.computed('s.c', side)?.status).toBe('problem');
    expect(openNotebook(notebook.book).verdict('s.c')).toMatchObject({ holds });
  });

  test.each([
    ['nosuch <= 10 kN', 'capacity', '4'],
    ['nosuch <= other', 'demand', '4'],
    ['nosuch = 10 kN', 'demand', '4'],
    ['nosuch <= 10 kN', 'demand', '4 m'],
  ] as const)('of %s gives no verdict where the rest is not sound: %s %s', (formula, side, entry) => {
    const notebook = failing(formula, side, entry);
    expect(notebook.verdict('s.c')).toBeUndefined();
    expect(notebook.problems().some(({ cell, severity }) => cell === 's.c' && severity === 'error')).toBe(
      true,
    );
  });

  test('whose formula fails agrees with the second engine, and taken back the check fails again', async () => {
    const notebook = failing('nosuch <= 10 kN', 'demand', '4');
    const { program, values } = recheckProgram(notebook);
    expect((await recheck(program, values)).findings).toEqual([]);
    const now = findRow(findSheet(notebook.book, 's') as Book['sheets'][number], 'c')?.row;
    if (now?.kind !== 'check') throw new Error('the check is gone');
    applied(notebook, stateSide(place('c'), now, 'demand', undefined));
    expect(notebook.verdict('s.c')).toBeUndefined();
    expect(codes(notebook)).toContain('s.c: name-unknown');
  });

  test('taken back leaves the check as it was', () => {
    const notebook = sided('capacity', '6');
    const now = findRow(findSheet(notebook.book, 's') as Book['sheets'][number], 'c')?.row;
    if (now?.kind !== 'check') throw new Error('the check is gone');
    applied(notebook, stateSide(place('c'), now, 'capacity', undefined));
    expect(notebook.book).toEqual(book);
  });
});

const folder = fileURLToPath(new URL('../../templates/', import.meta.url));

function shipped(id: string): Book {
  const opened = openBook(readFileSync(`${folder}${id}/book.quaybook.json`, 'utf8'));
  if (!opened.ok) throw new Error(opened.problems.map(({ message }) => message).join('\n'));
  return opened.value.book;
}

/** What every line of a book comes to, in words of its own. */
function everything(notebook: Notebook): ReadonlyMap<string, string> {
  const lines = [...notebook.model.items.values()].filter(
    ({ kind }) => kind === 'input' || kind === 'formula',
  );
  return new Map(
    lines.map(({ id }) => {
      const read = notebook.result(id);
      return [id, read.status === 'ok' ? JSON.stringify(read.value) : read.status];
    }),
  );
}

describe.each(readdirSync(folder))('%s', (id) => {
  const start = shipped(id);
  const opened = openNotebook(start);
  const lines = [...opened.model.items.values()].flatMap((item) => {
    if (item.kind !== 'formula' || item.row.kind !== 'calc' || !item.unit) return [];
    const read = opened.result(item.id);
    if (read.status !== 'ok' || read.value.kind !== 'number') return [];
    const sheet = findSheet(start, item.sheet);
    const found = sheet && findRow(sheet, item.row.name);
    return found ? [{ ...found, item, si: read.value.si, unit: item.unit }] : [];
  });

  test('a stated line does what a given in its place would, edit by edit as from scratch', () => {
    fc.assert(
      fc.property(fc.nat(lines.length - 1), fc.constantFrom(0.9, 1.1, 1.5), (at, factor) => {
        const line = lines[at];
        if (!line) return;
        const entry = writeQuantity(line.si * factor, line.unit, { digits: 6, grouping: 'none' });
        const statement: Statement = { entry, reason: 'a test' };
        const incremental = openNotebook(start);
        const edit = incremental.apply(stateRow(line.place, statement));
        if (!edit.ok) throw new Error(edit.problems[0]?.message);
        const { row } = line;
        const given = openNotebook(start);
        const fields = { id: row.id, name: row.name, unit: line.unit.text };
        const replaced = given.apply(replaceRow(line.place, { kind: 'given', ...fields, entry }));
        if (!replaced.ok) throw new Error(replaced.problems[0]?.message);
        const now = everything(incremental);
        expect(now).toEqual(everything(given));
        expect(now).toEqual(everything(openNotebook(incremental.book)));
        const back = incremental.apply(edit.value.inverse);
        expect(back.ok).toBe(true);
        expect(everything(incremental)).toEqual(everything(opened));
      }),
      { numRuns: 4, seed: 20261128 },
    );
  });

  test('both engines agree on stated and computed values alike', async () => {
    const some = lines.filter((_, at) => at % 7 === 0);
    const notebook = applied(
      openNotebook(start),
      ...some.map(({ place: at, si, unit }) =>
        stateRow(at, {
          entry: writeQuantity(si * 1.05, unit, { digits: 6, grouping: 'none' }),
          reason: 'a test',
        }),
      ),
    );
    const { program, values } = recheckProgram(notebook);
    const report = await recheck(program, values);
    expect(report.findings).toEqual([]);
    const computed = (of: Notebook) =>
      recheckProgram(of)
        .program.cells.map((one) => one.id)
        .filter((one) => one.endsWith('#computed'));
    // A template may ship stated values of its own.
    const expected = [...computed(opened), ...some.map(({ item }) => `${item.id}#computed`)];
    expect(new Set(computed(notebook))).toEqual(new Set(expected));
  });
});

describe('a stated cell of a calculated column', () => {
  const columns = [
    { id: 'k', kind: 'given', name: 'k', type: 'text', chunks: [['a', 'b', 'c']] },
    { id: 'h', kind: 'given', name: 'h', unit: 'm', chunks: [[1, 2, 3]] },
    { id: 'v', kind: 'calc', name: 'v', formula: 'h * 2 (m^2)', unit: 'm^3' },
    { id: 's', kind: 'calc', name: 's', formula: 'ABOVE(s; 0 (m^3)) + v', unit: 'm^3' },
    { id: 'm', kind: 'calc', name: 'm', formula: 'IF(h > 2 m; "deep"; "shallow")' },
    { id: 'x', kind: 'calc', name: 'x', formula: 'nosuch * h', unit: 'm' },
  ] as const satisfies readonly Column[];
  const tabled: Book = {
    ...blankBook(),
    sheets: [
      {
        key: 's',
        title: 'S',
        parts: [
          { id: 't', kind: 'table', name: 't', length: 3, columns },
          {
            id: 'p',
            kind: 'rows',
            rows: [{ id: 'V', kind: 'calc', name: 'V', formula: 'SUM(t.v)', unit: 'm^3' }],
          },
        ],
      },
    ],
  };
  const at = { sheet: 's', table: 't' };
  const stating = (column: 'v' | 's' | 'm' | 'x', row: number, entry: string) => {
    const source = columns.find(({ id }) => id === column);
    if (source?.kind !== 'calc') throw new Error('no such column');
    return stateCell({ ...at, column }, source, row, { entry, reason: 'measured' });
  };
  const table = (notebook: Notebook): Table => {
    const part = notebook.book.sheets[0]?.parts[0];
    if (part?.kind !== 'table') throw new Error('the table is gone');
    return part;
  };
  const values = (notebook: Notebook, column: string) => {
    const read = notebook.column(`s.t.${column}`);
    if (read.status !== 'ok') return [read.status];
    return Array.from({ length: read.reading.length }, (_, row) => {
      const one = read.reading.at(row);
      return one.status === 'ok' ? one.value : one.status;
    });
  };

  test('is used wherever its row is; the computed one is still worked out', () => {
    const notebook = applied(openNotebook(tabled), stating('v', 2, '10'));
    expect(values(notebook, 'v')).toEqual([2, 10, 6]);
    expect(values(notebook, 's')).toEqual([2, 12, 18]);
    expect(said(notebook, 's.V')).toBe('18 m^3');
    const beside = notebook.computedColumn('s.t.v');
    expect(beside?.status === 'ok' && [...beside.reading.values]).toEqual([2, 4, 6]);
    expect(notebook.computedColumn('s.t.s')).toBeUndefined();
  });

  test('in a column that follows from the row above carries on from there', () => {
    const notebook = applied(openNotebook(tabled), stating('s', 2, '100'));
    expect(values(notebook, 's')).toEqual([2, 100, 106]);
  });

  test('follows its row through rows put in, taken out and put back', () => {
    const notebook = applied(openNotebook(tabled), stating('v', 2, '10'));
    const rows = { length: 1, cells: { k: ['new'], h: [5] } };
    applied(notebook, insertTableRows(at, table(notebook), 0, rows));
    expect(values(notebook, 'v')).toEqual([10, 2, 10, 6]);
    const out = notebook.apply(removeTableRows(at, 2, 1));
    expect(values(notebook, 'v')).toEqual([10, 2, 6]);
    if (!out.ok) throw new Error('the row stays');
    applied(notebook, out.value.inverse);
    expect(values(notebook, 'v')).toEqual([10, 2, 10, 6]);
    applied(notebook, removeTableRows(at, 2, 1), insertTableRows(at, table(notebook), 2, rows));
    expect(values(notebook, 'v')).toEqual([10, 2, 10, 6]);
    expect(table(notebook).ids).toMatchObject({ next: 6 });
  });

  test('may be a text, and stands where the formula fails', () => {
    const notebook = applied(openNotebook(tabled), stating('m', 3, 'medium'), stating('x', 1, '7'));
    expect(values(notebook, 'm')).toEqual(['shallow', 'shallow', 'medium']);
    expect(values(notebook, 'x')[0]).toBe(7);
    expect(values(notebook, 'x').slice(1)).not.toContainEqual(expect.any(Number));
    expect(codes(notebook)).toContain('s.t.x: stated-formula-fails');
  });

  test('without a reason is listed as open, by its row', () => {
    const source = columns[2];
    const edit = stateCell({ ...at, column: 'v' }, source, 2, { entry: '10', reason: '' });
    const notebook = applied(openNotebook(tabled), edit);
    const open = notebook.problems().find(({ code }) => code === 'stated-cells-without-reason');
    expect(open).toMatchObject({ severity: 'warning', cell: 's.t.v', data: { cells: 1, first: 2 } });
  });

  test('that cannot be read leaves its row without a value, not with the computed one', () => {
    const notebook = applied(openNotebook(tabled), stating('v', 2, '10 kN'));
    expect(values(notebook, 'v')).toEqual([2, 'problem', 6]);
    expect(notebook.result('s.V').status).not.toBe('ok');
  });

  test('both engines agree on it', async () => {
    const notebook = applied(
      openNotebook(tabled),
      stating('v', 2, '10'),
      stating('s', 1, '7'),
      stating('m', 3, 'medium'),
    );
    const { program, values: read } = recheckProgram(notebook);
    const report = await recheck(program, read);
    expect(report.findings).toEqual([]);
    expect(report.agree).toBeGreaterThan(25);
  });

  test('of a table whose rows a series makes is refused, for its rows are made anew', () => {
    const made: Book = {
      ...blankBook(),
      sheets: [
        {
          key: 's',
          title: 'S',
          parts: [
            {
              id: 't',
              kind: 'table',
              name: 't',
              columns: [
                { id: 'z', kind: 'series', name: 'z', formula: 'SERIES(0; 3; 1)' },
                { id: 'v', kind: 'calc', name: 'v', formula: 'z * 2' },
              ],
            },
          ],
        },
      ],
    };
    const outcome = openNotebook(made).apply(
      stateCell({ ...at, column: 'v' }, { id: 'v', kind: 'calc', name: 'v', formula: 'z * 2' }, 1, {
        entry: '5',
        reason: '',
      }),
    );
    expect(outcome.ok ? 'taken' : outcome.problems[0]?.code).toBe('book-table-series');
  });
});

test('a stated value that equals the computed one but for rounding differs by nothing, and by one digit more it does', () => {
  expect(3 * 1.1).not.toBe(3.3);
  const differing = (formula: string, entry: string, unit: string) => {
    const line: Row = {
      id: 'x',
      kind: 'calc',
      name: 'x',
      formula,
      unit,
      stated: { entry, reason: 'by hand' },
    };
    const notebook = openNotebook({
      ...blankBook(),
      sheets: [{ key: 's', title: 'S', parts: [{ id: 'p', kind: 'rows', rows: [line] }] }],
    });
    return statedValues(notebook).map(({ difference }) => difference?.si);
  };
  expect(differing('3 * 1.1 m', '3.3', 'm')).toEqual([0]);
  expect(differing('0.1 + 0.2', '0.3', '-')).toEqual([0]);
  expect(differing('0.5 + 0.25', '0.7500001', '-')[0]).toBeCloseTo(1e-7, 12);
});
