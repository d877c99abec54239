import { describe, expect, test } from 'vitest';
import type { Part } from '../../src/document/index.ts';
import { quaybook, quaybookJson } from './run-quaybook.ts';
import { beam, bookFile, bytesFileOf, fileOf } from './small-book.ts';

const sound = bookFile('entering.quaybook.json', beam);

/** Runs calc and expects exit status 2, nothing on standard output and one line that says each of `said`. */
function refused(args: readonly string[], ...said: readonly string[]): void {
  const run = quaybook('calc', sound, ...args);
  expect(run.status).toBe(2);
  expect(run.out).toBe('');
  expect(run.err.trim().split('\n')).toHaveLength(1);
  for (const words of said) expect(run.err).toContain(words);
}

describe('--set', () => {
  test.each([
    ['b=36 kN', '--set b', 'force (kN)', 'length (in)'],
    ['b=NaN', '--set b', 'NaN'],
    ['b=1e400', '--set b', '1e400'],
    ['s.b=abc', '--set s.b', 'abc'],
    ['b==5', '--set b', 'a value, not a formula'],
    ['b=12 lb', '--set b', 'lb'],
    ['A=3 kN', '--set A', 'force (kN)', 'area (ft^2)'],
    ['c=3', 'c', 'state one of its sides'],
    ['c.demand=3 kN', '--set c.demand', 'force (kN)'],
    ['nope=3', 'nope'],
    ['__proto__=3', '__proto__'],
    ['layers=3', 'layers'],
  ])('refuses %s in a sentence', (set, ...said) => refused(['--set', set], ...said));

  test('refuses a line that is set twice, however it is named', () =>
    refused(['--set', 'b=1 ft', '--set', 's.b=2 ft'], 's.b', 'twice'));

  test('leaves a blank entry to what needs it', () => {
    const { run, json } = quaybookJson('calc', sound, '--set', 'b=', '--get', 'A');
    expect(run.status).toBe(2);
    expect(json.results['s.A'].status).toBe('waiting');
    expect(run.err).toContain('“b” is blank');
  });

  test('points out a value beyond its range beside the result asked for', () => {
    const run = quaybook('calc', sound, '--set', 'b=0.5 in', '--get', 'A');
    expect(run.status).toBe(0);
    expect(run.err).toContain('s.b: 0.5 in is below the permitted range');
  });

  test('takes a negative value after a space', () => {
    const run = quaybook('calc', sound, '--set', 'd=-3 in', '--get', 'd');
    expect(run.out).toContain('-3 in');
  });
});

describe('--table', () => {
  test.each([
    ['soil,t\nclay,thick\n', 'line 2, column B “t”', 'thick'],
    ['soil,t\nclay,2\nsand,NaN\n', 'line 3, column B “t”', 'NaN'],
    ['soil,t (kN)\nclay,2\n', '“kN”', 'a unit of another kind than the column “t” takes (m)'],
    ['soil,t (foo)\nclay,2\n', '“t (foo)”', 'none that the column “t” takes (m)'],
    [
      'soil,t\nclay,=2*3\n',
      'line 2, column B “t”',
      '“2*3” is a calculation, and this entry takes a value; write 6',
    ],
    ['soil,colour\nclay,red\n', 'colour'],
    ['soil,t\nclay,2,7\n', 'line 2', '7'],
    ['', 'no rows'],
  ])('refuses %j in a sentence', (text, ...said) =>
    refused(['--table', `layers=${fileOf('wrong.csv', text)}`], 'wrong.csv', ...said),
  );

  test('refuses bytes that are no text', () =>
    refused(
      ['--table', `layers=${bytesFileOf('bytes.csv', Buffer.from([0x73, 0xff, 0xfe, 0x00]))}`],
      'bytes.csv',
      'is no text',
    ));

  test('refuses a table without its file, and one given twice', () => {
    refused(['--table', 'layers='], 'layers');
    refused(['--table', 'layers'], 'NAME=FILE.csv');
    const csv = fileOf('twice.csv', 'soil,t\nclay,2\n');
    refused(['--table', `layers=${csv}`, '--table', `s.layers=${csv}`], 'twice');
  });
});

test('a blank line or cell is said where it is needed first', () => {
  const csv = fileOf('first.csv', 'soil,t\nclay,2\nsand,\n');
  const run = quaybook('calc', sound, '--set', 'b=', '--table', `layers=${csv}`);
  expect(run.status).toBe(2);
  expect(run.err).toContain('s.A: “b” is blank');
  expect(run.err).toContain('s.layers.t: row 2: “t” is blank');
});

