import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Calc,
  type Check,
  type Given,
  type Part,
  type Row,
  setCells,
  setEntry,
  setRowField,
  stateRow,
  stateSide,
} from '../../src/document/index.ts';
import { type Notebook, openNotebook, recheckProgram } from '../../src/notebook/index.ts';
import { recheck } from '../../src/recheck/index.ts';
import { judge } from '../../src/review/cases/judge.ts';
import { blockOf, bookOf, calc, calcColumn, choice, given, numbers, tableOf } from '../make-book.ts';

const check = (name: string, formula: string, more: Partial<Check> = {}): Check => ({
  id: name,
  kind: 'check',
  name,
  formula,
  ...more,
});
const ranged = <R extends Given | Calc>(row: R, min: string, max: string): R => ({
  ...row,
  range: { min, max },
});
const open = (...rows: readonly Row[]): Notebook => openNotebook(bookOf({ s: [blockOf('p', ...rows)] }));
const words = (notebook: Notebook, id = 's.c'): string | undefined =>
  notebook.verdict(id)?.outOfRange?.message;
const at = (row: string) => ({ sheet: 's', part: 'p', row });
const wall = (entry: string) => ranged(given('t', entry, 'mm'), '5', '20');
const chain = (entry: string) => [
  given('a', '30 mm', 'mm'),
  wall(entry),
  calc('w', 't * 2'),
  calc('v', 'w + a'),
  check('c', 'v <= 1 m'),
  check('d', 'a <= 1 m'),
];

describe('a check says on which values beyond their permitted ranges it rests: rests-out-of-range', () => {
  test('a given several lines away; one that does not rest on it says nothing', () => {
    const notebook = open(...chain('40 mm'));
    expect(notebook.verdict('s.c')).toMatchObject({
      holds: true,
      outOfRange: { code: 'rests-out-of-range', cell: 's.c', data: { on: ['s.t'] } },
    });
    expect(words(notebook)).toBe('rests on t beyond its permitted range');
    expect(words(notebook, 's.d')).toBeUndefined();
    expect(words(open(...chain('20 mm')))).toBeUndefined();
  });

  test('follows each edit, also one that leaves every value the check compares as it was', () => {
    const rows = [wall('10 mm'), calc('w', 'MAX(t; 100 mm)'), check('c', 'w <= 1 m')];
    const notebook = open(...rows);
    expect(words(notebook)).toBeUndefined();
    const enter = notebook.apply(setEntry(at('t'), '30 mm'));
    if (!enter.ok) throw new Error('t takes no value');
    expect(words(notebook)).toBe('rests on t beyond its permitted range');
    notebook.apply(enter.value.inverse);
    expect(words(notebook)).toBeUndefined();
    notebook.apply(setEntry(at('t'), '30 mm'));
    notebook.apply(setRowField(at('w'), 'formula', '100 mm'));
    expect(words(notebook)).toBeUndefined();
    notebook.apply(setRowField(at('w'), 'formula', 't + 100 mm'));
    notebook.apply(setRowField(at('t'), 'range', { min: '5', max: '50' }));
    expect(words(notebook)).toBeUndefined();
  });

  test('a check that fails says it too', () => {
    const notebook = open(wall('40 mm'), check('c', 't <= 30 mm'));
    expect(notebook.verdict('s.c')?.holds).toBe(false);
    expect(words(notebook)).toBe('rests on t beyond its permitted range');
  });

  test('a calculated line beyond its range', () => {
    const notebook = open(
      given('a', '30 mm', 'mm'),
      ranged(calc('w', { formula: 'a * 2', unit: 'mm' }), '1', '50'),
      check('c', 'w <= 1 m'),
    );
    expect(words(notebook)).toBe('rests on w beyond its permitted range');
  });

  test('a stated value counts by its own range, and cuts off what it stands in place of', () => {
    const notebook = open(
      wall('40 mm'),
      ranged(calc('w', { formula: 't * 2', unit: 'mm' }), '1', '50'),
      check('c', 'w <= 1 m'),
    );
    expect(words(notebook)).toBe('rests on t and w beyond their permitted ranges');
    notebook.apply(stateRow(at('w'), { entry: '45 mm', reason: 'measured' }));
    expect(words(notebook)).toBeUndefined();
    notebook.apply(stateRow(at('w'), { entry: '60 mm', reason: 'measured' }));
    expect(words(notebook)).toBe('rests on w beyond its permitted range');
  });

  test('a stated side of a check cuts off that side alone', () => {
    const row = check('c', 't <= h', { unit: 'mm' });
    const demand = { entry: '10 mm', reason: 'letter' };
    const notebook = open(wall('40 mm'), ranged(given('h', '900 mm', 'mm'), '1', '800'), row);
    expect(words(notebook)).toBe('rests on t and h beyond their permitted ranges');
    notebook.apply(stateSide(at('c'), row, 'demand', demand));
    expect(words(notebook)).toBe('rests on h beyond its permitted range');
    const capacity = { entry: '70 mm', reason: 'letter' };
    notebook.apply(stateSide(at('c'), { ...row, stated: { demand } }, 'capacity', capacity));
    expect(words(notebook)).toBeUndefined();
  });

  test('the condition under which it applies', () => {
    const notebook = open(
      wall('40 mm'),
      given('a', '1 m', 'm'),
      check('c', 'a <= 2 m', { applies: 't > 1 mm' }),
    );
    expect(words(notebook)).toBe('rests on t beyond its permitted range');
  });

  test('cells of columns, entered, computed and stated, and the series that makes rows', () => {
    const thick = { ...numbers('t', 'm', [1, 2, 9]), range: { max: '5' } };
    const twice = { ...calcColumn('w', { formula: '2 * t', unit: 'm' }), range: { max: '7' } };
    const inTable = (cells: readonly number[]): Notebook =>
      openNotebook(
        bookOf({
          s: [
            tableOf('x', 3, { ...thick, chunks: [cells] }, twice),
            blockOf('p', check('c', 'SUM(x.w) <= 100 m')),
          ],
        }),
      );
    expect(words(inTable([1, 2, 3]))).toBeUndefined();
    expect(words(inTable([1, 2, 4]))).toBe('rests on x.w beyond its permitted range');
    const notebook = inTable([1, 2, 9]);
    expect(words(notebook)).toBe('rests on x.t and x.w beyond their permitted ranges');
    notebook.apply(setCells({ sheet: 's', table: 'x', column: 't' }, 2, [3]));
    expect(words(notebook)).toBeUndefined();
    const series: Part = {
      id: 'z',
      kind: 'table',
      name: 'z',
      columns: [{ id: 'i', kind: 'series', name: 'i', formula: 'SERIES(1; n; 1)' }, calcColumn('one', '1')],
    };
    const rows = ranged(given('n', '9'), '1', '5');
    const made = openNotebook(bookOf({ s: [blockOf('p', rows, check('c', 'SUM(z.one) <= 100')), series] }));
    expect(made.verdict('s.c')?.holds).toBe(true);
    expect(words(made)).toBe('rests on n beyond its permitted range');
  });

  test('of methods only the one that a choice puts in force', () => {
    const notebook = open(
      choice('rule', 'thin', 'thick'),
      wall('40 mm'),
      calc('w', {
        formula: '',
        unit: 'mm',
        by: 'rule',
        methods: [
          { id: 'm1', for: ['thin'], formula: '1 mm' },
          { id: 'm2', for: ['thick'], formula: 't' },
        ],
      }),
      check('c', 'w <= 1 m'),
    );
    expect(words(notebook)).toBeUndefined();
    notebook.apply(setEntry(at('rule'), 'thick'));
    expect(words(notebook)).toBe('rests on t beyond its permitted range');
  });

  test('names values of another sheet with that sheet, and of many the first three', () => {
    const many = ['a', 'b', 'e', 'f', 'g'].map((name) => ranged(given(name, '9'), '1', '5'));
    const notebook = openNotebook(
      bookOf({
        k: [blockOf('q', ...many)],
        s: [
          blockOf(
            'p',
            check('c', 'k.a + k.b + k.e + k.f + k.g <= 100'),
            check('d', 'k.a + k.b + k.e + k.f <= 100'),
          ),
        ],
      }),
    );
    expect(words(notebook)).toBe('rests on k.a, k.b, k.e and 2 more beyond their permitted ranges');
    expect(words(notebook, 's.d')).toBe('rests on k.a, k.b, k.e and k.f beyond their permitted ranges');
  });

  test('while its formula is typed', () => {
    const { outcome } = open(wall('40 mm'), check('c', '1 mm <= 2 mm')).tryFormula('s.c', 't <= 1 m');
    expect(outcome).toMatchObject({
      verdict: { outOfRange: { message: 'rests on t beyond its permitted range' } },
    });
  });

  test('neither the second engine nor a published case minds it, and the list of problems does not repeat it', async () => {
    const notebook = open(...chain('40 mm'));
    const { program, values } = recheckProgram(notebook);
    expect((await recheck(program, values)).findings).toEqual([]);
    expect(judge(notebook, { name: 's.c', verdict: 'passes' }).agrees).toBe(true);
    expect(notebook.problems().map(({ cell, code }) => [cell, code])).toEqual([['s.t', 'out-of-range']]);
  });
});

