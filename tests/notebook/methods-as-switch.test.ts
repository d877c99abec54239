import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  type CalcPlace,
  type Edit,
  insertMethod,
  type Method,
  moveMethod,
  openBook,
  removeMethod,
  setCells,
  setEntry,
  setMethodField,
  setMethodsBy,
  useOneFormula,
  writeBook,
} from '../../src/document/index.ts';
import { methodInForce, type Notebook, openNotebook, recheckProgram } from '../../src/notebook/index.ts';
import { recheck } from '../../src/recheck/index.ts';
import { blockOf, bookOf, calc, calcColumn, choice, given, numbers, tableOf, texts } from '../make-book.ts';

const SEED = 20_261_129;
console.log(`notebook: books with methods start from seed ${SEED}`);

const OPTIONS = ['clay', 'Sand', 'silt "wet"', 'rock'];
const LINE_FORMULAS = ['w + 1 m', '2*w', 'w*q', '0 m', 'SUM(t.x)', 'e - w'];
const CELL_FORMULAS = ['x', 'x + w', '2*x*q', 'MAX(t.x) - x', 'ABOVE(x; 1 m) + x'];

const place = (row: string): CalcPlace => ({ sheet: 's', part: 'p', row });
const column = (id: string): CalcPlace => ({ sheet: 's', table: 'tb', column: id });
const PLACES = [
  { place: place('r5'), formulas: LINE_FORMULAS, bys: ['c', 't_is', 't_calc'] },
  { place: place('r6'), formulas: LINE_FORMULAS, bys: ['c', 't_is', 't_calc'] },
  { place: column('c3'), formulas: CELL_FORMULAS, bys: ['k', 'kk', 'c', 't_is'] },
] as const;

function methodsFrom(
  split: readonly number[],
  formulas: readonly string[],
  open: boolean,
): readonly Method[] {
  const groups = [0, 1, 2].map((group) => OPTIONS.filter((_, at) => split[at] === group));
  const named = groups.flatMap((options, at): readonly Method[] =>
    options.length === 0 ? [] : [{ id: `m${at}`, for: options, formula: formulas[at] ?? 'w' }],
  );
  return open || named.length === 0 ? [...named, { id: 'else', formula: formulas[3] ?? 'w' }] : named;
}

interface Seeds {
  readonly splits: readonly (readonly number[])[];
  readonly picks: readonly (readonly number[])[];
  readonly open: readonly boolean[];
  readonly by: readonly number[];
}

function bookFrom({ splits, picks, open, by }: Seeds): Book {
  const at = (index: number) => {
    const { formulas, bys } = PLACES[index] as (typeof PLACES)[number];
    const chosen = (picks[index] ?? []).map((pick) => formulas[pick % formulas.length] ?? 'w');
    const methods = methodsFrom(splits[index] ?? [], chosen, open[index] ?? false);
    return { by: bys[(by[index] ?? 0) % bys.length] ?? 'c', methods };
  };
  const e = at(0);
  return bookOf({
    s: [
      blockOf(
        'p',
        { ...given('w', '3 m', 'm'), id: 'r1' },
        { ...choice('c', ...OPTIONS), id: 'r2' },
        { ...given('t_is', '"Sand"'), id: 'r3' },
        { ...calc('t_calc', 'IF(w > 2 m; "sand"; "rock")'), id: 'r4' },
        { ...given('q', '1.5'), id: 'r7' },
        { ...calc('e', { unit: 'ft', ...e, ...noSelf('e', e) }), id: 'r5' },
        { ...calc('f', { unit: 'm', ...at(1) }), id: 'r6' },
      ),
      {
        ...tableOf(
          't',
          4,
          { ...texts('k', ['clay', 'sand', 'rock', 'silt "wet"'], OPTIONS), id: 'c1' },
          { ...numbers('x', 'm', [1, 2, 3, 4]), id: 'c2' },
          { ...calcColumn('kk', 'IF(x > 2 m; k; "clay")'), id: 'c4' },
          { ...calcColumn('y', { unit: 'm', ...at(2) }), id: 'c3' },
        ),
        id: 'tb',
      },
    ],
  });
}

/** The line e would close a circle by a method that names it; the model of SWITCH says so of any method. */
function noSelf(name: string, { methods }: { readonly methods: readonly Method[] }) {
  return { methods: methods.map((one) => ({ ...one, formula: one.formula.replace(`${name} -`, 'w -') })) };
}

/** The same book with a SWITCH in place of methods: the plain model. */
function withSwitch(book: Book): Book {
  const written = JSON.parse(writeBook(book), (_, value) => {
    if (value?.methods === undefined) return value;
    const { methods, by, ...line } = value;
    const arms = methods.flatMap((method: Method) =>
      (method.for ?? []).flatMap((option) => [`"${option.replaceAll('"', '""')}"`, `(${method.formula})`]),
    );
    const last = methods.at(-1);
    const lone = arms.length === 0;
    const formula = lone
      ? last.formula
      : `SWITCH(${[by, ...arms, ...(last.for ? [] : [`(${last.formula})`])].join('; ')})`;
    return { ...line, formula };
  });
  const opened = openBook(JSON.stringify(written));
  if (!opened.ok) throw new Error(opened.problems[0]?.message);
  return opened.value.book;
}

const LINES = ['s.e', 's.f'];

