import { describe, expect, test } from 'vitest';
import { type Book, type Calc, setCells, setEntry, setMethodField } from '../../src/document/index.ts';
import {
  formulaInForce,
  methodInForce,
  methodsUsed,
  methodWords,
  type Notebook,
  openNotebook,
  rowsInWords,
} from '../../src/notebook/index.ts';
import { blockOf, bookOf, calc, calcColumn, choice, given, numbers, tableOf, texts } from '../make-book.ts';

type Computing = Pick<Calc, 'by' | 'methods' | 'formula' | 'unit' | 'reference'>;

interface Lines {
  readonly a?: Computing;
  readonly b?: Computing;
  readonly y?: Computing;
  readonly options?: readonly string[];
  readonly kinds?: readonly string[];
  readonly entry?: string;
}

const one: Computing = { formula: '1 m' };

function linesIn({
  a = one,
  b = one,
  y = one,
  options = ['API', 'USACE'],
  kinds,
  entry = 'API',
}: Lines): Book {
  return bookOf({
    s: [
      blockOf(
        'p',
        { ...choice('rule', ...options), entry },
        given('soil', '"clay"'),
        given('w', '2 m', 'm'),
        calc('a', a),
        calc('b', b),
      ),
      tableOf(
        't',
        3,
        texts('k', ['clay', 'sand', 'clay'], kinds),
        numbers('x', 'm', [1, 2, 0]),
        calcColumn('y', y),
      ),
    ],
  });
}

const byRule: Computing = {
  by: 'rule',
  methods: [
    { id: 'api', for: ['API'], formula: '2*w', reference: 'API RP 2GEO' },
    { id: 'usace', for: ['USACE'], formula: '3*w', reference: 'EM 1110-2-2906' },
  ],
};

function told(notebook: Notebook, id = 's.a') {
  return notebook
    .problems()
    .filter(({ cell }) => cell === id)
    .map(({ code, message, severity }) => ({ code, message, severity }));
}

function siOf(notebook: Notebook, id = 's.a'): number | undefined {
  const read = notebook.result(id);
  return read.status === 'ok' && read.value.kind === 'number' ? read.value.si : undefined;
}

const rule = { sheet: 's', part: 'p', row: 'rule' };
const lineA = { sheet: 's', part: 'p', row: 'a' };

test('the choice says which formula is in force, with its reference; another choice changes it in place', () => {
  const notebook = openNotebook(linesIn({ a: byRule }));
  const item = notebook.model.items.get('s.a');
  if (item?.kind !== 'formula') throw new Error('a is no line');
  expect(siOf(notebook)).toBe(4);
  expect(formulaInForce(notebook, item)).toMatchObject({ formula: '2*w', reference: 'API RP 2GEO' });
  expect([...item.checked.references]).toEqual(['s.w']);
  expect(notebook.apply(setEntry(rule, 'usace')).ok).toBe(true);
  expect(siOf(notebook)).toBe(6);
  expect(methodInForce(notebook, 's.a')?.method.reference).toBe('EM 1110-2-2906');
});

test('a line whose method in force is another one is told as changed, though its value is the same', () => {
  const methods = byRule.methods?.map((method) => ({ ...method, formula: '2*w' })) ?? [];
  const notebook = openNotebook(linesIn({ a: { by: 'rule', methods } }));
  const applied = notebook.apply(setEntry(rule, 'USACE'));
  expect(applied.ok && applied.value.changed.has('s.a')).toBe(true);
  expect(methodInForce(notebook, 's.a')?.method.id).toBe('usace');
});

test('what is not in force adds no circle and no dependence', () => {
  const a: Computing = {
    by: 'rule',
    methods: [
      { id: 'api', for: ['API'], formula: 'w' },
      { id: 'usace', for: ['USACE'], formula: 'b' },
    ],
  };
  const notebook = openNotebook(linesIn({ a, b: { formula: 'a + 1 m' } }));
  expect([siOf(notebook, 's.a'), siOf(notebook, 's.b')]).toEqual([2, 3]);
  expect(notebook.problems()).toEqual([]);
  notebook.apply(setEntry(rule, 'USACE'));
  expect(told(notebook)).toMatchObject([{ code: 'loop' }]);
});

test('a method that is not in force says what is wrong with it, and its line has its value', () => {
  const notebook = openNotebook(linesIn({ a: byRule }));
  notebook.apply(setMethodField(lineA, 'usace', 'formula', '3*nosuch'));
  expect(siOf(notebook)).toBe(4);
  expect(told(notebook)).toMatchObject([
    { code: 'method-fails', message: expect.stringContaining('the method for “USACE”: ') },
  ]);
  expect(notebook.problems()[0]).toMatchObject({ from: 2, to: 8, data: { id: 'usace' } });
  notebook.apply(setEntry(rule, 'USACE'));
  expect(siOf(notebook)).toBeUndefined();
  expect(told(notebook)).toMatchObject([{ code: 'name-unknown' }]);
});

