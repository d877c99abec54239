import { describe, expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import { type Check, type Row, setEntry, stateCells, stateRow, stateSide } from '../../src/document/index.ts';
import { enterValues, type Notebook, openNotebook } from '../../src/notebook/index.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf } from '../make-book.ts';

const check = (name: string, formula: string, more: Partial<Check> = {}): Check => ({
  id: name,
  kind: 'check',
  name,
  formula,
  ...more,
});
const open = (...rows: readonly Row[]): Notebook => openNotebook(bookOf({ s: [blockOf('p', ...rows)] }));
const at = (row: string) => ({ sheet: 's', part: 'p', row });
const words = (notebook: Notebook, id = 's.c'): string | undefined => {
  notebook.judgeStated();
  return notebook.easedBy(id)?.message;
};
const beam = (...more: readonly Row[]) =>
  open(
    given('P', '60 kN', 'kN'),
    calc('R', { formula: '2 * P', unit: 'kN' }),
    calc('w', { formula: 'R + 10 kN', unit: 'kN' }),
    calc('F', { formula: '200 kN', unit: 'kN' }),
    check('c', 'w <= F', { unit: 'kN' }),
    check('d', 'F >= 50 kN', { unit: 'kN' }),
    ...more,
  );
const state = (notebook: Notebook, row: string, entry: string): Notebook => {
  if (!notebook.apply(stateRow(at(row), { entry, reason: 'measured' })).ok)
    throw new Error(`${row} takes none`);
  return notebook;
};

describe('a check says which stated values ease it: eased-by-stated', () => {
  test('a demand that is stated lower, several lines away', () => {
    const notebook = state(beam(), 'R', '90 kN');
    expect(words(notebook)).toBe('eased by the stated R, 90 kN for 120 kN');
    expect(notebook.easedBy('s.c')).toMatchObject({ cell: 's.c', data: { by: ['s.R'] } });
    expect(words(notebook, 's.d')).toBeUndefined();
  });

  test('a capacity that is stated higher eases each check that rests on it', () => {
    const notebook = state(beam(), 'F', '260 kN');
    expect(words(notebook)).toBe('eased by the stated F, 260 kN for 200 kN');
    expect(words(notebook, 's.d')).toBe('eased by the stated F, 260 kN for 200 kN');
  });

  test.each([
    ['a demand stated higher', 'R', '190 kN'],
    ['a capacity stated lower', 'F', '140 kN'],
    ['a demand within a fifth', 'R', '100 kN'],
    ['a capacity within a fifth', 'F', '240 kN'],
  ])('%s is not told', (_, row, entry) => {
    expect(words(state(beam(), row, entry))).toBeUndefined();
  });

  test('a check that would fail, or have no value, with the computed one', () => {
    const fails = state(
      open(given('P', '60 kN', 'kN'), calc('R', { formula: '2 * P', unit: 'kN' }), check('c', 'R <= 100 kN')),
      'R',
      '90 kN',
    );
    expect(fails.verdict('s.c')?.holds).toBe(true);
    expect(words(fails)).toBe('holds only by the stated R, 90 kN for 120 kN');
    const unknown = open(
      given('P', '60 kN', 'kN'),
      calc('R', { formula: 'IFS(P < 50 kN; 2 * P)', unit: 'kN' }),
      check('c', 'R <= 100 kN'),
    );
    expect(words(state(unknown, 'R', '90 kN'))).toBe('holds only by the stated R, 90 kN for no value');
    expect(unknown.easedBy('s.c')?.data.only).toBe(true);
  });

  test('a check that would fail with the computed one, however near', () => {
    const near = open(calc('R', { formula: '101 kN', unit: 'kN' }), check('c', 'R <= 100 kN'));
    expect(words(state(near, 'R', '99 kN'))).toBe('holds only by the stated R, 99 kN for 101 kN');
    const level = open(
      given('z', 'El. 3 m CD', 'm CD'),
      calc('y', { formula: 'z + 1 m', unit: 'm CD' }),
      check('c', 'y - z <= 0.5 m'),
    );
    expect(words(state(level, 'y', 'El. 3.2 m CD'))).toMatch(/^holds only by the stated y, /);
    const text = open(calc('t', { formula: '"sand"' }), check('c', 't = "clay"'));
    expect(words(state(text, 't', 'clay'))).toBe('holds only by the stated t, clay for sand');
  });

  test('two that only together make it hold', () => {
    const sum = (): Notebook =>
      open(
        calc('a', { formula: '60 kN', unit: 'kN' }),
        calc('b', { formula: '60 kN', unit: 'kN' }),
        calc('k', { formula: '1', unit: '-' }),
        check('c', 'k*(a + b) <= 115 kN'),
        check('d', 'MIN(a; b) <= 50 kN'),
      );
    const both = state(state(sum(), 'a', '55 kN'), 'b', '54 kN');
    expect(words(both)).toBe('holds only by the stated a and b (a: 55 kN for 60 kN)');
    // A stated value that makes it worse hides nothing.
    const beside = state(state(state(sum(), 'a', '55 kN'), 'b', '54 kN'), 'k', '1.05');
    expect(words(beside)).toBe('holds only by the stated a and b (a: 55 kN for 60 kN)');
    // The least of two is eased by neither alone.
    const least = state(state(sum(), 'a', '45 kN'), 'b', '45 kN');
    expect(words(least, 's.d')).toBe('holds only by the stated a and b (a: 45 kN for 60 kN)');
    expect(least.verdict('s.d')?.demand).toMatchObject({ si: 45_000 });
  });

  test('a stated value that passes through another stated one eases nothing', () => {
    const notebook = state(state(beam(), 'R', '90 kN'), 'w', '130 kN');
    expect(words(notebook)).toBeUndefined();
  });

  test('several, the first of them with its numbers', () => {
    const notebook = state(state(beam(), 'R', '90 kN'), 'F', '260 kN');
    expect(words(notebook)).toBe('eased by the stated R and F (R: 90 kN for 120 kN)');
  });

  test('a stated side of the check itself', () => {
    const row = check('c', 'w <= F', { unit: 'kN' });
    const notebook = open(given('w', '100 kN', 'kN'), calc('F', { formula: '200 kN', unit: 'kN' }), row);
    notebook.apply(stateSide(at('c'), row, 'capacity', { entry: '300 kN', reason: 'letter' }));
    expect(words(notebook)).toBe('eased by the stated capacity, 300 kN for 200 kN');
    notebook.apply(stateSide(at('c'), row, 'capacity', { entry: '150 kN', reason: 'letter' }));
    expect(words(notebook)).toBeUndefined();
  });

  test('cells of a column', () => {
    const column = calcColumn('w', { formula: '2 * t', unit: 'm' });
    const notebook = openNotebook(
      bookOf({
        s: [
          tableOf('x', 3, numbers('t', 'm', [1, 2, 3]), column),
          blockOf('p', check('c', 'MAX(x.w) <= 7 m')),
        ],
      }),
    );
    const place = { sheet: 's', table: 'x', column: 'w' };
    expect(
      notebook.apply(stateCells(place, column, new Map([[3, { entry: '4', reason: 'letter' }]]))).ok,
    ).toBe(true);
    expect(words(notebook)).toBe('eased by the stated x.w, 4 m for 6 m');
    expect(notebook.column('s.x.w')).toMatchObject({ status: 'ok' });
    expect(notebook.verdict('s.c')?.demand?.si).toBe(4);
  });

  test('levels have no size to compare', () => {
    const notebook = open(
      given('z', 'El. 3 m CD', 'm CD'),
      calc('y', { formula: 'z + 1 m', unit: 'm CD' }),
      check('c', 'y - z <= 2 m'),
    );
    expect(words(state(notebook, 'y', 'El. 1 m CD'))).toBeUndefined();
  });

  test('follows each edit, and leaves every value as it was', () => {
    const notebook = state(beam(), 'R', '90 kN');
    const before = notebook.verdict('s.c');
    expect(words(notebook)).toBeDefined();
    expect(notebook.verdict('s.c')).toEqual(before);
    notebook.apply(setEntry(at('P'), '50 kN'));
    expect(words(notebook)).toBeUndefined();
    notebook.apply(setEntry(at('P'), '80 kN'));
    expect(words(notebook)).toBe('eased by the stated R, 90 kN for 160 kN');
  });
});

test('in a template, a reaction that is low but not far off is told beside each check that leans on it', () => {
  const book = templateBook('fender-energy');
  const notebook = openNotebook(book);
  const edit = enterValues(book, { 'fender.R_d': '1,300 kN' }, 'letter of the maker');
  if (!edit.ok) throw new Error('a value cannot be entered');
  notebook.apply(edit.value);
  const checks = ['fender.c_R', 'panel.c_p', 'wharf.c_H'];
  notebook.judgeStated();
  for (const id of checks) expect(notebook.easedBy(id)?.data.by).toEqual(['fender.R_d']);
  for (const id of ['fender.c_E', 'wharf.c_S', 'ship.c_keel']) expect(notebook.easedBy(id)).toBeUndefined();
  const anew = openNotebook(notebook.book);
  for (const item of notebook.model.items.values())
    if (item.kind === 'formula') expect(notebook.result(item.id), item.id).toEqual(anew.result(item.id));
});

describe('what eases a check is worked out when it is asked for', () => {
  test('an edit takes the remark of what it changes, and the asking tells of which checks something else is said', () => {
    const notebook = state(beam(), 'R', '90 kN');
    expect(notebook.easedBy('s.c')).toBeUndefined();
    expect([...(notebook.judgeStated() ?? [])]).toEqual(['s.c']);
    expect(notebook.easedBy('s.c')?.message).toBe('eased by the stated R, 90 kN for 120 kN');
    expect([...(notebook.judgeStated() ?? [])]).toEqual([]);
    // The check itself is as it was, for it rests on the stated value: it is to be shown without its remark.
    const applied = notebook.apply(setEntry(at('P'), '70 kN'));
    expect(applied.ok && applied.value.changed.has('s.c')).toBe(true);
    expect(notebook.easedBy('s.c')).toBeUndefined();
    expect([...(notebook.judgeStated() ?? [])]).toEqual(['s.c']);
    expect(notebook.easedBy('s.c')?.message).toBe('eased by the stated R, 90 kN for 140 kN');
    notebook.apply(setEntry(at('P'), '50 kN'));
    expect([...(notebook.judgeStated() ?? [])]).toEqual([]);
    expect(notebook.easedBy('s.c')).toBeUndefined();
  });

  test('what an edit does not touch keeps its remark', () => {
    const notebook = state(beam(given('other', '1 m', 'm')), 'R', '90 kN');
    notebook.judgeStated();
    notebook.apply(setEntry(at('other'), '2 m'));
    expect(notebook.easedBy('s.c')?.message).toBe('eased by the stated R, 90 kN for 120 kN');
  });

  test('a check that an edit has failing holds by nothing, before it is asked anew', () => {
    const notebook = state(
      open(given('P', '60 kN', 'kN'), calc('R', { formula: '2 * P', unit: 'kN' }), check('c', 'R <= 100 kN')),
      'R',
      '90 kN',
    );
    expect(words(notebook)).toBe('holds only by the stated R, 90 kN for 120 kN');
    notebook.apply(stateRow(at('R'), { entry: '110 kN', reason: 'measured' }));
    expect(notebook.verdict('s.c')?.holds).toBe(false);
    expect(notebook.easedBy('s.c')).toBeUndefined();
  });

  test('a step at a time, each of which leaves every value as it was', () => {
    const notebook = state(state(beam(), 'R', '90 kN'), 'F', '260 kN');
    const values = () => ['s.R', 's.w', 's.F', 's.c', 's.d'].map((id) => notebook.result(id));
    const before = values();
    let steps = 0;
    const once = { isOver: () => true };
    for (let judged = notebook.judgeStated(once); judged === undefined; judged = notebook.judgeStated(once)) {
      steps += 1;
      expect(values()).toEqual(before);
    }
    // Each alone, then both together.
    expect(steps).toBe(3);
    expect(notebook.easedBy('s.c')?.data).toMatchObject({ by: ['s.R', 's.F'] });
  });

  test('an edit in between has it begin anew', () => {
    const notebook = state(state(beam(), 'R', '90 kN'), 'F', '260 kN');
    expect(notebook.judgeStated({ isOver: () => true })).toBeUndefined();
    state(notebook, 'R', '110 kN');
    notebook.judgeStated();
    expect(notebook.easedBy('s.c')?.data).toMatchObject({ by: ['s.F'] });
  });
});