test('says the cause of many waiting results once', () => {
  const csv = fileOf('cause.csv', 'soil,t\nclay,\n');
  const run = quaybook('calc', sound, '--table', `layers=${csv}`);
  expect(run.status).toBe(2);
  expect(run.err).not.toContain('waits on');
  expect(run.err).toContain('row 1');
});

test('what can be set is listed with notes, limits of columns and the units of the book', () => {
  const { json } = quaybookJson('calc', 'debris-haul', '--get', 'quantity.A');
  expect(json.units).toContainEqual(expect.objectContaining({ symbol: 'lcm' }));
  const { json: pile } = quaybookJson('calc', 'pile-bearing', '--get', 'pile.L');
  const given = (name: string) => pile.givens.find((one: { name: string }) => one.name === name);
  expect(given('pile.layers').columns).toContainEqual(
    expect.objectContaining({ name: 'h', limits: expect.objectContaining({ min: '0 ft' }) }),
  );
  expect(pile.units).toContainEqual(expect.objectContaining({ symbol: 'yr', definition: '365.25 d' }));
});

describe('options', () => {
  test.each([
    [['calc', '--toString'], 'no option --toString'],
    [['calc', '--jsn'], 'did you mean --json?'],
    [['calc', '--json=yes'], '--json takes no value'],
    [['calc', 'x', '--get'], '--get needs a value'],
    [['calc', '-j'], 'no file and no template “-j”'],
  ])('%j is refused in a sentence', (args, said) => {
    const run = quaybook(...args);
    expect(run).toMatchObject({ status: 2, out: '' });
    expect(run.err).toContain(said);
  });

  test('a command tells its own usage', () => {
    const run = quaybook('eval', '--help');
    expect(run.status).toBe(0);
    expect(run.out).toContain('quaybook eval FORMULA');
    expect(run.out).not.toContain('quaybook calc');
  });
});

describe('eval', () => {
  test.each([
    ['-3', -3],
    ['--3', 3],
    ['-(2^2)', -4],
  ])('takes the formula %s, which begins with a minus sign', (formula, value) => {
    const { run, json } = quaybookJson('eval', formula);
    expect(run.status).toBe(0);
    expect(json.value).toBe(value);
  });

  test('refuses -x^2 as ambiguous, not as an option', () => {
    const { run, json } = quaybookJson('eval', '-x^2', '--given', 'x=3');
    expect(run.status).toBe(2);
    expect(json.value).toBeNull();
    expect(json.problems[0]).toMatchObject({ from: 0 });
  });

  test('knows a given by look-alike letters', () => {
    const { json } = quaybookJson('eval', "2 * Δ_max + f'_c", '--given', '∆_max=3', '--given', 'f’_c=1');
    expect(json.value).toBe(7);
  });

  test.each(['sum=3', 'True=1', 'Max=2'])('refuses the given %s, a word of formulas', (given) => {
    const run = quaybook('eval', '1 + 1', '--given', given);
    expect(run).toMatchObject({ status: 2, out: '' });
    expect(run.err).toContain('word of the formulas');
  });

  test.each(['__proto__=3', 'x y=3', '1x=3'])('refuses the given %s, which is no name', (given) => {
    const run = quaybook('eval', '1 + 1', '--given', given);
    expect(run).toMatchObject({ status: 2, out: '' });
    expect(run.err).toContain('not a name');
  });
});

test('a line named like a function stands as a problem', () => {
  const book = bookFile('reserved.quaybook.json', [
    {
      id: 'p',
      kind: 'rows',
      rows: [
        { id: 'a', kind: 'given', name: 'Sum', entry: '1' },
        { id: 'b', kind: 'calc', name: 'max', formula: '1 + 1' },
      ],
    },
  ]);
  const { run, json } = quaybookJson('calc', book);
  expect(run.status).toBe(2);
  expect(json.problems.map((found: { cell: string }) => found.cell)).toEqual(['s.Sum', 's.max']);
});

test('a name without end is refused in a sentence of ordinary length', () => {
  const rows: Part = {
    id: 'p',
    kind: 'rows',
    rows: [{ id: 'a', kind: 'given', name: 'x'.repeat(100_000), entry: '1' }],
  };
  const run = quaybook('calc', bookFile('endless.quaybook.json', [rows]));
  expect(run).toMatchObject({ status: 2, out: '' });
  expect(run.err.length).toBeLessThan(1000);
  expect(run.err).toContain('100000 characters');
});
