import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addMethod,
  beginMethods,
  chooseBy,
  chooseOption,
  dropMethod,
  keepOneMethod,
  type Serving,
  serveOptions,
  shiftMethod,
} from '../../../../src/app/editing/methods/change-methods.ts';
import {
  chooserAt,
  choosersFor,
  openOptions,
  unservedOptions,
} from '../../../../src/app/editing/methods/choosers.ts';
import {
  type MethodLine,
  methodLineAt,
  methodLineOf,
} from '../../../../src/app/editing/methods/method-line.ts';
import type { Outcome } from '../../../../src/diagnostics/index.ts';
import {
  applyEdit,
  type Book,
  type Edit,
  foldedOption,
  openBook,
  writeBook,
} from '../../../../src/document/index.ts';
import { type Notebook, openNotebook } from '../../../../src/notebook/index.ts';
import {
  blockOf,
  bookOf,
  calc,
  calcColumn,
  choice,
  given,
  numbers,
  tableOf,
  texts,
} from '../../../make-book.ts';
import { after as applied, done, refusal } from '../applied.ts';

const book = bookOf({
  s: [
    blockOf(
      'p',
      choice('rule', 'API', { value: 'USACE', label: 'of USACE' }, 'β'),
      given('site', '"clay"'),
      given('w', '2 m', 'm'),
      calc('a', { formula: '2*w', unit: 'm', reference: 'R', note: 'N' }),
      calc('kind', 'IF(a > 1 m; "deep"; "shallow")'),
      calc('free', 'IF(w > 1 m; "API"; "β")'),
    ),
    tableOf(
      't',
      3,
      texts('soil', ['clay', 'Sand', ' CLAY ']),
      texts('grade', ['A', 'B', 'A'], ['A', 'B', 'C']),
      numbers('x', 'm', [1, 2, 3]),
      calcColumn('y', { formula: 'x + w', unit: 'm', reference: 'R' }),
      calcColumn('mark', 'IF(y > 3 m; "low"; "high")'),
    ),
  ],
  u: [blockOf('up', { ...choice('code', 'old', 'new'), from: 's.t.soil' }, calc('b', '3 m'))].map((part) => ({
    ...part,
    rows: part.rows.map((row) => {
      if (row.kind !== 'choice') return row;
      const { options: _, ...rest } = row;
      return { ...rest, entry: 'clay' };
    }),
  })),
});

const places = {
  a: { sheet: 's', part: 'p', item: 'a', field: 'value' },
  y: { sheet: 's', part: 't', item: 'r1', field: 'y' },
};
type Which = keyof typeof places;

function lineIn(of: Book, which: Which = 'a'): MethodLine {
  const line = methodLineAt(of, places[which]);
  if (!line) throw new Error('the line is gone');
  return line;
}

/** The book after something that is done to one of its lines. */
function make(
  of: Book,
  act: (notebook: Notebook, line: MethodLine) => Outcome<Edit | undefined>,
  which: Which = 'a',
): Book {
  const edit = done(act(openNotebook(of), lineIn(of, which)));
  if (!edit) throw new Error('nothing was to be done');
  return applied(of, edit);
}

const only = (...options: readonly string[]): Serving => ({ options, others: false });
const others: Serving = { options: [], others: true };
const methodsOf = (of: Book, which: Which = 'a') =>
  lineIn(of, which).line.methods?.map((one) => [one.id, one.for ?? 'others', one.formula]);
const begun = make(book, (notebook, line) => beginMethods(notebook, line, 'rule', only('API')));
const more = make(begun, (notebook, line) => {
  const added = addMethod(notebook, line, only('USACE'));
  return added.ok ? { ok: true, value: added.value.edit } : added;
});