describe('what chooses', () => {
  const by = (name: string): Computing => ({ ...byRule, by: name });
  test.each([
    [
      'nothing of that name',
      'ruel',
      'methods-by-unknown',
      '“ruel”, which is to choose the method, is no line and no column of this table',
    ],
    [
      'a column, for a line',
      't.k',
      'methods-by-column',
      't.k, which is to choose the method, is a column and has no one value here',
    ],
    [
      'a length',
      'w',
      'methods-by-not-text',
      'w, which is to choose the method, is a length (m) and not a text',
    ],
  ])('is %s', (_, name, code, message) => {
    const notebook = openNotebook(linesIn({ a: by(name) }));
    expect(told(notebook)).toEqual([{ code, message, severity: 'error' }]);
    expect(siOf(notebook)).toBeUndefined();
  });

  test('is blank: the line waits on it', () => {
    const notebook = openNotebook(linesIn({ a: byRule, entry: '' }));
    expect(notebook.result('s.a')).toMatchObject({
      status: 'waiting',
      problem: { message: 'waits on s.rule' },
    });
    notebook.apply(setEntry(rule, 'API'));
    expect(siOf(notebook)).toBe(4);
  });
});

describe('options and methods that do not meet', () => {
  test('the option chosen has no method: no value, and the option is named', () => {
    const notebook = openNotebook(linesIn({ a: byRule, options: ['API', 'USACE', 'beta'], entry: 'beta' }));
    expect(told(notebook)).toEqual([
      { code: 'method-option-missing', message: 'no method is for “beta”, which rule is', severity: 'error' },
    ]);
    expect(siOf(notebook)).toBeUndefined();
  });
  test('another option has no method: a remark beside the value', () => {
    const notebook = openNotebook(linesIn({ a: byRule, options: ['API', 'USACE', 'beta', 'lambda'] }));
    expect(told(notebook)).toEqual([
      {
        code: 'method-options-left',
        message: 'no method is for “beta” or “lambda”, which rule could be',
        severity: 'warning',
      },
    ]);
    expect(siOf(notebook)).toBe(4);
  });
  const misspelt: Computing = {
    by: 'rule',
    methods: [
      { id: 'm', for: ['USCAE'], formula: '3*w' },
      { id: 'n', formula: '2*w' },
    ],
  };
  test('a misspelt option falls to no method for all others', () => {
    const notebook = openNotebook(linesIn({ a: misspelt }));
    expect(told(notebook)).toEqual([
      {
        code: 'method-option-unknown',
        message: 'a method is for “USCAE”, which is no option of rule',
        severity: 'error',
      },
    ]);
    expect(siOf(notebook)).toBeUndefined();
  });
  test('a method for no option is a remark while another one is in force', () => {
    const methods = [...(byRule.methods ?? []), { id: 'm', for: ['USCAE'], formula: '9*w' }];
    const notebook = openNotebook(linesIn({ a: { by: 'rule', methods } }));
    expect(told(notebook)).toMatchObject([{ code: 'method-option-unused', severity: 'warning' }]);
    expect(siOf(notebook)).toBe(4);
  });
});

test('all methods give the line’s dimension, whichever is in force', () => {
  const methods = [
    { id: 'api', for: ['API'], formula: '2*w' },
    { id: 'usace', for: ['USACE'], formula: 'w^2' },
  ];
  const bare = openNotebook(linesIn({ a: { by: 'rule', methods } }));
  expect(told(bare)).toMatchObject([
    {
      code: 'method-fails',
      message:
        'the method for “USACE”: it gives an area (m^2), where the method for “API” gives a length (m)',
    },
  ]);
  expect(siOf(bare)).toBe(4);
  const item = bare.model.items.get('s.a');
  expect(item?.kind === 'formula' && item.methods?.list[1]?.problems).toMatchObject([
    { code: 'methods-differ' },
  ]);
  const withUnit = openNotebook(linesIn({ a: { by: 'rule', methods, unit: 'm' } }));
  expect(told(withUnit)).toMatchObject([
    { code: 'method-fails', message: expect.stringContaining('for “USACE”') },
  ]);
});