test('in books of random lines, after random edits, as a walk through the formulas says', () => {
  const seed = 20_260_611;
  console.log(`values beyond their ranges: random books start from seed ${seed}`);
  const lines = 8;
  const book = fc.array(
    fc.record({
      value: fc.integer({ min: 0, max: 9 }),
      sources: fc.uniqueArray(fc.integer({ min: 0, max: lines - 1 }), { maxLength: 3 }),
    }),
    { minLength: lines, maxLength: lines },
  );
  const edits = fc.array(
    fc.record({ line: fc.integer({ min: 0, max: lines - 1 }), value: fc.integer({ min: 0, max: 9 }) }),
    { minLength: 1, maxLength: 6 },
  );
  fc.assert(
    fc.property(book, edits, (drawn, changes) => {
      const entries = drawn.map(({ value }) => value);
      const sourcesOf = (line: number) => (drawn[line]?.sources ?? []).filter((one) => one < line);
      const rows = drawn.flatMap((_, line) => [
        ranged(given(`g${line}`, String(entries[line])), '0', '5'),
        calc(`x${line}`, [`g${line}`, ...sourcesOf(line).map((one) => `x${one}`)].join(' + ')),
        check(`c${line}`, `x${line} <= 1000`),
      ]);
      const notebook = open(...rows);
      const expected = (line: number): ReadonlySet<number> =>
        new Set([
          ...((entries[line] ?? 0) > 5 ? [line] : []),
          ...sourcesOf(line).flatMap((one) => [...expected(one)]),
        ]);
      for (const change of [undefined, ...changes]) {
        if (change) {
          entries[change.line] = change.value;
          notebook.apply(setEntry(at(`g${change.line}`), String(change.value)));
        }
        for (const line of drawn.keys()) {
          const on = notebook.verdict(`s.c${line}`)?.outOfRange?.data.on ?? [];
          expect(on).toEqual([...expected(line)].sort((a, b) => a - b).map((one) => `s.g${one}`));
        }
      }
    }),
    { seed, numRuns: 150 },
  );
});