describe('what chooses between methods', () => {
  const bys = (which: Which) =>
    choosersFor(openNotebook(book), lineIn(book, which)).map(({ by, kind, options }) => [
      by,
      kind,
      options.map(({ value }) => value),
    ]);

  test('is offered for a line with its options: choices, text lines, none that follows from the line', () => {
    expect(bys('a')).toEqual([
      ['rule', 'choice', ['API', 'USACE', 'β']],
      ['site', 'text', ['clay']],
      ['free', 'text', ['API', 'β']],
      ['u.code', 'choice', ['clay', 'Sand']],
    ]);
  });

  test('is for a column also one of the texts of its table, with those that its rows have', () => {
    expect(bys('y').slice(0, 3)).toEqual([
      ['rule', 'choice', ['API', 'USACE', 'β']],
      ['soil', 'column', ['clay', 'Sand']],
      ['grade', 'column', ['A', 'B', 'C']],
    ]);
    expect(bys('y').map(([by]) => by)).not.toContain('mark');
  });

  test('is what a computed text takes from choices, with the words for it, and nothing it makes a new text of', () => {
    const passed = {
      if: 'IF(w > 1 m; rule; "stated")',
      index: 'INDEX(t.grade; 2)',
      switch: 'SWITCH(rule; "API"; one; "x"; two; (three))',
      ifs: 'IFS(w > 1 m; one; TRUE; two)',
      joined: 'rule & ", " & one',
    };
    const rows = [
      choice('rule', 'API', { value: 'USACE', label: 'of USACE' }),
      choice('one', 'a'),
      choice('two', 'b'),
      choice('three', 'c'),
      given('w', '2 m', 'm'),
      ...Object.entries(passed).map(([name, formula]) => calc(`by_${name}`, formula)),
      calc('a', '1 m'),
    ];
    const of = bookOf({
      s: [blockOf('p', ...rows), tableOf('t', 2, texts('grade', ['A', 'B'], ['A', 'B', 'C']))],
    });
    const found = choosersFor(openNotebook(of), lineIn(of));
    const optionsOf = (by: string) => found.find((one) => one.by === by)?.options;
    expect(optionsOf('by_if')).toEqual([
      { value: 'API' },
      { value: 'USACE', label: 'of USACE' },
      { value: 'stated' },
    ]);
    const values = (by: string) => optionsOf(by)?.map(({ value }) => value);
    expect(values('by_index')).toEqual(['B', 'A', 'C']);
    expect(values('by_switch')).toEqual(['a', 'b', 'c']);
    expect(values('by_ifs')).toEqual(['a', 'b']);
    expect(values('by_joined')).toEqual(['API, a']);
  });

  test('leaves the options that no method names, and tells those that none serves', () => {
    const open = (of: Book) => {
      const line = lineIn(of);
      const chooser = chooserAt(openNotebook(of), line);
      if (!chooser) throw new Error('nothing chooses');
      return [openOptions, unservedOptions].map((each) => each(line, chooser).map(({ value }) => value));
    };
    expect(open(more)).toEqual([['β'], ['β']]);
    const whole = make(more, (notebook, line) => serveOptions(notebook, line, 'm2', others));
    expect(open(whole)).toEqual([['USACE', 'β'], []]);
  });
});

describe('a line of one formula', () => {
  test('is computed by methods of which the formula is one, with its reference and note', () => {
    expect(lineIn(begun).line).toEqual({
      id: 'a',
      kind: 'calc',
      name: 'a',
      unit: 'm',
      by: 'rule',
      methods: [{ id: 'm1', for: ['API'], formula: '2*w', reference: 'R', note: 'N' }],
    });
    expect(openNotebook(begun).problems()).toMatchObject([
      { code: 'method-options-left', message: 'no method is for “of USACE” or “β”, which rule could be' },
    ]);
    const all = make(book, (notebook, line) => beginMethods(notebook, line, 'rule', others));
    expect(methodsOf(all)).toEqual([['m1', 'others', '2*w']]);
  });

  test('becomes one again with any of them', () => {
    const back = applied(more, keepOneMethod(lineIn(more), 'm1'));
    expect(lineIn(back).line).toEqual(lineIn(book).line);
    const blank = applied(more, keepOneMethod(lineIn(more), 'm2'));
    expect(lineIn(blank).line).toEqual({
      id: 'a',
      kind: 'calc',
      name: 'a',
      unit: 'm',
      formula: '',
    });
  });

  test('of a column goes by the texts of its table', () => {
    const made = make(book, (notebook, line) => beginMethods(notebook, line, 'soil', only('clay')), 'y');
    expect(methodsOf(made, 'y')).toEqual([['m1', ['clay'], 'x + w']]);
    const column = openNotebook(made).column('s.t.y');
    const rows = column.status === 'ok' ? [0, 1, 2].map((row) => column.reading.at(row).status) : [];
    expect(rows).toEqual(['ok', 'problem', 'ok']);
  });

  test.each([
    ['kind', only('deep'), 'methods-by-unfit: “kind” cannot choose between methods of a'],
    ['w', only('2'), 'methods-by-unfit: “w” cannot choose between methods of a'],
    ['rule', only(), 'method-for-nothing: a method of a has to be for an option'],
  ] as const)('is not by %s for %j', (by, serving, says) => {
    expect(refusal(beginMethods(openNotebook(book), lineIn(book), by, serving))).toEqual([says]);
  });
});