describe('a text chooses row by row', () => {
  const y: Computing = {
    by: 'k',
    methods: [
      { id: 'clay', for: ['clay'], formula: '1 m + x', reference: 'A' },
      { id: 'sand', for: ['sand', 'gravel'], formula: '10*x', reference: 'B' },
    ],
  };
  const rows = (notebook: Notebook) => {
    const column = notebook.column('s.t.y');
    return [0, 1, 2].map((row) => (column.status === 'ok' ? column.reading.at(row) : column));
  };

  test('each row has the method of its text, and the rows of each are told', () => {
    const notebook = openNotebook(linesIn({ y }));
    expect(rows(notebook)).toMatchObject([{ value: 2 }, { value: 20 }, { value: 1 }]);
    const item = notebook.model.items.get('s.t.y');
    if (item?.kind !== 'formula column') throw new Error('y is no column');
    const used = methodsUsed(notebook, item).map(({ item: { method }, rows: at }) => [
      method.id,
      rowsInWords(at),
    ]);
    expect(used).toEqual([
      ['clay', 'rows 1, 3'],
      ['sand', 'row 2'],
    ]);
    expect(formulaInForce(notebook, item, 1)).toMatchObject({ formula: '10*x', reference: 'B' });
    expect(formulaInForce(notebook, item)).toBeUndefined();
  });

  test('a row with an option of no method says so, and the others have their values', () => {
    const notebook = openNotebook(linesIn({ y }));
    notebook.apply(setCells({ sheet: 's', table: 't', column: 'k' }, 1, ['rock']));
    expect(rows(notebook)).toMatchObject([{ value: 2 }, { status: 'problem' }, { value: 1 }]);
    expect(told(notebook, 's.t.y')).toMatchObject([
      { code: 'row-fails', message: 'row 2: no method is for “rock”, which k is' },
    ]);
  });

  test('the options of the column and of the methods are held against one another', () => {
    const notebook = openNotebook(linesIn({ y, kinds: ['clay', 'sand', 'silt'] }));
    expect(told(notebook, 's.t.y')).toMatchObject([
      { code: 'method-option-unused', message: 'a method is for “gravel”, which is no option of k' },
      { code: 'method-options-left', message: 'no method is for “silt”, which k could be' },
    ]);
  });

  test('a problem within a method is placed in its own formula', () => {
    const a: Computing = {
      by: 'soil',
      methods: [
        { id: 'sand', for: ['sand'], formula: 'w' },
        { id: 'clay', for: ['clay'], formula: '1 + 2 m/(w - 2 m)' },
      ],
    };
    const notebook = openNotebook(linesIn({ a }));
    const found = notebook.result('s.a');
    expect(found).toMatchObject({ status: 'problem', problem: { code: 'method-fails' } });
    const sound = openNotebook(
      linesIn({
        a: {
          ...a,
          methods: a.methods?.map((m) => ({ ...m, formula: m.formula.replace('1 + 2 m', 'w^2') })) ?? [],
        },
      }),
    );
    expect(sound.result('s.a')).toMatchObject({
      status: 'problem',
      problem: { code: 'division-by-zero', from: 5, to: 12 },
    });
  });
});

test('what a method is for, in words', () => {
  expect(methodWords({ for: ['a'] })).toBe('for “a”');
  expect(methodWords({ for: ['a', 'b', 'c'] })).toBe('for “a”, “b” and “c”');
  expect(methodWords({ for: ['a', 'b', 'c', 'd', 'e'] })).toBe('for “a”, “b”, “c” and 2 more');
  expect(methodWords({})).toBe('for all others');
  expect(rowsInWords([0, 1, 2, 6])).toBe('rows 1–3, 7');
  const odd = Array.from({ length: 50_000 }, (_, at) => 2 * at);
  expect(rowsInWords(odd)).toBe('rows 1, 3, 5, 7, 9, 11, 13, 15 and 49992 more');
});

test('another choice takes over the check of its method, where a unit says what the line gives', () => {
  const notebook = openNotebook(linesIn({ a: { ...byRule, unit: 'm' } }));
  const checks = () => {
    const item = notebook.model.items.get('s.a');
    if (item?.kind !== 'formula') throw new Error('s.a is no formula');
    return { inForce: item.checked, all: item.methods?.list.map(({ checked }) => checked) };
  };
  const before = checks();
  const rule = { sheet: 's', part: 'p', row: 'rule' };
  expect(notebook.apply(setEntry(rule, 'USACE')).ok).toBe(true);
  expect(checks().inForce).toBe(before.all?.[1]);
  expect(checks().all?.[0]).toBe(before.inForce);
  expect(notebook.result('s.a')).toMatchObject({ status: 'ok', value: { si: 6 } });
  // A name of the method that is no more is a problem as soon as it is in force, and before.
  const broken = setMethodField({ sheet: 's', part: 'p', row: 'a' }, 'api', 'formula', '2*nothing');
  expect(notebook.apply(broken).ok).toBe(true);
  expect(notebook.apply(setEntry(rule, 'API')).ok).toBe(true);
  expect(notebook.result('s.a').status).toBe('problem');
});
