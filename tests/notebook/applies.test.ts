import { describe, expect, test } from 'vitest';
import { renameEdit } from '../../src/app/editing/lines/rename.ts';
import {
  type Book,
  blankBook,
  openBook,
  type Row,
  setRowField,
  stateSide,
  type Table,
  writeBook,
} from '../../src/document/index.ts';
import { type Notebook, openNotebook, recheckProgram, setNamed } from '../../src/notebook/index.ts';
import { recheck } from '../../src/recheck/index.ts';
import { findingsOf } from '../../src/record/findings/findings.ts';
import { judge } from '../../src/review/cases/judge.ts';
import { blockOf, bookOf as bookOfSheets, calc, given, tableOf } from '../make-book.ts';

const check = (applies?: string): Row => ({
  id: 'c',
  kind: 'check',
  name: 'c_up',
  formula: 'U <= R',
  unit: 'kN',
  ...(applies !== undefined && { applies }),
});

/** Uplift, which there may be none of, on a pile whose resistance may be unknown. */
function bookOf(applies: string | undefined, uplift = '0 kN', resistance = '-5 kN'): Book {
  const rows: readonly Row[] = [
    { id: 'u', kind: 'given', name: 'U', entry: uplift, unit: 'kN' },
    { id: 'r', kind: 'given', name: 'R', entry: resistance, unit: 'kN' },
    check(applies),
    { id: 'n', kind: 'calc', name: 'n', formula: 'IF(c_up; 1; 2)' },
  ];
  return { ...blankBook(), sheets: [{ key: 's', title: 'S', parts: [{ id: 'p', kind: 'rows', rows }] }] };
}

const place = { sheet: 's', part: 'p', row: 'c' };
const open = (...args: Parameters<typeof bookOf>): Notebook => openNotebook(bookOf(...args));

function set(notebook: Notebook, name: string, entry: string): void {
  const edit = setNamed(notebook.book, name, entry, '');
  if (!edit.ok) throw new Error(`${name} cannot be set`);
  expect(notebook.apply(edit.value).ok).toBe(true);
}

async function agreed(notebook: Notebook): Promise<void> {
  const { program, values } = recheckProgram(notebook);
  const report = await recheck(program, values);
  expect(report.findings).toEqual([]);
}

