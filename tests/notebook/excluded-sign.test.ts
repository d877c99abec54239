import { describe, expect, test } from 'vitest';
import type { Range, Row } from '../../src/document/index.ts';
import { type Notebook, openNotebook, setNamed, tryEntry, tryStated } from '../../src/notebook/index.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf } from '../make-book.ts';

const codes = (notebook: Notebook) =>
  notebook.problems().map(({ cell, code, severity }) => `${severity} ${code} ${cell}`);

const check: Row = { id: 'c', kind: 'check', name: 'c', formula: 'P <= A * f' };

/** A check of a load against a strength times an area, with the range of the strength and the entry given. */
const bar = (entry: string, range: Range, f: Row = { ...given('f', entry, 'MPa'), range }) =>
  openNotebook(bookOf({ s: [blockOf('p', given('P', '-40 kN', 'kN'), given('A', '100 mm^2'), f, check)] }));

describe('a given of the sign that its permitted range leaves out', () => {
  test.each(['0 MPa', '5 MPa', '2 ksi'])('is no value where the range begins at %s', (min) => {
    const notebook = bar('-355', { min });
    expect(codes(notebook)).toContain('error sign-excluded s.f');
    expect(notebook.result('s.f').status).not.toBe('ok');
    expect(notebook.verdict('s.c')).toBeUndefined();
  });

  test('is said with value and limit', () => {
    const [found] = bar('-355', { min: '0 MPa' }).problems();
    expect(found?.message).toBe(
      '-355 MPa is negative, and the permitted range begins at 0 MPa: nothing is computed with it',
    );
  });

  test('is said with the note of its line, which may tell how it is entered', () => {
    const row = { ...given('f', '-355', 'MPa'), range: { min: '0 MPa' } };
    const [bare] = bar('', {}, row).problems();
    expect(bare?.hints).toEqual(['correct the sign, or widen the range of the line where this is meant']);
    const [noted] = bar('', {}, { ...row, note: 'Tension is entered above zero.' }).problems();
    expect(noted?.hints).toEqual([`${bare?.hints[0]}; its note says: Tension is entered above zero.`]);
  });

  test('is no value where it is positive and the range ends at zero or below', () => {
    expect(codes(bar('355', { max: '-1 MPa' }))).toContain('error sign-excluded s.f');
    expect(codes(bar('355', { max: '0 MPa' }))).toContain('error sign-excluded s.f');
  });

  test.each<[string, Range]>([
    ['1', { min: '5 MPa' }],
    ['0', { min: '5 MPa' }],
    ['-355', { max: '-400 MPa' }],
    ['900', { min: '5 MPa', max: '700 MPa' }],
  ])('%s in %j is beyond it in size alone, and computed with', (entry, range) => {
    const notebook = bar(entry, range);
    expect(codes(notebook)).toEqual(['warning out-of-range s.f']);
    expect(notebook.verdict('s.c')?.holds).toBe(true);
  });

  test('comes and goes with the entry', () => {
    const notebook = bar('355', { min: '0 MPa' });
    for (const [entry, holds] of [
      ['-1', undefined],
      ['1', true],
      ['-0.001 ksi', undefined],
    ] as const) {
      const edit = setNamed(notebook.book, 's.f', entry, '');
      if (!edit.ok) throw new Error('f cannot be set');
      notebook.apply(edit.value);
      expect(notebook.verdict('s.c')?.holds).toBe(holds);
    }
  });

  test('is told while it is typed', () => {
    const notebook = bar('355', { min: '0 MPa' });
    expect(tryEntry(notebook, 's.f', '-2').problems).toMatchObject([{ code: 'sign-excluded' }]);
    expect(tryEntry(notebook, 's.f', '-2').value).toBeUndefined();
  });

  test('a level below its datum is no negative value', () => {
    const book = bookOf({
      s: [blockOf('p', { ...given('z', '-3 m CD', 'm CD'), range: { min: '0 m CD' } })],
    });
    const notebook = openNotebook({
      ...book,
      settings: { ...book.settings, datums: ['CD'] },
    });
    expect(codes(notebook)).not.toContain('error sign-excluded s.z');
  });
});

describe('a stated value of the sign that a permitted range leaves out', () => {
  const stated = (entry: string, range?: Range): Row => ({
    ...calc('f', { formula: '2 * 100 MPa', unit: 'MPa' }),
    ...(range && { range }),
    stated: { entry, reason: 'letter' },
  });

  test('lets no check be judged, and not the computed one stand in for it', () => {
    const notebook = bar('', {}, stated('-9', { min: '0 MPa' }));
    expect(codes(notebook)).toContain('error sign-excluded s.f');
    expect(notebook.verdict('s.c')).toBeUndefined();
    expect(notebook.computed('s.f')).toMatchObject({ status: 'ok', value: { si: 200e6 } });
  });

  test('is used where the range says nothing of it', () => {
    expect(bar('', {}, stated('9', { min: '0 MPa' })).verdict('s.c')?.holds).toBe(true);
    expect(bar('', {}, stated('-9')).verdict('s.c')?.holds).toBeDefined();
  });

  test('is told while it is typed', () => {
    const notebook = bar(
      '',
      {},
      { ...calc('f', { formula: '2 * 100 MPa', unit: 'MPa' }), range: { min: '0 MPa' } },
    );
    expect(tryStated(notebook, { id: 's.f' }, '-9').problems).toMatchObject([{ code: 'sign-excluded' }]);
  });
});

describe('a cell of the sign that the permitted range of its column leaves out', () => {
  const table = (extra: object) =>
    tableOf('t', 3, { ...numbers('a', 'm', [1, -2, 3]), ...extra }, calcColumn('b', '2 * a'));

  test('is no value in its row alone', () => {
    const notebook = openNotebook(
      bookOf({ s: [table({ range: { min: '0 m' } }), blockOf('p', calc('n', 'SUM(t.a)'))] }),
    );
    const column = notebook.column('s.t.b');
    if (column.status !== 'ok') throw new Error('b is no column');
    expect([0, 1, 2].map((row) => column.reading.at(row).status)).toEqual(['ok', 'waiting', 'ok']);
    expect(notebook.result('s.n').status).not.toBe('ok');
    expect(notebook.problems()[0]?.message).toContain('-2 m is negative');
    expect(notebook.problems()[0]?.cell).toBe('s.t.a');
  });

  test('is a value where the range leaves room for it', () => {
    const notebook = openNotebook(
      bookOf({ s: [table({ range: { min: '-5 m' } }), blockOf('p', calc('n', 'SUM(t.a)'))] }),
    );
    expect(notebook.result('s.n')).toMatchObject({ status: 'ok', value: { si: 2 } });
  });
});
