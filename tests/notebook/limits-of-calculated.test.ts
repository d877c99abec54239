import { describe, expect, test } from 'vitest';
import { type Calc, type Check, type Row, stateRow, stateSide } from '../../src/document/index.ts';
import { type Notebook, openNotebook, setNamed, tryStated } from '../../src/notebook/index.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf } from '../make-book.ts';

const remarks = (notebook: Notebook) =>
  notebook.problems().map(({ cell, code, severity, message }) => ({ cell, code, severity, message }));

describe('the permitted range of a calculated line', () => {
  const line: Calc = {
    ...calc('w', { formula: 'b * 2 (kN/m)', unit: 'kN' }),
    range: { min: '1', max: '10 kN' },
  };
  const open = (row: Row = line) => openNotebook(bookOf({ s: [blockOf('p', given('b', '3 m', 'm'), row)] }));
  const stated = (entry: string): Row => ({ ...line, stated: { entry, reason: 'letter' } });

  test('is kept by what it computes: nothing is said', () => {
    expect(remarks(open())).toEqual([]);
  });

  test('beyond it the computed value is remarked, as soon as it lies there', () => {
    const notebook = open();
    const edit = setNamed(notebook.book, 's.b', '6 m', '');
    if (!edit.ok) throw new Error('b cannot be set');
    notebook.apply(edit.value);
    expect(remarks(notebook)).toEqual([
      {
        cell: 's.w',
        code: 'out-of-range',
        severity: 'warning',
        message: '12 kN is above the permitted range: at most 10 kN',
      },
    ]);
  });

  test('beyond it the stated value is remarked, and still used', () => {
    const notebook = open(stated('11'));
    expect(remarks(notebook).map(({ code }) => code)).toEqual(['out-of-range']);
    expect(notebook.result('s.w')).toMatchObject({ status: 'ok', value: { si: 11_000 } });
    expect(remarks(open(stated('0.5'))).map(({ message }) => message)).toEqual([
      'the stated value, 0.5 kN, is far from the computed 6 kN',
      '0.5 kN is below the permitted range: at least 1',
    ]);
  });

  test('is told of while the value is typed', () => {
    const trial = tryStated(open(), { id: 's.w' }, '11');
    expect(trial.problems.map(({ code }) => code)).toEqual(['out-of-range']);
    expect(tryStated(open(), { id: 's.w' }, '9').problems).toEqual([]);
  });

  test('without a unit column needs limits with their unit', () => {
    const { unit: _, ...bare } = line;
    expect(remarks(open(bare)).map(({ code, cell }) => [code, cell])).toEqual([
      ['range-without-unit', 's.w'],
    ]);
    expect(remarks(open({ ...bare, range: { max: '5 kN' } })).map(({ code }) => code)).toEqual([
      'out-of-range',
    ]);
    expect(remarks(open({ ...bare, range: { max: '2 kip' } }))).toEqual([]);
  });
});

describe('the permitted range of a calculated column', () => {
  const tableWith = (column: Parameters<typeof calcColumn>[1], extra: object) =>
    openNotebook(
      bookOf({
        s: [tableOf('t', 3, numbers('a', 'm', [1, 2, 3]), { ...calcColumn('c', column), ...extra })],
      }),
    );

  test('is held against computed and stated cells', () => {
    const range = { max: '5 m' };
    const computed = tableWith({ formula: '2 * a', unit: 'm' }, { range });
    expect(remarks(computed)).toEqual([
      {
        cell: 's.t.c',
        code: 'column-out-of-range',
        severity: 'warning',
        message: 'the cell in row 3 is beyond the permitted range (at most 5 m)',
      },
    ]);
    const stated = [
      { row: 1, entry: '9 m', reason: 'letter' },
      { row: 3, entry: '4 m', reason: 'letter' },
    ];
    const other = tableWith({ formula: '2 * a', unit: 'm' }, { range, stated });
    expect(remarks(other)[0]?.message).toBe('the cell in row 1 is beyond the permitted range (at most 5 m)');
  });

  test('without a unit column is refused', () => {
    const found = remarks(tableWith('2 * a', { range: { max: '5' } }));
    expect(found.map(({ code }) => code)).toEqual(['range-without-unit']);
  });
});