describe('the methods of a line', () => {
  const refused = (act: (notebook: Notebook, line: MethodLine) => Outcome<unknown>, of = more) =>
    refusal(act(openNotebook(of), lineIn(of)));

  test('come in front of the one for all others', () => {
    expect(methodsOf(more)).toEqual([
      ['m1', ['API'], '2*w'],
      ['m2', ['USACE'], ''],
    ]);
    const last = make(more, (notebook, line) => serveOptions(notebook, line, 'm1', others));
    expect(methodsOf(last)?.map(([id]) => id)).toEqual(['m2', 'm1']);
    const third = make(last, (notebook, line) => {
      const added = addMethod(notebook, line, only('API'));
      return added.ok ? { ok: true, value: added.value.edit } : added;
    });
    expect(methodsOf(third)?.map(([id]) => id)).toEqual(['m2', 'm3', 'm1']);
  });

  test('come with an option that the choice gets by it', () => {
    const fresh = { value: ' own ', label: 'own rule', list: 's.rule' };
    const made = make(more, (notebook, line) => {
      const added = addMethod(notebook, line, { options: [], others: false, fresh });
      return added.ok ? { ok: true, value: added.value.edit } : added;
    });
    expect(methodsOf(made)?.[2]).toEqual(['m3', ['own'], '']);
    expect(chooserAt(openNotebook(made), lineIn(made))?.options.at(-1)).toEqual({
      value: 'own',
      label: 'own rule',
    });
    const graded = make(book, (notebook, line) => beginMethods(notebook, line, 'grade', only('A')), 'y');
    const wider = make(
      graded,
      (notebook, line) => {
        const added = addMethod(notebook, line, {
          options: ['B'],
          others: false,
          fresh: { value: 'D', list: 's.t.grade' },
        });
        return added.ok ? { ok: true, value: added.value.edit } : added;
      },
      'y',
    );
    expect(methodsOf(wider, 'y')?.[1]).toEqual(['m2', ['B', 'D'], '']);
    expect(chooserAt(openNotebook(wider), lineIn(wider, 'y'))?.options.map(({ value }) => value)).toEqual([
      'A',
      'B',
      'C',
      'D',
    ]);
  });

  test('change places, and what they are for, and what chooses', () => {
    const moved = make(more, (_, line) => shiftMethod(line, 'm2', -1));
    expect(methodsOf(moved)?.map(([id]) => id)).toEqual(['m2', 'm1']);
    expect(shiftMethod(lineIn(more), 'm1', -1)).toEqual({ ok: true, value: undefined });
    const both = make(more, (notebook, line) => serveOptions(notebook, line, 'm2', only('USACE', 'β')));
    expect(methodsOf(both)?.[1]).toEqual(['m2', ['USACE', 'β'], '']);
    expect(serveOptions(openNotebook(more), lineIn(more), 'm2', only('USACE'))).toEqual({
      ok: true,
      value: undefined,
    });
    expect(lineIn(make(more, (notebook, line) => chooseBy(notebook, line, 'free'))).line.by).toBe('free');
    const chooser = chooserAt(openNotebook(more), lineIn(more));
    const edit = chooser && chooseOption(openNotebook(more), chooser, 'USACE');
    expect(edit && openNotebook(applied(more, edit)).result('s.rule')).toMatchObject({
      value: { text: 'USACE' },
    });
  });

  test('are refused where two would be for one option, or none is left', () => {
    expect(refused((notebook, line) => addMethod(notebook, line, only('api ')))).toEqual([
      'method-option-taken: a has a method for “api ” already',
    ]);
    const whole = make(more, (notebook, line) => serveOptions(notebook, line, 'm2', others));
    expect(refused((notebook, line) => addMethod(notebook, line, others), whole)).toEqual([
      'method-others-taken: a has a method for all others already',
    ]);
    expect(refused((_, line) => shiftMethod(line, 'm2', -1), whole)).toEqual([
      'method-others-last: the method of a for all others stays the last',
    ]);
    expect(refused((_, line) => dropMethod(line, 'm1'), begun)).toEqual([
      'method-alone: this is the only method of a',
    ]);
    expect(refused((notebook, line) => chooseBy(notebook, line, 'kind'))).toEqual([
      'methods-by-unfit: “kind” cannot choose between methods of a',
    ]);
  });

  test.each([
    ['  ', 'option-blank: the new option of rule needs a value'],
    ['usace', 'option-there: s.rule has the option “of USACE” already'],
  ])('are refused for the new option “%s”', (value, says) => {
    const fresh = { options: [], others: false, fresh: { value, list: 's.rule' } };
    expect(refused((notebook, line) => addMethod(notebook, line, fresh))).toEqual([says]);
  });

  test('get no new option that no list gets', () => {
    const fresh = { options: [], others: false, fresh: { value: 'neu' } };
    expect(refused((notebook, line) => addMethod(notebook, line, fresh))).toEqual([
      'option-of-none: “neu” is no option of rule',
    ]);
  });

  test('get no new option of a choice that has them from a column', () => {
    const by = make(book, (notebook, line) => beginMethods(notebook, line, 'u.code', only('clay')));
    const fresh = { options: [], others: false, fresh: { value: 'silt' } };
    expect(refused((notebook, line) => addMethod(notebook, line, fresh), by)).toEqual([
      'option-of-column: u.code has its options from s.t.soil',
    ]);
  });
});