function valuesOf(notebook: Notebook) {
  const lines = LINES.map((id) => {
    const read = notebook.result(id);
    return read.status === 'ok' && read.value.kind === 'number' ? read.value.si : undefined;
  });
  const y = notebook.column('s.t.y');
  const rows = [0, 1, 2, 3].map((row) => {
    const read = y.status === 'ok' ? y.reading.at(row) : undefined;
    return read?.status === 'ok' ? read.value : undefined;
  });
  return [...lines, ...rows];
}

type Toss = readonly [kind: number, where: number, what: number, more: number];

function editFrom([kind, where, what, more]: Toss): Edit {
  const target = PLACES[where % PLACES.length] as (typeof PLACES)[number];
  const formula = (target.formulas[more % target.formulas.length] ?? 'w').replace('e - w', 'w - 1 m');
  const option = OPTIONS[what % OPTIONS.length] ?? 'clay';
  const id = ['m0', 'm1', 'm2', 'else'][what % 4] ?? 'm0';
  switch (kind % 9) {
    case 0:
      return setEntry({ sheet: 's', part: 'p', row: 'r2' }, what % 7 === 6 ? '' : option);
    case 1:
      return setEntry({ sheet: 's', part: 'p', row: 'r3' }, `"${option.replaceAll('"', '')}"`);
    case 2:
      return setEntry({ sheet: 's', part: 'p', row: 'r1' }, `${more % 5} m`);
    case 3:
      return setCells({ sheet: 's', table: 'tb', column: 'c1' }, what % 4, [option.toUpperCase()]);
    case 4:
      return setMethodField(target.place, id, 'formula', formula);
    case 5:
      return removeMethod(target.place, id);
    case 6:
      return moveMethod(target.place, id, more % 3);
    case 7:
      return insertMethod(target.place, 0, { id: 'm9', for: [option], formula });
    default:
      return setMethodsBy(target.place, target.bys[more % target.bys.length] ?? 'c');
  }
}

const seeds = fc.record({
  splits: fc.array(fc.array(fc.nat(3), { minLength: 4, maxLength: 4 }), { minLength: 3, maxLength: 3 }),
  picks: fc.array(fc.array(fc.nat(5), { minLength: 4, maxLength: 4 }), { minLength: 3, maxLength: 3 }),
  open: fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }),
  by: fc.array(fc.nat(3), { minLength: 3, maxLength: 3 }),
});

test('a book with methods has the values of the same book written with SWITCH, after any edits and undo', () => {
  let edits = 0;
  let computed = 0;
  const toss = fc.tuple(fc.nat(8), fc.nat(2), fc.nat(20), fc.nat(20));
  fc.assert(
    fc.property(seeds, fc.array(toss, { maxLength: 8 }), (start, tosses) => {
      const book = bookFrom(start);
      const notebook = openNotebook(book);
      const undo: Edit[] = [];
      const compare = (): void => {
        const values = valuesOf(notebook);
        expect(values).toEqual(valuesOf(openNotebook(withSwitch(notebook.book))));
        expect(values).toEqual(valuesOf(openNotebook(notebook.book)));
        expect(notebook.problems()).toEqual(openNotebook(notebook.book).problems());
        computed += values.filter((value) => value !== undefined).length;
        // A value has a method that made it, and what has a method has a value.
        for (const [at, id] of LINES.entries())
          if (values[at] !== undefined && 'methods' in (notebook.model.items.get(id) ?? {}))
            expect(methodInForce(notebook, id)).toBeDefined();
      };
      compare();
      for (const one of tosses) {
        const applied = notebook.apply(editFrom(one));
        if (!applied.ok) continue;
        edits += 1;
        undo.push(applied.value.inverse);
        compare();
      }
      for (const inverse of undo.reverse()) expect(notebook.apply(inverse).ok).toBe(true);
      expect(notebook.book).toEqual(book);
      compare();
    }),
    { seed: SEED, numRuns: 30 },
  );
  expect(edits).toBeGreaterThan(100);
  expect(computed).toBeGreaterThan(500);
});

test('the second engine agrees on books with methods', { timeout: 60_000 }, async () => {
  let compared = 0;
  await fc.assert(
    fc.asyncProperty(seeds, async (start) => {
      const notebook = openNotebook(bookFrom(start));
      const { program, values } = recheckProgram(notebook);
      const report = await recheck(program, values);
      expect(report.findings).toEqual([]);
      compared += valuesOf(notebook).filter((value) => value !== undefined).length;
    }),
    { seed: SEED, numRuns: 12 },
  );
  expect(compared).toBeGreaterThan(30);
});

test('one method kept as the formula leaves what it gives, and undo brings the methods back', () => {
  const book = bookFrom({
    splits: [
      [0, 1, 2, 2],
      [0, 1, 1, 1],
      [0, 0, 1, 2],
    ],
    picks: [
      [0, 1, 2, 3],
      [1, 2, 3, 4],
      [0, 1, 2, 3],
    ],
    open: [false, false, false],
    by: [0, 0, 0],
  });
  const [block] = book.sheets[0]?.parts ?? [];
  const line = block?.kind === 'rows' ? block.rows.find(({ id }) => id === 'r5') : undefined;
  if (line?.kind !== 'calc') throw new Error('the book has no line e');
  const notebook = openNotebook(book);
  const before = valuesOf(notebook);
  const edit = useOneFormula(place('r5'), line, 'm0');
  const applied = notebook.apply(edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  expect(valuesOf(notebook)).toEqual(before);
  expect(methodInForce(notebook, 's.e')).toBeUndefined();
  const back = applyEdit(notebook.book, applied.value.inverse);
  expect(back.ok && back.value.book).toEqual(book);
});