describe('a check with a condition', () => {
  test('neither holds nor fails where the condition is false, and says it: check-inapplicable', async () => {
    // Without the condition no uplift is more than a resistance below zero: the check would fail.
    expect(open(undefined).verdict('s.c_up')).toMatchObject({ holds: false });
    const notebook = open('U > 0 kN');
    expect(notebook.result('s.c_up')).toMatchObject({
      status: 'inapplicable',
      problem: {
        code: 'check-inapplicable',
        cell: 's.c_up',
        message: 'does not apply: it applies where U > 0 kN, which is not so',
      },
    });
    expect(notebook.verdict('s.c_up')).toBeUndefined();
    expect(notebook.problems().filter(({ cell }) => cell === 's.c_up')).toEqual([]);
    await agreed(notebook);
  });

  test('is judged as ever where it is true, and follows its givens', async () => {
    const notebook = open('U > 0 kN');
    set(notebook, 'U', '2 kN');
    expect(notebook.verdict('s.c_up')).toMatchObject({ holds: false });
    set(notebook, 'R', '4 kN');
    expect(notebook.verdict('s.c_up')).toMatchObject({ holds: true, utilisation: 0.5 });
    await agreed(notebook);
    set(notebook, 'U', '0 kN');
    expect(notebook.result('s.c_up').status).toBe('inapplicable');
    await agreed(notebook);
  });

  test('asks nothing of its sides while it does not apply', () => {
    expect(open('U > 0 kN', '0 kN', '').result('s.c_up').status).toBe('inapplicable');
    expect(open('U > 0 kN', '1 kN', '').result('s.c_up').status).not.toBe('inapplicable');
  });

  test('has no verdict for others to use: what names it waits', () => {
    const notebook = open('U > 0 kN');
    expect(notebook.result('s.n')).toMatchObject({ status: 'waiting' });
    set(notebook, 'U', '1 kN');
    expect(notebook.result('s.n')).toMatchObject({ status: 'ok', value: { si: 2 } });
  });

  test('with a stated side follows the condition too', async () => {
    const notebook = open('U > 0 kN', '1 kN');
    const row = notebook.book.sheets[0]?.parts.flatMap((part) => (part.kind === 'rows' ? part.rows : []))[2];
    if (row?.kind !== 'check') throw new Error('there is no check');
    notebook.apply(stateSide(place, row, 'capacity', { entry: '2 kN', reason: 'test pile' }));
    expect(notebook.verdict('s.c_up')).toMatchObject({ holds: true, utilisation: 0.5 });
    await agreed(notebook);
    set(notebook, 'U', '0 kN');
    expect(notebook.result('s.c_up').status).toBe('inapplicable');
    await agreed(notebook);
  });

  test.each([
    ['U > 0 m', 'problem', 'where it applies:'],
    ['U', 'problem', 'where it applies:'],
    ['nosuch > 0', 'problem', 'nosuch'],
    ['U / 0 > 1 kN', 'problem', 'where it applies:'],
  ])('%s is a problem of the check: applies-fails', (applies, status, words) => {
    const result = open(applies, '1 kN').result('s.c_up');
    expect(result).toMatchObject({ status, problem: { code: 'applies-fails' } });
    expect('problem' in result && result.problem.message).toContain(words);
  });

  test('waits where the condition has a blank', () => {
    const result = open('U > 0 kN', '').result('s.c_up');
    expect(result).toMatchObject({ status: 'waiting', problem: { code: 'blank-cell', from: 0, to: 0 } });
  });

  test('is an edit like any other, and goes into the file', () => {
    const notebook = open(undefined);
    expect(notebook.apply(setRowField(place, 'applies', 'U > 0 kN')).ok).toBe(true);
    expect(notebook.result('s.c_up').status).toBe('inapplicable');
    const again = openBook(writeBook(notebook.book));
    if (!again.ok) throw new Error('the book does not open');
    expect(openNotebook(again.value.book).result('s.c_up').status).toBe('inapplicable');
    notebook.apply(setRowField(place, 'applies', undefined));
    expect(notebook.book).toEqual(bookOf(undefined));
  });

  test('a line that is renamed is renamed in the condition', () => {
    const notebook = open('U > 0 kN');
    const edit = renameEdit({ notebook }, { sheet: 's', part: 'p', item: 'u', field: 'name' }, 'T');
    if (!edit.ok) throw new Error('U cannot be renamed');
    notebook.apply(edit.value);
    const rows = notebook.book.sheets[0]?.parts.flatMap((part) => (part.kind === 'rows' ? part.rows : []));
    expect(rows?.[2]).toMatchObject({ formula: 'T <= R', applies: 'T > 0 kN' });
  });

  test('a case expects that it does not apply, and no verdict agrees with that', () => {
    const idle = open('U > 0 kN');
    const of = (notebook: Notebook, verdict: 'passes' | 'fails' | 'does not apply') =>
      judge(notebook, { name: 'c_up', verdict }).agrees;
    expect([of(idle, 'does not apply'), of(idle, 'passes'), of(idle, 'fails')]).toEqual([true, false, false]);
    const applies = open('U > 0 kN', '1 kN', '2 kN');
    expect([of(applies, 'does not apply'), of(applies, 'passes')]).toEqual([false, true]);
  });
});

describe('what conditions wait for is told once, where it begins', () => {
  const named = ['c_1', 'c_2', 'c_3'];
  const checks = (applies: string): readonly Row[] =>
    named.map((name) => ({ id: name, kind: 'check', name, formula: 'U <= 1 kN', applies }));
  const told = (notebook: Notebook) =>
    findingsOf(notebook).problems.map(({ cell, code }) => `${cell}: ${code}`);
  const statuses = (notebook: Notebook) => named.map((name) => notebook.result(`s.${name}`).status);
  const all = named.map(() => 'waiting');

  test.each([
    ['has no value for what is entered', 'IFS(U > 0 kN; U)', 's.L: no-branch'],
    ['has a formula that cannot be read', 'U + nosuch', 's.L: name-unknown'],
  ])('a line that %s', (_, formula, cause) => {
    const lines = blockOf('l', given('U', '0 kN', 'kN'), calc('L', { formula, unit: 'kN' }));
    const notebook = openNotebook(bookOfSheets({ s: [lines, blockOf('c', ...checks('L > 0 kN'))] }));
    expect(statuses(notebook)).toEqual(all);
    expect(told(notebook)).toEqual([cause]);
    expect(notebook.result('s.c_1')).toMatchObject({
      problem: { message: expect.stringMatching(/^waits on/) },
    });
  });

  test('a blank cell of a table that only conditions read', () => {
    const lines = blockOf('l', given('U', '0 kN', 'kN'));
    const piles: Table = {
      ...tableOf('piles', 2),
      columns: [{ id: 'q', kind: 'given', name: 'q', unit: 'kN', chunks: [[3, null]] }],
    };
    const of = checks('SUM(piles.q) > 0 kN');
    const notebook = openNotebook(bookOfSheets({ s: [lines, piles, blockOf('c', ...of)] }));
    expect(statuses(notebook)).toEqual(all);
    expect(told(notebook)).toEqual(['s.piles.q: row-incomplete']);
  });
});