describe('a stated capacity that is not above zero never lets a check hold', () => {
  const check: Check = { id: 'c', kind: 'check', name: 'c', formula: 'd <= R', unit: 'kN' };
  const rows: readonly Row[] = [
    given('d', '-20 kN', 'kN'),
    given('f', '3 kN', 'kN'),
    calc('R_1', { formula: '2 * f', unit: 'kN' }),
    calc('R', { formula: 'R_1', unit: 'kN' }),
    calc('z', { formula: '-1 * f', unit: 'kN' }),
    check,
  ];
  const open = () => openNotebook(bookOf({ s: [blockOf('p', ...rows)] }));
  const place = (row: string) => ({ sheet: 's', part: 'p', row });
  const codes = (notebook: Notebook) =>
    remarks(notebook).map(({ code, cell, severity }) => `${cell}: ${code} ${severity}`);

  test.each(['0 kN', '-5 kN', '0', '-0.001 kip'])('a side stated as %s is refused', (entry) => {
    const notebook = open();
    expect(notebook.verdict('s.c')?.holds).toBe(true);
    notebook.apply(stateSide(place('c'), check, 'capacity', { entry, reason: 'letter' }));
    expect(codes(notebook)).toContain('s.c: stated-capacity-not-positive error');
    expect(notebook.verdict('s.c')).toBeUndefined();
  });

  test.each(['R', 'R_1'])('a line that is the capacity, or gives it, is refused: %s', (line) => {
    const notebook = open();
    notebook.apply(stateRow(place(line), { entry: '-5 kN', reason: 'letter' }));
    expect(codes(notebook)).toContain(`s.${line}: stated-capacity-not-positive error`);
    expect(notebook.verdict('s.c')).toBeUndefined();
    expect(tryStated(open(), { id: `s.${line}` }, '0 kN').problems[0]?.message).toBe(
      '“0 kN” is no capacity of the check c: it is not above zero',
    );
  });

  test('one above zero, a demand below zero and any other line are taken', () => {
    const notebook = open();
    notebook.apply(stateSide(place('c'), check, 'capacity', { entry: '5 kN', reason: 'letter' }));
    notebook.apply(stateRow(place('z'), { entry: '-5 kN', reason: 'letter' }));
    expect(codes(notebook)).toEqual([]);
    expect(notebook.verdict('s.c')).toMatchObject({ holds: true, capacity: { si: 5000 } });
  });

  test('of an elevation below zero is taken', () => {
    const level: Check = { id: 'l', kind: 'check', name: 'l', formula: 'top <= bed' };
    const notebook = openNotebook(
      bookOf({ s: [blockOf('p', given('top', '-9 m CD', 'm CD'), given('bed', '-4 m CD', 'm CD'), level)] }),
    );
    notebook.apply(stateSide(place('l'), level, 'capacity', { entry: '-6 m CD', reason: 'survey' }));
    expect(codes(notebook).filter((found) => found.includes('not-positive'))).toEqual([]);
  });
});

describe('the end of a permitted range', () => {
  const codes = (formula: string, range: Calc['range']) => {
    const line: Calc = { ...calc('L', { formula, unit: 'm' }), ...(range && { range }) };
    const column = { ...calcColumn('L', { formula, unit: 'm' }), ...(range && { range }) };
    const book = bookOf({ s: [blockOf('p', line), tableOf('t', 1, numbers('n', 'm', [1]), column)] });
    return remarks(openNotebook(book)).map(({ code }) => code);
  };

  test('is met by what comes to it but for the last bits of a computation', () => {
    expect(3 * 1.1).toBeGreaterThan(3.3);
    expect(codes('3 * 1.1 m', { max: '3.3 m' })).toEqual([]);
    expect(0.7 + 0.1).toBeLessThan(0.8);
    expect(codes('0.7 m + 0.1 m', { min: '0.8 m' })).toEqual([]);
  });

  test('is exceeded by more than a part in 1e12', () => {
    expect(codes('3.3 m * (1 + 0.0000000000012)', { max: '3.3 m' })).toEqual([
      'out-of-range',
      'column-out-of-range',
    ]);
    expect(codes('3.3 m * (1 - 0.0000000000012)', { min: '3.3 m' })).toEqual([
      'out-of-range',
      'column-out-of-range',
    ]);
  });
});