const SEED = 20_261_130;
console.log(`editing: changes of methods start from seed ${SEED}`);

test('any changes of methods leave a sound line, and taken back one by one the book as it was', () => {
  let changed = 0;
  let said = 0;
  const toss = fc.record({
    which: fc.constantFrom<Which>('a', 'y'),
    kind: fc.nat(8),
    at: fc.nat(4),
    options: fc.subarray(['API', 'usace', 'β', 'clay', 'Sand', 'A', 'D']),
    others: fc.boolean(),
    fresh: fc.option(fc.constantFrom({ value: 'E', list: 's.rule' }, { value: 'api' }, { value: '' }), {
      nil: undefined,
      freq: 1,
    }),
    by: fc.constantFrom('rule', 'soil', 'grade', 'site', 'free', 'u.code', 'kind'),
  });
  fc.assert(
    fc.property(fc.array(toss, { minLength: 10, maxLength: 30 }), (tosses) => {
      let now = book;
      const back: Edit[] = [];
      for (const { which, kind, at, options, by, fresh, ...rest } of tosses) {
        const notebook = openNotebook(now);
        const line = lineIn(now, which);
        const serving = { options, others: rest.others, ...(fresh && { fresh }) };
        const id = line.line.methods?.[at]?.id ?? line.line.methods?.[0]?.id;
        const edits: readonly (() => Outcome<Edit | undefined>)[] = [
          () => serveOptions(notebook, line, id ?? '', serving),
          () => dropMethod(line, id ?? ''),
          () => shiftMethod(line, id ?? '', at % 2 === 0 ? 1 : -1),
          () => chooseBy(notebook, line, by),
          () => ({ ok: true, value: at === 0 ? keepOneMethod(line, id ?? '') : undefined }),
          ...[5, 6, 7, 8].map(() => (): Outcome<Edit | undefined> => {
            const added = addMethod(notebook, line, serving);
            return added.ok ? { ok: true, value: added.value.edit } : added;
          }),
        ];
        const act = id === undefined ? () => beginMethods(notebook, line, by, serving) : edits[kind];
        const outcome = act?.();
        if (!outcome?.ok) said += refusal(outcome ?? { ok: true, value: 0 }).length;
        if (!outcome?.ok || !outcome.value) continue;
        // What is not refused is applied: a person is told beforehand or not at all.
        const made = applyEdit(now, outcome.value);
        if (!made.ok) throw new Error(`${outcome.value.label}: ${made.problems[0]?.message}`);
        back.push(made.value.inverse);
        const before = methodLineOf(now, line.place)?.methods ?? [];
        now = made.value.book;
        changed += 1;
        const opened = openBook(writeBook(now));
        if (!opened.ok) throw new Error(opened.problems[0]?.message);
        const { methods = [], formula, by: chosenBy } = lineIn(now, which).line;
        expect(methods.length > 0).toBe(formula === undefined && chosenBy !== undefined);
        const named = methods.flatMap((one) => one.for ?? []).map(foldedOption);
        expect(new Set(named).size).toBe(named.length);
        expect(new Set(methods.map((one) => one.id)).size).toBe(methods.length);
        expect(methods.findIndex((one) => one.for === undefined)).toBeOneOf([-1, methods.length - 1]);
        // No formula is lost but by removing its method, or by keeping another alone.
        if (methods.length >= before.length)
          expect(methods.map((one) => one.formula)).toEqual(
            expect.arrayContaining(before.map((one) => one.formula)),
          );
      }
      for (const edit of back.reverse()) {
        const undone = applyEdit(now, edit);
        if (!undone.ok) throw new Error(undone.problems[0]?.message);
        now = undone.value.book;
      }
      expect(now).toEqual(book);
    }),
    { seed: SEED, numRuns: 60 },
  );
  expect(changed).toBeGreaterThan(200);
  expect(said).toBeGreaterThan(100);
});
